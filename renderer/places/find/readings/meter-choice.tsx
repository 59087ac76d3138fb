import { useState } from 'react';
import { defaultMeters, handMeter } from '#core/circuit/default-meter-table.ts';
import type { MeterRecord } from '#core/job/meter-record.ts';
import { readingWords } from '../../../language/readings.ts';
import { Button, Checkbox, Field, Select } from '../../../parts/index.ts';
import { changeOwnMeters, meterNamed, useOwnMeters, withMeter } from '../../../session/own-meters.ts';
import { type MeterDraft, type MeterFigure, meterDraft, meterOfDraft } from './meter-draft.ts';
import { meterTroubleSentence } from './trouble-sentences.ts';

const words = readingWords.meters;

/** Which meter it was, from the usual ones and the workshop's own; an own one can be added and put right here. */
export function MeterChoice({
  meter,
  opened,
  onOpen,
  onChange,
}: {
  readonly meter: MeterRecord | null;
  readonly opened: boolean;
  readonly onOpen: (opened: boolean) => void;
  readonly onChange: (meter: MeterRecord | null) => void;
}) {
  const own = useOwnMeters();
  const name = meter?.name ?? handMeter.name;
  const mine = own.meters.find((each) => each.name === name);
  const known = [...defaultMeters.map((each) => each.name), ...own.meters.map((each) => each.name)];
  // A reading put right may have been taken with a meter that is not kept on this machine.
  const names = known.includes(name) ? known : [...known, name];
  return (
    <>
      <Select
        label={words.label}
        value={name}
        options={[...new Set(names)].map((value) => ({ value, label: value }))}
        onChange={(chosen) => {
          changeOwnMeters({ ...own, usual: chosen });
          onChange(meterNamed(chosen, own));
        }}
      />
      <Button weight="quiet" aria-expanded={opened} onClick={() => onOpen(!opened)}>
        {mine ? words.change : words.add}
      </Button>
      {opened ? (
        <OwnMeter
          key={name}
          before={mine ?? null}
          otherNames={own.meters.flatMap((each) => (each.name === mine?.name ? [] : [each.name]))}
          onKeep={(kept) => {
            changeOwnMeters(withMeter(own, kept, mine?.name ?? null));
            onChange(kept);
            onOpen(false);
          }}
          {...(mine
            ? {
                onRemove: () => {
                  const meters = own.meters.filter((each) => each.name !== mine.name);
                  changeOwnMeters({ meters, usual: handMeter.name });
                  onChange(null);
                  onOpen(false);
                },
              }
            : {})}
        />
      ) : null}
    </>
  );
}

function OwnMeter({
  before,
  otherNames,
  onKeep,
  onRemove,
}: {
  /** The meter put right; null for a new one. */
  readonly before: MeterRecord | null;
  readonly otherNames: readonly string[];
  readonly onKeep: (meter: MeterRecord) => void;
  readonly onRemove?: () => void;
}) {
  const [draft, setDraft] = useState(() => meterDraft(before));
  const [pressed, setPressed] = useState(false);
  const change = (part: Partial<MeterDraft>): void => setDraft((was) => ({ ...was, ...part }));
  const answer = meterOfDraft(draft, before, otherNames);
  const troubles = pressed && !answer.ok ? answer.troubles : [];
  const wrong = new Set(troubles.map(({ at }) => at));
  const keep = (): void => {
    setPressed(true);
    if (answer.ok) onKeep(answer.meter);
  };
  const figure = (label: string, key: MeterFigure) => (
    <Field
      label={label}
      value={draft.figures[key]}
      inputMode="decimal"
      autoComplete="off"
      aria-invalid={wrong.has(key) || undefined}
      onChange={(text) => change({ figures: { ...draft.figures, [key]: text } })}
    />
  );
  return (
    <fieldset
      className="own-meter"
      onKeyDown={(event) => {
        // Enter in here keeps the meter, not the reading around it.
        if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return;
        event.preventDefault();
        keep();
      }}
    >
      <legend className="only-read-aloud">{words.own}</legend>
      <Field
        label={words.name}
        value={draft.name}
        maxLength={80}
        aria-invalid={wrong.has('name') || undefined}
        onChange={(name) => change({ name })}
      />
      {figure(words.ohmsStep, 'ohmsStep')}
      {figure(words.ohmsPercent, 'ohmsPercent')}
      {figure(words.ohmsCounts, 'ohmsCounts')}
      {draft.fourWire ? null : figure(words.leadOhms, 'leadOhms')}
      {figure(words.beepOhms, 'beepOhms')}
      {figure(words.millivoltStep, 'millivoltStep')}
      {figure(words.millivoltPercent, 'millivoltPercent')}
      {figure(words.millivoltCounts, 'millivoltCounts')}
      <Checkbox
        label={words.fourWire}
        checked={draft.fourWire}
        onChange={(fourWire) => change({ fourWire })}
      />
      <Checkbox
        label={words.capacitance}
        checked={draft.capacitance}
        onChange={(capacitance) => change({ capacitance })}
      />
      {troubles.length > 0 ? (
        <ul className="own-meter-troubles reading-troubles" role="alert">
          {troubles.map((trouble) => (
            <li key={trouble.at}>
              {words[trouble.at]}: {meterTroubleSentence(trouble)}
            </li>
          ))}
        </ul>
      ) : null}
      <div className="own-meter-end">
        <p className="quiet">{words.hint}</p>
        <div className="button-row">
          <Button onClick={keep}>{words.keep}</Button>
          {onRemove ? (
            <Button weight="quiet" onClick={onRemove}>
              {words.remove}
            </Button>
          ) : null}
        </div>
      </div>
    </fieldset>
  );
}
