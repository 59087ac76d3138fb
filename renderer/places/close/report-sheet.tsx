import { type ReactNode, useMemo } from 'react';
import { clockKinds } from '#core/job/closing-words.ts';
import { customerReport, type ReportedFind } from '#core/job/customer-report.ts';
import type { ProofItem } from '#core/job/proof-checklist.ts';
import { MapDrawing } from '../../drawing-export/map-drawing.tsx';
import {
  alongWords,
  clockWords,
  closeWords,
  cureWords,
  damageCauseWords,
  damageTypeWords,
  expectationSentence,
  practiceWords,
  proofCheckWords,
  proofPartWords,
} from '../../language/close.ts';
import { sayMinutes } from '../../language/find.ts';
import { nameOf } from '../../language/name-of.ts';
import { sayDay, sayMoment, reportWords as words } from '../../language/report.ts';
import { figureText, sayAmps } from '../../language/say-figure.ts';
import { saySmallLength } from '../../language/say-length.ts';
import { failureTypeWords } from '../../language/words.ts';
import { sayAmount, useShop } from '../../session/shop-settings.ts';
import { useNow } from '../../session/use-now.ts';
import { useFind } from '../find/find-context.ts';
import { readingLine } from '../find/readings/reading-line.ts';
import { KeptPhoto } from './kept-photo.tsx';
import { retestLine } from './retest-line.ts';
import { saidFind, saidStretches } from './said-stretches.ts';
import { SheetFrame } from './sheet-frame.tsx';
import { useMapPicture } from './use-map-picture.ts';

