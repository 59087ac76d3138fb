import { type FormEvent, useEffect, useRef, useState } from 'react';
import { failureTypes, type Intake } from '#core/job/job-document.ts';
import type { Circuit } from '#core/map/records.ts';
import type { CircuitId } from '#core/quantity/id.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { intakeWords } from '../../language/intake.ts';
import { recentWorkWords, symptomWords } from '../../language/told.ts';
import { failureTypeWords, words } from '../../language/words.ts';
import {
  Button,
  Choice,
  Field,
  NumberField,
  ProblemNotice,
  Select,
  TextArea,
  useEscape,
} from '../../parts/index.ts';
import { type DraftOwner, useDraft } from '../../session/drafts.ts';
import { CircuitPicks } from './circuit-picks.tsx';
import { ToldPicks } from './told-picks.tsx';

/** What a new job starts from before anything is typed. */
export const emptyIntake: Intake = {
  vehicle: { plate: '', odometer: null, odometerUnit: 'mi' },
  complaint: '',
  failureType: 'not-known',
  circuitId: null,
  alsoFailingCircuitIds: [],
  workingCircuitIds: [],
};

/** What is written down when the car comes in. Gives the whole intake on sending. */
export function IntakeForm({
  title,
  sendLabel,
  first,
  circuits,
  draft: [owner, name],
  onSend,
  onCancel,
}: {
  readonly title: string;
  readonly sendLabel: string;
  readonly first: Intake;
  readonly circuits: readonly Circuit[];
  /** Where what is typed is kept until it is sent: whose form it is, and its name. */
  readonly draft: readonly [DraftOwner, string];
  /** Gives what kept it from being stored; null when it is. */
  readonly onSend: (intake: Intake) => Promise<Problem | null>;
  readonly onCancel: () => void;
}) {
  const [{ intake }, setDraft, drop] = useDraft(owner, name, { intake: first });
  const [problem, setProblem] = useState<Problem | null>(null);
  const change = (part: Partial<Intake>): void => setDraft({ intake: { ...intake, ...part } });
  const send = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const refused = await onSend(intake);
    setProblem(refused);
    if (!refused) drop();
  };
  const cancel = (): void => {
    drop();
    onCancel();
  };
  useEscape(true, cancel);
  const form = useRef<HTMLFormElement>(null);
  // Whoever opened the form wants to type the plate next.
  useEffect(() => form.current?.querySelector('input')?.focus(), []);
  const others = circuits.filter((circuit) => circuit.id !== intake.circuitId);
  return (
    <form ref={form} className="intake" aria-label={title} onSubmit={(event) => void send(event)}>
      <h2>{title}</h2>
      <div className="intake-row intake-vehicle">
        <Field
          label={intakeWords.plate}
          value={intake.vehicle.plate}
          maxLength={40}
          onChange={(plate) => change({ vehicle: { ...intake.vehicle, plate } })}
        />
        <NumberField
          label={intakeWords.odometer}
          value={intake.vehicle.odometer}
          unit=""
          min={0}
          max={10_000_000}
          onChange={(odometer) => change({ vehicle: { ...intake.vehicle, odometer } })}
        />
        <Choice
          label={intakeWords.odometerUnit}
          value={intake.vehicle.odometerUnit}
          options={[
            { value: 'mi', label: intakeWords.units.mi },
            { value: 'km', label: intakeWords.units.km },
          ]}
          onChange={(odometerUnit) => change({ vehicle: { ...intake.vehicle, odometerUnit } })}
        />
      </div>
      <TextArea
        label={intakeWords.complaint}
        hint={intakeWords.complaintHint}
        value={intake.complaint}
        maxLength={2_000}
        rows={2}
        onChange={(complaint) => change({ complaint })}
      />
      <div className="intake-told">
        <ToldPicks
          label={intakeWords.recentWork}
          words={recentWorkWords}
          picked={intake.recentWork}
          onChange={(recentWork) => change({ recentWork })}
        />
        <ToldPicks
          label={intakeWords.symptoms}
          words={symptomWords}
          picked={intake.symptoms}
          onChange={(symptoms) => change({ symptoms })}
        />
        <p className="field-hint">{intakeWords.toldHint}</p>
      </div>
      <div className="intake-row">
        <Select
          label={intakeWords.failureType}
          hint={intakeWords.failureHint}
          value={intake.failureType}
          options={failureTypes.map((value) => ({ value, label: failureTypeWords[value] }))}
          onChange={(failureType) => change({ failureType })}
        />
        <Select
          label={intakeWords.circuit}
          hint={circuits.length === 0 ? intakeWords.noCircuits : intakeWords.circuitHint}
          value={intake.circuitId ?? ''}
          options={[
            { value: '', label: intakeWords.circuitNone },
            ...circuits.map((circuit) => ({ value: circuit.id as string, label: circuit.name })),
          ]}
          onChange={(value) => change(withCircuit(intake, value === '' ? null : (value as CircuitId)))}
        />
      </div>
      {others.length > 0 ? (
        <CircuitPicks
          circuits={others}
          failing={intake.alsoFailingCircuitIds}
          working={intake.workingCircuitIds}
          onChange={(alsoFailingCircuitIds, workingCircuitIds) =>
            change({ alsoFailingCircuitIds, workingCircuitIds })
          }
        />
      ) : null}
      {problem ? <ProblemNotice problem={problem} /> : null}
      <div className="button-row">
        <Button type="submit" weight="main">
          {sendLabel}
        </Button>
        <Button onClick={cancel}>{words.cancel}</Button>
      </div>
    </form>
  );
}

/** The searched circuit is neither a witness for nor against itself. */
const withCircuit = (intake: Intake, circuitId: CircuitId | null): Partial<Intake> => ({
  circuitId,
  alsoFailingCircuitIds: intake.alsoFailingCircuitIds.filter((id) => id !== circuitId),
  workingCircuitIds: intake.workingCircuitIds.filter((id) => id !== circuitId),
});
