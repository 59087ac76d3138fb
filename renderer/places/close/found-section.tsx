import { useState } from 'react';
import type { Photo } from '#core/job/closing-entries.ts';
import type { DamageCause, DamageType, FindingResult } from '#core/job/closing-words.ts';
import { type ReportedFind, reportedFind } from '#core/job/customer-report.ts';
import { evidenceEntries } from '#core/job/evidence-entries.ts';
import type { EntryOf, JobEntry } from '#core/job/job-document.ts';
import { type ProofOfCausePart, proofOfCauseParts } from '#core/job/proved-find.ts';
import { putRight } from '#core/job/put-right.ts';
import { isLookOnly } from '#core/map/kinds.ts';
import type { CircuitId, JobId } from '#core/quantity/id.ts';
import {
  closeWords,
  damageCauseWords,
  damageTypeWords,
  findingResultWords,
  findTitle,
  proofPartWords,
} from '../../language/close.ts';
import { inspectionWords } from '../../language/words.ts';
import { Button, Checkbox, Choice, Select, TextArea } from '../../parts/index.ts';
import { useDraft } from '../../session/drafts.ts';
import type { JobSession } from '../../session/job-session.ts';
import { useFind } from '../find/find-context.ts';
import { JobProposals } from '../proposals/job-proposals.tsx';
import { KeptPhoto } from './kept-photo.tsx';
import { optionsOf } from './options.ts';
import { PhotoInput } from './photo-input.tsx';
import { saidFind } from './said-stretches.ts';
import { Section } from './section.tsx';

const words = closeWords.found;

/** The looks that showed damage, each to be described; and the three-part proof of the cause. */
export function FoundSection({ done }: { readonly done: boolean }) {
  const view = useFind();
  const { standing } = view;
  const lookOnly = isLookOnly(view.open.line?.circuit.duty);
  const findings = standing.filter((entry) => entry.type === 'finding');
  const described = new Set(findings.map(({ stretches }) => JSON.stringify(stretches)));
  const bare = evidenceEntries(standing).filter(
    (entry): entry is EntryOf<'inspection'> =>
      entry.type === 'inspection' &&
      entry.result !== 'seen-sound' &&
      !described.has(JSON.stringify(entry.stretches)),
  );
  return (
    <Section number={1} title={closeWords.sections.found} done={done}>
      {bare.length + findings.length === 0 ? <p className="quiet">{words.none}</p> : null}
      {findings.map((finding) => (
        <Finding key={finding.id} find={reportedFind(standing, finding, lookOnly)} />
      ))}
      {bare.toReversed().map((look) => (
        <BareLook key={look.id} look={look} />
      ))}
      <JobProposals />
    </Section>
  );
}

function BareLook({ look }: { readonly look: EntryOf<'inspection'> }) {
  const view = useFind();
  const { open, change } = useFindingDraft(look);
  const where = saidFind(look, view);
  return (
    <article className="close-card" aria-label={`${inspectionWords[look.result]}: ${where}`}>
      <h3>{inspectionWords[look.result]}</h3>
      <p>{where}</p>
      {look.note === '' ? null : <p className="quiet">{look.note}</p>}
      {open ? (
        <FindingForm look={look} />
      ) : (
        <Button onClick={() => change({ open: true })}>{words.describe}</Button>
      )}
    </article>
  );
}

/** A find as described so far, from what the look said. */
interface FindingDraft {
  readonly open: boolean;
  /** Null while nobody said what it is. */
  readonly damage: DamageType | null;
  readonly cause: DamageCause | null;
  readonly result: FindingResult;
  readonly wire: CircuitId | 'none';
  readonly note: string;
  readonly photos: readonly Photo[];
}

function useFindingDraft(look: EntryOf<'inspection'>) {
  const { job } = useFind().open;
  const found = look.result === 'found';
  const first: FindingDraft = {
    open: found,
    damage: null,
    cause: null,
    result: found ? 'proved-cause' : 'damaged-not-cause',
    wire: found && job.circuitId ? job.circuitId : 'none',
    note: look.note,
    photos: [],
  };
  // A look whose place was narrowed since is the same look.
  const name = `finding ${putRight(job).get(look.id)?.id ?? look.id}`;
  const [draft, change, drop] = useDraft(job.id, name, first);
  return { ...draft, change, drop };
}

function FindingForm({ look }: { readonly look: EntryOf<'inspection'> }) {
  const { open, session, say } = useFind();
  const { damage, cause, result, wire, note, photos, change, drop } = useFindingDraft(look);
  const [asked, setAsked] = useState(false);
  const circuits = [...open.map.circuits.values()].sort((a, b) => a.order - b.order);
  return (
    <form
      className="close-form"
      onSubmit={(event) => {
        event.preventDefault();
        setAsked(true);
        if (damage === null || cause === null) return;
        session.add({
          type: 'finding',
          stretches: look.stretches,
          ...(look.partNodeId ? { partNodeId: look.partNodeId } : {}),
          damage,
          circuitId: wire === 'none' ? null : wire,
          cause,
          result,
          photos: [...photos],
          note: note.trim(),
        });
        drop();
      }}
    >
      <div className="close-pair">
        <Select
          label={words.damage}
          value={damage}
          unchosen={closeWords.unchosen}
          {...(asked && damage === null ? { trouble: words.damageMissing } : {})}
          options={optionsOf(damageTypeWords)}
          onChange={(value) => change({ damage: value })}
        />
        <Select
          label={words.cause}
          value={cause}
          unchosen={closeWords.unchosen}
          {...(asked && cause === null ? { trouble: words.causeMissing } : {})}
          options={optionsOf(damageCauseWords)}
          onChange={(value) => change({ cause: value })}
        />
      </div>
      <Select
        label={words.wire}
        value={wire}
        options={[
          ...circuits.map(({ id, name }) => ({ value: id, label: say(name) })),
          { value: 'none' as const, label: words.noWire },
        ]}
        onChange={(value) => change({ wire: value })}
      />
      <Choice
        label={words.result}
        value={result}
        options={optionsOf(findingResultWords)}
        onChange={(value) => change({ result: value })}
      />
      <TextArea
        label={words.note}
        hint={words.noteHint}
        value={note}
        rows={2}
        maxLength={4_000}
        onChange={(value) => change({ note: value })}
      />
      <PhotoInput photos={photos} onChange={(value) => change({ photos: value })} />
      <Button type="submit" weight="main" large>
        {words.keep}
      </Button>
    </form>
  );
}