/** What the customer is given: what was wrong, what was found and done, and how it was proved. */
export function ReportSheet() {
  const view = useFind();
  const { open, say } = view;
  const now = useNow(60_000);
  const { currency } = useShop();
  const report = useMemo(
    () => customerReport(open.map, open.line, open.job, now),
    [open.map, open.line, open.job, now],
  );
  const { cause, otherDamage } = report;
  const finds = useMemo(
    () => [...(cause ? [cause] : []), ...otherDamage].map(({ finding }) => finding),
    [cause, otherDamage],
  );
  const picture = useMapPicture(finds);
  const circuit = report.circuitId === null ? undefined : open.map.circuits.get(report.circuitId);
  const panels = (ids: readonly string[]): string => ids.map((id) => say(nameOf(open.map, id))).join(', ');
  const clocked = clockKinds.filter((kind) => report.clock.minutes[kind] >= 0.5);
  return (
    <SheetFrame title={words.title} fileName={`${words.title} ${report.vehicle.plate}`.trim()} ready>
      <dl className="sheet-facts">
        <Fact term={words.vehicle}>{open.map.details.name}</Fact>
        {report.vehicle.odometer === null ? null : (
          <Fact term={words.odometer}>
            {report.vehicle.odometer.toLocaleString('en')} {report.vehicle.odometerUnit}
          </Fact>
        )}
        <Fact term={words.taken}>{sayDay(report.openedAt)}</Fact>
        {report.closedAt ? <Fact term={words.closed}>{sayDay(report.closedAt)}</Fact> : null}
        {circuit ? <Fact term={words.circuit}>{say(circuit.name)}</Fact> : null}
        <Fact term={words.failure}>{failureTypeWords[report.failureType]}</Fact>
      </dl>
      {report.close === null ? <p className="sheet-draft">{words.open}</p> : null}
      <Part title={words.complaint}>
        <p>{report.complaint || words.noComplaint}</p>
      </Part>
      {report.agreed.length > 0 ? (
        <Part title={words.agreed}>
          <ul>
            {report.agreed.map((stage) => (
              <li key={stage.id}>
                {sayMoment(stage.at)}: {stage.extension ? closeWords.money.extension : closeWords.money.limit}{' '}
                {stage.measure === 'minutes'
                  ? `${sayMinutes(stage.adds)} ${words.minutes}`
                  : sayAmount(stage.adds, currency)}
                {stage.agreedBy === '' ? null : `, ${stage.agreedBy}`}
              </li>
            ))}
          </ul>
        </Part>
      ) : null}
      <Part title={words.found}>
        {cause ? <Found find={cause} /> : <p>{notFoundLine(report.close?.outcome)}</p>}
        {report.close && report.close.reason !== '' ? (
          <p>
            {words.limits}: {report.close.reason}
          </p>
        ) : null}
      </Part>
      <figure className="sheet-map">
        <MapDrawing svg={picture} label={words.mapAlt} className="sheet-map-drawing" />
        <figcaption>{words.mapCaption}</figcaption>
      </figure>
      {cause && cause.repairs.length > 0 ? (
        <Part title={words.repair}>
          <Repairs find={cause} />
        </Part>
      ) : null}
      {report.tests.length + report.proof.length > 0 ? (
        <Part title={words.tests}>
          <Tests tests={report.tests} proof={report.proof} repaired={(cause?.repairs.length ?? 0) > 0} />
        </Part>
      ) : null}
      {report.seenSound.length > 0 ? (
        <Part title={words.ruledOut}>
          <ul>
            {report.seenSound.map((look) => (
              <li key={look.id}>{saidStretches(look.stretches, view)}</li>
            ))}
          </ul>
        </Part>
      ) : null}
      {otherDamage.length > 0 ? (
        <Part title={words.other}>
          {otherDamage.map((find) => (
            <div key={find.finding.id} className="sheet-other">
              <Found find={find} />
              {find.repairs.length > 0 ? <Repairs find={find} /> : <p>{words.otherLeft}.</p>}
            </div>
          ))}
        </Part>
      ) : null}
      {report.panelsRefitted.length > 0 ? (
        <Part title={words.panels}>
          <p>{panels(report.panelsRefitted)}</p>
        </Part>
      ) : null}
      {report.panelsStillOff.length > 0 ? (
        <Part title={words.panelsOff}>
          <p>{panels(report.panelsStillOff)}</p>
        </Part>
      ) : null}
      <Part title={words.time}>
        <dl className="sheet-facts">
          {clocked.map((kind) => (
            <Fact key={kind} term={clockWords[kind]}>
              {sayMinutes(report.clock.minutes[kind])} {words.minutes}
            </Fact>
          ))}
          <Fact term={clocked.length > 0 ? words.total : words.worked}>
            {sayMinutes(clocked.length > 0 ? report.clock.totalMinutes : report.minutesWorked)}{' '}
            {words.minutes}
          </Fact>
        </dl>
      </Part>
      <Part title={words.advice}>
        {report.close && report.close.advice !== '' ? <p>{report.close.advice}</p> : null}
        <p>{words.recall}</p>
      </Part>
      <p className="sheet-sign">{words.signature}</p>
    </SheetFrame>
  );
}

function notFoundLine(outcome: 'proved' | 'not-found' | 'customer-stopped' | undefined): string {
  return outcome === 'customer-stopped' ? words.stopped : words.notFound;
}

function Part({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section className="sheet-part">
      <h2>{title}</h2>
      {children}
    </section>
  );
}

