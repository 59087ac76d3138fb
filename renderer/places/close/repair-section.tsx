import { useState } from 'react';
import type { Photo } from '#core/job/closing-entries.ts';
import type { EntryOf } from '#core/job/job-document.ts';
import { type RepairPractice, type RubCure, repairPracticeTable } from '#core/job/repair-practice-table.ts';
import { repairWarnings } from '#core/job/repair-warnings.ts';
import {
  closeWords,
  cureWords,
  findingResultWords,
  practiceWords,
  repairWarningSentence,
} from '../../language/close.ts';
import { nameOf } from '../../language/name-of.ts';
import { Button, Choice, Notice, NumberField, TextArea } from '../../parts/index.ts';
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
  const [adding, setAdding] = useState(false);
  const title = `${findingResultWords[finding.result]}, ${saidFind(finding, view)}`;
  const showForm = adding || (repairs.length === 0 && finding.result === 'proved-cause');
  return (
    <article className="close-card" aria-label={title}>
      <h3>{title}</h3>
      {repairs.map((repair) => (
        <KeptRepair key={repair.id} repair={repair} finding={finding} />
      ))}
      {showForm ? (
        <RepairForm finding={finding} onKept={() => setAdding(false)} />
      ) : (
        <Button onClick={() => setAdding(true)}>{repairs.length > 0 ? words.another : words.keep}</Button>
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

function RepairForm({
  finding,
  onKept,
}: {
  readonly finding: EntryOf<'finding'>;
  readonly onKept: () => void;
}) {
  const { open, session } = useFind();
  const [practices, setPractices] = useState<RepairPractice[]>([]);
  const [cures, setCures] = useState<RubCure[]>([]);
  const [joints, setJoints] = useState<number | null>(null);
  const [makerAllows, setMakerAllows] = useState<EntryOf<'repair'>['makerAllows']>('not-asked');
  const [note, setNote] = useState('');
  const [photos, setPhotos] = useState<readonly Photo[]>([]);
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
        onKept();
      }}
    >
      <TickList label={words.practices} words={practiceWords} ticked={practices} onChange={setPractices} />
      {joins ? (
        <NumberField
          label={words.joints}
          value={joints ?? 1}
          unit=""
          min={1}
          max={1_000}
          onChange={setJoints}
        />
      ) : null}
      <TickList label={words.cures} words={cureWords} ticked={cures} onChange={setCures} />
      {duty === 'restraint' || duty === 'high-voltage' ? (
        <Choice
          label={words.makerAllows}
          value={makerAllows}
          options={optionsOf(words.maker)}
          onChange={setMakerAllows}
        />
      ) : null}
      <Warned repair={repair} finding={finding} />
      <TextArea label={words.note} value={note} rows={2} maxLength={4_000} onChange={setNote} />
      <PhotoInput photos={photos} onChange={setPhotos} />
      <Button type="submit" weight="main" large disabled={practices.length === 0}>
        {words.keep}
      </Button>
    </form>
  );
}
