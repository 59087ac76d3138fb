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
import { useOnePage } from './use-one-page.ts';

const words = reportWords.sheet;
/** A place less likely than this needs no reasons. */
const leastWhy = 0.02;

/** What goes on the page, and what is left off first where it would not hold all of it: space, then reasons, then places. */
const fits = [
  { steps: 5, whys: 5, tight: false },
  { steps: 5, whys: 5, tight: true },
  { steps: 5, whys: 2, tight: true },
  { steps: 4, whys: 2, tight: true },
  { steps: 3, whys: 2, tight: true },
  { steps: 2, whys: 1, tight: true },
  { steps: 1, whys: 1, tight: true },
  { steps: 1, whys: 0, tight: true },
] as const;

/** One page to take under the car: what comes off, where to look, how far from which plug, to tick by hand. */
export function BenchSheet() {
  const { open, say } = useFind();
  const { job, map, line, ranking } = open;
  const { ref, leftOff } = useOnePage<HTMLDivElement>(ranking, fits.length - 1);
  const fit = fits[leftOff] ?? fits[0];
  const sheet = ranking ? digSheet(map, job, ranking, fit.steps) : null;
  const whys = sheet ? sheet.steps.filter(hasWhy) : [];
  const circuit = line?.circuit;
  return (
    <SheetFrame
      title={words.title}
      fileName={`${words.title} ${job.vehicle.plate}`.trim()}
      ready={!open.thinking}
    >
      <div ref={ref} className={fit.tight ? 'bench bench-tight' : 'bench'}>
        <p className="bench-lead">
          <b>{map.details.name}</b>
          {circuit
            ? `, ${say(circuit.name)}, ${circuit.wireColours.join('/')} ${circuit.conductorMm2} mm²`
            : null}
        </p>
        <p className="bench-complaint">{job.complaint}</p>
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
                <BenchStep
                  key={step.rank}
                  step={step}
                  why={whys.indexOf(step) >= 0 && whys.indexOf(step) < fit.whys}
                />
              ))}
            </ol>
            {sheet.left > 0 || whys.length > fit.whys ? (
              <p className="bench-hint">
                {sheet.left > 0 ? words.left(sheet.left) : ''}{' '}
                {whys.length > fit.whys ? words.whysLeft(whys.length - fit.whys) : ''}
              </p>
            ) : null}
          </>
        ) : null}
      </div>
    </SheetFrame>
  );
}

/** A second look is at the same place for the same reasons; a place hardly likely needs none. */
const hasWhy = ({ again, probability, causes }: DigSheetStep): boolean =>
  !again && probability >= leastWhy && causes.length > 0;

function BenchStep({
  step,
  why,
}: {
  readonly step: DigSheetStep;
  /** With what can wear the loom there. */
  readonly why: boolean;
}) {
  const { open, say, where, lengths } = useFind();
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