function Fact({ term, children }: { readonly term: string; readonly children: ReactNode }) {
  return (
    <div>
      <dt>{term}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function Found({ find }: { readonly find: ReportedFind }) {
  const view = useFind();
  const { finding, proof } = find;
  const wire = finding.circuitId === null ? null : view.say(nameOf(view.open.map, finding.circuitId));
  const held = proof
    ? (['damageSeen', 'onFaultyCircuit', 'comesAndGoes'] as const).filter((part) => proof[part])
    : [];
  return (
    <>
      <p>
        <b>{damageTypeWords[finding.damage]}.</b> {damageCauseWords[finding.cause]}.
        {wire ? ` ${words.circuit}: ${wire}.` : null} {finding.note}
      </p>
      <p>
        {words.where}: {saidFind(finding, view)}
      </p>
      {held.length > 0 ? (
        <p>
          {words.proof}: {inOneSentence(held.map((part) => proofPartWords[part]))}.
        </p>
      ) : null}
      {finding.result === 'proved-cause' && find.findProof !== 'proved' ? <p>{words.notProved}.</p> : null}
      <Photos photos={finding.photos} />
    </>
  );
}

/** Several clauses as one sentence: only the first keeps its capital. */
const inOneSentence = (clauses: readonly string[]): string =>
  clauses.map((each, i) => (i === 0 ? each : each.charAt(0).toLowerCase() + each.slice(1))).join('; ');

function Repairs({ find }: { readonly find: ReportedFind }) {
  const { lengths } = useFind();
  const { lookedAlong } = find;
  return (
    <>
      {find.repairs.map((repair) => (
        <div key={repair.id}>
          <p>
            {repair.practices.map((each) => practiceWords[each]).join('. ')}.
            {repair.joints > 0 ? ` ${words.joints(repair.joints)}.` : null} {repair.note}
          </p>
          {repair.cures.length > 0 ? (
            <p>
              {words.stopsRubbing}: {repair.cures.map((each) => cureWords[each]).join(', ')}.
            </p>
          ) : null}
          <Photos photos={repair.photos} />
        </div>
      ))}
      {lookedAlong ? (
        <p>
          {words.along(figureText(saySmallLength(lookedAlong.eachWayMm, lengths)))}:{' '}
          {alongWords[lookedAlong.beside].toLowerCase()}. {words.twin}:{' '}
          {alongWords[lookedAlong.twin].toLowerCase()}. {lookedAlong.note}
        </p>
      ) : null}
    </>
  );
}

function Photos({
  photos,
}: {
  readonly photos: readonly { readonly sha256: string; readonly caption: string }[];
}) {
  if (photos.length === 0) return null;
  return (
    <div className="sheet-photos">
      {photos.map((photo, i) => (
        <figure key={photo.sha256}>
          <KeptPhoto sha256={photo.sha256} alt={closeWords.photo.alt(i + 1, photo.caption)} />
          {photo.caption === '' ? null : <figcaption>{photo.caption}</figcaption>}
        </figure>
      ))}
    </div>
  );
}

/** Before and after side by side: the tests of the search, then those every repair ends with. */
function Tests({
  tests,
  proof,
  repaired,
}: {
  readonly tests: ReturnType<typeof customerReport>['tests'];
  readonly proof: readonly ProofItem[];
  readonly repaired: boolean;
}) {
  const view = useFind();
  const after = (item: ProofItem): string => {
    if (!item.done) return words.notDone;
    const { done } = item;
    const shown =
      done.reading && done.state
        ? readingLine({ ...done, type: 'reading', reading: done.reading, state: done.state }, view)
        : done.amps === undefined
          ? expectationSentence(item.expected)
          : figureText(sayAmps(done.amps));
    return done.good ? `${words.good}: ${shown}` : words.bad;
  };
  return (
    <table className="sheet-tests">
      <thead>
        <tr>
          <th scope="col">{words.before}</th>
          {repaired ? <th scope="col">{words.after}</th> : null}
        </tr>
      </thead>
      <tbody>
        {tests.map((test) => (
          <tr key={test.id}>
            <td>{readingLine(test, view)}</td>
            {repaired ? <td>{retestLine(test, proof, view.standing, after)}</td> : null}
          </tr>
        ))}
        {repaired
          ? proof
              .filter(({ repeats }) => repeats === null)
              .map((item) => (
                <tr key={item.check}>
                  <td>{proofCheckWords[item.check]}</td>
                  <td>{item.done ? (item.done.good ? words.good : words.bad) : words.notDone}</td>
                </tr>
              ))
          : null}
      </tbody>
    </table>
  );
}