function Finding({ find }: { readonly find: ReportedFind }) {
  const view = useFind();
  const { finding } = find;
  const title = findTitle(finding.result, find.findProof);
  return (
    <article className="close-card" aria-label={title}>
      <header>
        <h3>{title}</h3>
        <Button
          weight="quiet"
          aria-label={words.takeBack(title)}
          onClick={() => view.session.takeBack(finding.id)}
        >
          {words.takeBackShort}
        </Button>
      </header>
      <p>
        {damageTypeWords[finding.damage]}. {damageCauseWords[finding.cause]}.
      </p>
      <p>{saidFind(finding, view)}</p>
      {finding.note === '' ? null : <p className="quiet">{finding.note}</p>}
      <div className="photo-row">
        {finding.photos.map((photo, i) => (
          <KeptPhoto
            key={photo.sha256}
            sha256={photo.sha256}
            alt={closeWords.photo.alt(i + 1, photo.caption)}
          />
        ))}
      </div>
      {finding.result === 'damaged-not-cause' ? <p className="quiet">{words.repairToo}</p> : null}
      {finding.result === 'proved-cause' ? <ProofOfCause find={find} /> : null}
    </article>
  );
}

const nothingTicked: Readonly<Record<ProofOfCausePart, boolean>> = {
  damageSeen: false,
  onFaultyCircuit: false,
  comesAndGoes: false,
};

/** The proof in its parts, until all of them hold; what may not be moved is proved by what is seen. */
function ProofOfCause({ find }: { readonly find: ReportedFind }) {
  const { open, standing, session } = useFind();
  const { finding, proof } = find;
  const lookOnly = isLookOnly(open.line?.circuit.duty);
  const asked = proofOfCauseParts.filter((part) => !(lookOnly && part === 'comesAndGoes'));
  const first = proof
    ? {
        damageSeen: proof.damageSeen,
        onFaultyCircuit: proof.onFaultyCircuit,
        comesAndGoes: proof.comesAndGoes === true,
      }
    : nothingTicked;
  const [ticked, setTicked, drop] = useDraft(open.job.id, `proof ${finding.id} ${proof?.id ?? ''}`, first);
  const isProved = find.findProof === 'proved';
  const shown = isProved ? first : ticked;
  const keep = (): void => {
    session.add({
      type: 'proof-of-cause',
      findingId: finding.id,
      ...ticked,
      comesAndGoes: lookOnly ? null : ticked.comesAndGoes,
      note: '',
    });
    drop();
  };
  return (
    <fieldset className="tick-list">
      <legend className="field-label">{lookOnly ? words.proofByLook : words.proof}</legend>
      {asked.map((part) => (
        <Checkbox
          key={part}
          label={proofPartWords[part]}
          checked={shown[part]}
          disabled={isProved}
          onChange={(on) => setTicked({ [part]: on })}
        />
      ))}
      {find.findProof === 'refused' ? <p className="quiet">{words.notProved}</p> : null}
      <div className="button-row">
        {isProved && proof ? (
          <Button aria-label={words.takeBack(words.proved)} onClick={() => session.takeBack(proof.id)}>
            {words.takeBackShort}
          </Button>
        ) : (
          <Button weight="main" onClick={keep}>
            {words.keepProof}
          </Button>
        )}
        {find.findProof === 'refused' && find.repairs.length === 0 ? (
          <Button onClick={() => notTheCause(session, standing, finding, open.job.id)}>
            {words.notTheCause}
          </Button>
        ) : null}
      </div>
    </fieldset>
  );
}

/** The find stays as other damage, the look that took it for the cause no longer ends the search. */
function notTheCause(
  session: JobSession,
  standing: readonly JobEntry[],
  finding: EntryOf<'finding'>,
  jobId: JobId,
): void {
  const there = JSON.stringify(finding.stretches);
  const looks = standing.filter(
    (entry): entry is EntryOf<'inspection'> =>
      entry.type === 'inspection' && entry.result === 'found' && JSON.stringify(entry.stretches) === there,
  );
  // One step of undo: each is put right in its place.
  session.add(
    ...[...looks, finding].flatMap(({ id, at: _, ...said }) => [
      { type: 'take-back', entryId: id } as const,
      said.type === 'finding'
        ? { ...said, result: 'damaged-not-cause' as const }
        : { ...said, result: 'seen-damaged-not-cause' as const },
    ]),
  );
  window.location.hash = `#/job/${jobId}`;
}
