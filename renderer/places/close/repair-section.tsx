import type { Photo } from '#core/job/closing-entries.ts';
import type { EntryOf } from '#core/job/job-document.ts';
import { findProof } from '#core/job/proved-find.ts';
import { type RepairPractice, type RubCure, repairPracticeTable } from '#core/job/repair-practice-table.ts';
import { repairWarnings } from '#core/job/repair-warnings.ts';
import { isLookOnly } from '#core/map/kinds.ts';
import {
  closeWords,
  cureWords,
  findTitle,
  practiceWords,
  repairWarningSentence,
} from '../../language/close.ts';
import { nameOf } from '../../language/name-of.ts';
import { Button, Choice, Notice, NumberField, TextArea } from '../../parts/index.ts';
import { useDraft } from '../../session/drafts.ts';
import { useFind } from '../find/find-context.ts';
import { optionsOf } from './options.ts';
import { PhotoInput } from './photo-input.tsx';
import { saidFind } from './said-stretches.ts';
import { Section } from './section.tsx';
import { TickList } from './tick-list.tsx';

const words = closeWords.repair;

/** Each find with what was done about it, and what is wrong with that. */
export function RepairSection({ done }: { readonly done: boolean }) {
  const view = useFind();
  const findings = view.standing.filter(
    (entry): entry is EntryOf<'finding'> => entry.type === 'finding' && entry.result !== 'sound',
  );
  return (
    <Section number={2} title={closeWords.sections.repair} done={done}>
      {findings.length === 0 ? <p className="quiet">{words.none}</p> : null}
      {findings.map((finding) => (
        <RepairOfFind key={finding.id} finding={finding} />
      ))}
    </Section>
  );
}

function RepairOfFind({ finding }: { readonly finding: EntryOf<'finding'> }) {
  const view = useFind();
  const repairs = view.standing.filter(
    (entry): entry is EntryOf<'repair'> => entry.type === 'repair' && entry.findingId === finding.id,
  );
  const [draft, change] = useDraft(view.open.job.id, repairForm(finding), nothingDone);
  const proof = findProof(view.standing, finding.id, isLookOnly(view.open.line?.circuit.duty));
  const title = `${findTitle(finding.result, proof)}, ${saidFind(finding, view)}`;
  const showForm = draft.adding || (repairs.length === 0 && finding.result === 'proved-cause');
  return (
    <article className="close-card" aria-label={title}>
      <h3>{title}</h3>
      {repairs.map((repair) => (
        <KeptRepair key={repair.id} repair={repair} finding={finding} />
      ))}
      {showForm ? (
        <RepairForm finding={finding} />
      ) : (
        <Button onClick={() => change({ adding: true })}>
          {repairs.length > 0 ? words.another : words.keep}
        </Button>
      )}
    </article>
  );
}

function KeptRepair({
  repair,
  finding,
}: {
  readonly repair: EntryOf<'repair'>;
  readonly finding: EntryOf<'finding'>;
}) {
  const { session } = useFind();
  return (
    <div className="kept-repair">
      <div>
        <p>{repair.practices.map((each) => practiceWords[each]).join('. ')}</p>
        <p>
          <b>{words.cures}:</b> {repair.cures.map((each) => cureWords[each]).join(', ') || '–'}
        </p>
        {repair.note === '' ? null : <p className="quiet">{repair.note}</p>}
      </div>
      <Button
        weight="quiet"
        aria-label={closeWords.found.takeBack(closeWords.sections.repair)}
        onClick={() => session.takeBack(repair.id)}
      >
        {closeWords.found.takeBackShort}
      </Button>
      <Warned repair={repair} finding={finding} />
    </div>
  );
}

function Warned({
  repair,
  finding,
}: {
  readonly repair: Pick<EntryOf<'repair'>, 'practices' | 'joints' | 'cures' | 'makerAllows'>;
  readonly finding: EntryOf<'finding'>;
}) {
  const { open, say, lengths } = useFind();
  const circuit = finding.circuitId === null ? undefined : open.map.circuits.get(finding.circuitId);
  const warnings = repairWarnings(
    open.map,
    finding.stretches,
    circuit?.duty ?? 'ordinary',
    repair,
    finding.partNodeId !== undefined,
  );
  if (warnings.length === 0) return null;
  return (
    <Notice tone="caution" sign="care" title={words.warnings}>
      <ul className="plain-list">
        {warnings.map((warning) => (
          <li key={warning.code}>
            {repairWarningSentence(warning, (id) => say(nameOf(open.map, id)), lengths)}
          </li>
        ))}
      </ul>
    </Notice>
  );
}

/** A repair as typed so far. */
interface RepairDraft extends Pick<EntryOf<'repair'>, 'makerAllows' | 'note'> {
  /** The form was asked for. */
  readonly adding: boolean;
  readonly practices: RepairPractice[];
  readonly cures: RubCure[];
  readonly joints: number | null;
  readonly photos: readonly Photo[];
}

const nothingDone: RepairDraft = {
  adding: false,
  practices: [],
  cures: [],
  joints: null,
  makerAllows: 'not-asked',
  note: '',
  photos: [],
};

const repairForm = ({ id }: EntryOf<'finding'>): string => `repair ${id}`;

function RepairForm({ finding }: { readonly finding: EntryOf<'finding'> }) {
  const { open, session } = useFind();
  const [draft, change, drop] = useDraft(open.job.id, repairForm(finding), nothingDone);
  const { practices, cures, joints, makerAllows, note, photos } = draft;
  const joins = practices.some((each) => repairPracticeTable[each].joint);
  const repair = { practices, cures, joints: joins ? (joints ?? 1) : 0, makerAllows };
  const duty = finding.circuitId === null ? undefined : open.map.circuits.get(finding.circuitId)?.duty;
  return (
    <form
      className="close-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (practices.length === 0) return;
        session.add({
          type: 'repair',
          findingId: finding.id,
          ...repair,
          photos: [...photos],
          note: note.trim(),
        });
        drop();
      }}
    >
      <TickList
        label={words.practices}
        words={practiceWords}
        ticked={practices}
        onChange={(value) => change({ practices: value })}
      />
      {joins ? (
        <NumberField
          label={words.joints}
          value={joints ?? 1}
          unit=""
          min={1}
          max={1_000}
          onChange={(value) => change({ joints: value })}
        />
      ) : null}
      <TickList
        label={words.cures}
        words={cureWords}
        ticked={cures}
        onChange={(value) => change({ cures: value })}
      />
      {isLookOnly(duty) ? (
        <Choice
          label={words.makerAllows}
          value={makerAllows}
          options={optionsOf(words.maker)}
          onChange={(value) => change({ makerAllows: value })}
        />
      ) : null}
      <Warned repair={repair} finding={finding} />
      <TextArea
        label={words.note}
        value={note}
        rows={2}
        maxLength={4_000}
        onChange={(value) => change({ note: value })}
      />
      <PhotoInput photos={photos} onChange={(value) => change({ photos: value })} />
      <Button type="submit" weight="main" large disabled={practices.length === 0}>
        {words.keep}
      </Button>
    </form>
  );
}
