import type { CircuitLine } from '#core/circuit/circuit-line.ts';
import type { Probe } from '#core/job/reading.ts';
import { readingWords } from '../../../language/readings.ts';
import {
  figureText,
  sayAmps,
  sayMillivolts,
  sayOhms,
  sayPicofarads,
  sayVolts,
} from '../../../language/say-figure.ts';
import type { SaidLength } from '../../../language/say-length.ts';
import { Button, Choice, Field } from '../../../parts/index.ts';
import { useFind } from '../find-context.ts';
import { type FormTrouble, figureUnits } from './form-entry.ts';
import { type LeadGroup, leadGroups } from './lead.ts';
import { LeadSelect } from './lead-select.tsx';
import { type FigureUnit, parseFigure } from './parse-figure.ts';
import { PlaceChoice } from './place-choice.tsx';
import type { ReadingForm } from './reading-form.ts';

const words = readingWords.form;

const unitWords: Readonly<Record<FigureUnit, string>> = {
  ohm: 'Ω',
  volt: 'V',
  millivolt: 'mV',
  picofarad: 'pF',
  ampere: 'A',
};

const sayers: Readonly<Record<FigureUnit, (value: number) => SaidLength>> = {
  ohm: sayOhms,
  volt: sayVolts,
  millivolt: sayMillivolts,
  picofarad: sayPicofarads,
  ampere: sayAmps,
};

const yesWords = {
  beep: { label: words.beeps, yes: words.yesBeep, no: words.noBeep },
  symptom: { label: words.stays, yes: words.yesStays, no: words.noStays },
  function: { label: words.works, yes: words.yesWorks, no: words.noWorks },
} as const;

/** What one test asks for: where the leads sat or what was moved, and what it showed. */
export function FormValues({
  form,
  line,
  troubles,
  onChange,
}: {
  readonly form: ReadingForm;
  readonly line: CircuitLine;
  /** What keeps the form from being a reading; said below, marked here. */
  readonly troubles: readonly FormTrouble[];
  readonly onChange: (part: Partial<ReadingForm>) => void;
}) {
  const { open } = useFind();
  const { test } = form;
  const ownId = line.circuit.id;
  const groups = leadGroups(open.map, line, form.state, open.job.alsoFailingCircuitIds);
  const lead = (label: string, at: 'from' | 'to', among: readonly LeadGroup[]) => (
    <LeadSelect
      label={label}
      value={form[at]}
      groups={among}
      ownId={ownId}
      onChange={(probe: Probe) => onChange({ [at]: probe })}
    />
  );
  const onWires = groups.filter((group) => group.circuitId !== null);
  const ownWire = groups.filter((group) => group.circuitId === ownId);
  const unit = figureUnits[test];
  const wrong = new Set(troubles.map(({ at }) => at));
  return (
    <>
      {test === 'ohms' || test === 'beep' || test === 'volts' ? (
        <>
          {lead(words.from, 'from', onWires)}
          {lead(words.to, 'to', groups)}
        </>
      ) : null}
      {test === 'drop' ? (
        <>
          {lead(words.driven, 'from', ownWire)}
          {lead(words.sensed, 'to', ownWire)}
        </>
      ) : null}
      {test === 'capacitance' ? lead(words.at, 'from', ownWire) : null}
      {test === 'move' || test === 'function' ? (
        <PlaceChoice
          from={test === 'move' ? words.placeFrom : words.bentFrom}
          to={test === 'move' ? words.placeTo : words.bentTo}
          pieces={form.pieces}
          onChange={(pieces) => onChange({ pieces })}
        />
      ) : null}
      {test === 'function' ? (
        <Field
          label={words.position}
          value={form.note}
          placeholder={words.positionHint}
          maxLength={4_000}
          onChange={(note) => onChange({ note })}
        />
      ) : null}
      <div className="reading-values" data-test={test}>
        {test === 'drop' ? (
          <FigureField
            label={words.current}
            unit="ampere"
            value={form.current}
            wrong={wrong.has('current')}
            onChange={(current) => onChange({ current })}
          />
        ) : null}
        {unit ? (
          <FigureField
            label={words.figure}
            unit={unit}
            value={form.figure}
            wrong={wrong.has('figure')}
            onChange={(figure) => onChange({ figure, instead: null })}
          />
        ) : null}
        {test === 'ohms' ? (
          <div className="reading-instead">
            {(['open-line', 'over-range'] as const).map((instead) => (
              <Button
                key={instead}
                aria-pressed={form.instead === instead}
                onClick={() => onChange({ instead: form.instead === instead ? null : instead, figure: '' })}
              >
                {instead === 'open-line' ? words.openLine : words.overRange}
              </Button>
            ))}
          </div>
        ) : null}
        {test === 'beep' || test === 'symptom' || test === 'function' ? (
          <Choice
            label={yesWords[test].label}
            value={form.yes === null ? '' : form.yes ? 'yes' : 'no'}
            options={[
              { value: 'yes', label: yesWords[test].yes },
              { value: 'no', label: yesWords[test].no },
            ]}
            onChange={(value) => onChange({ yes: value === 'yes' })}
          />
        ) : null}
        {test === 'move' ? (
          <>
            <Field
              label={words.changed}
              value={form.changed}
              inputMode="numeric"
              autoComplete="off"
              aria-invalid={wrong.has('counts') || undefined}
              className="reading-count"
              onChange={(changed) => onChange({ changed })}
            />
            <Field
              label={words.tried}
              value={form.tried}
              inputMode="numeric"
              autoComplete="off"
              aria-invalid={wrong.has('counts') || undefined}
              className="reading-count"
              onChange={(tried) => onChange({ tried })}
            />
          </>
        ) : null}
      </div>
    </>
  );
}

/** A figure as typed, with its unit beside it and what was understood below where that is not plain. */
function FigureField({
  label,
  unit,
  value,
  wrong,
  onChange,
}: {
  readonly label: string;
  readonly unit: FigureUnit;
  readonly value: string;
  readonly wrong: boolean;
  readonly onChange: (value: string) => void;
}) {
  const parsed = parseFigure(value, unit);
  const plain = /^\s*-?\d*\.?\d*\s*$/.test(value);
  const hint =
    parsed.kind === 'figure' && !plain
      ? words.understood(figureText(sayers[unit](parsed.value)))
      : parsed.kind === 'open-line'
        ? words.understood(words.openLine.toLowerCase())
        : undefined;
  return (
    <Field
      label={`${label}, ${unitWords[unit]}`}
      value={value}
      inputMode="text"
      autoComplete="off"
      className="reading-figure"
      aria-invalid={wrong || undefined}
      {...(hint === undefined ? {} : { hint })}
      onChange={onChange}
    />
  );
}
