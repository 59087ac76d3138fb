import { type DigSheetStep, digSheet } from '#core/job/dig-sheet.ts';
import { cautionKeyWords, sayMinutes, sayPercent } from '../../language/find.ts';
import { nameOf } from '../../language/name-of.ts';
import { reportWords } from '../../language/report.ts';
import { whereLine } from '../../language/say-where.ts';
import { cautionWords } from '../../language/words.ts';
import { ReasonList, Sign } from '../../parts/index.ts';
import { cautionSigns } from '../find/caution-signs.tsx';
import { useFind } from '../find/find-context.ts';
import './bench-sheet.css';
import { SheetFrame } from './sheet-frame.tsx';

const words = reportWords.sheet;
/** As many openings as one page holds in large type. */
const mostSteps = 5;
const leastWhy = 0.02;

/** One page to take under the car: what comes off, where to look, how far from which plug, to tick by hand. */
export function BenchSheet() {
  const { open, say } = useFind();
  const { job, map, line, ranking } = open;
  const sheet = ranking ? digSheet(map, job, ranking, mostSteps) : null;
  const circuit = line?.circuit;
  return (
    <SheetFrame
      title={words.title}
      fileName={`${words.title} ${job.vehicle.plate}`.trim()}
      ready={!open.thinking}
    >
      <p className="bench-lead">
        <b>{map.details.name}</b>
        {circuit
          ? `, ${say(circuit.name)}, ${circuit.wireColours.join('/')} ${circuit.conductorMm2} mm²`
          : null}
      </p>
      <p>{job.complaint}</p>
      {sheet && sheet.cautions.length > 0 ? (
        <section className="bench-cautions">
          <h2>{words.cautions}</h2>
          <ul>
            {sheet.cautions.map((caution) => (
              <li key={caution}>
                <Sign name={cautionSigns[caution]} size={20} />
                <span>
                  <b>{cautionWords[caution]}:</b> {cautionKeyWords[caution]}
                </span>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      {sheet === null ? <p>{open.thinking ? words.working : words.nothing}</p> : null}
      {sheet?.steps.length === 0 ? <p>{words.nothing}</p> : null}
      {sheet && sheet.steps.length > 0 ? (
        <>
          <p className="bench-hint">{words.lead}</p>
          <ol className="bench-steps">
            {sheet.steps.map((step) => (
              <BenchStep key={step.rank} step={step} />
            ))}
          </ol>
          {sheet.left > 0 ? <p className="bench-hint">{words.left(sheet.left)}</p> : null}
        </>
      ) : null}
    </SheetFrame>
  );
}

function BenchStep({ step }: { readonly step: DigSheetStep }) {
  const { open, say, where, lengths } = useFind();
  // A second look is at the same place for the same reasons; a place hardly likely needs none.
  const why = !step.again && step.probability >= leastWhy && step.causes.length > 0;
  const plugs = step.plugIds.map((id) => say(nameOf(open.map, id))).join(', ');
  return (
    <li className="bench-step">
      <span className="bench-rank">{step.rank}</span>
      <div>
        {step.takeOff.length === 0 ? (
          <p className="bench-off">{step.again ? words.again : words.open}</p>
        ) : null}
        {step.takeOff.map(({ panelId, minutesOff }) => (
          <p key={panelId} className="bench-off">
            <span className="tick-box" /> {words.off}: {say(nameOf(open.map, panelId))}{' '}
            <span className="bench-minutes">{sayMinutes(minutesOff)} min</span>
          </p>
        ))}
        {step.parts.map((part) => (
          <p key={part.fromMm} className="bench-look">
            {words.look}: <b>{whereLine(where(part))}</b>
          </p>
        ))}
        {plugs === '' ? null : <p className="bench-look">{words.part(plugs)}</p>}
        <p className="bench-ticks">
          <span className="tick-box" /> {words.sound} <span className="tick-box" /> {words.damaged}{' '}
          <span className="tick-box" /> {words.found}
        </p>
      </div>
      <p className="bench-running">
        {sayPercent(step.probability)} %
        <br />
        <span>{words.running(sayMinutes(step.runningMinutes), sayPercent(step.runningProbability))}</span>
      </p>
      {why ? (
        <div className="bench-why">
          <b>{words.why}:</b>
          <ReasonList
            causes={step.causes}
            nameOf={(id) => say(nameOf(open.map, id))}
            lengths={lengths}
            as="line"
          />
        </div>
      ) : null}
    </li>
  );
}
