import { useState } from 'react';
import { defaultMeters, handMeter } from '#core/circuit/default-meter-table.ts';
import type { MeterRecord } from '#core/job/meter-record.ts';
import { readingWords } from '../../../language/readings.ts';
import { Button, Checkbox, Field, NumberField, Select } from '../../../parts/index.ts';
import { changeOwnMeters, meterNamed, useOwnMeters, withMeter } from '../../../session/own-meters.ts';
import { type MeterDraft, meterDraft, meterOfDraft } from './meter-draft.ts';

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
          first={meterDraft(mine ?? null)}
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
  first,
  onKeep,
  onRemove,
}: {
  readonly first: MeterDraft;
  readonly onKeep: (meter: MeterRecord) => void;
  readonly onRemove?: () => void;
}) {
  const [draft, setDraft] = useState(first);
  const [pressed, setPressed] = useState(false);
  const change = (part: Partial<MeterDraft>): void => setDraft((before) => ({ ...before, ...part }));
  const number = (
    label: string,
    key:
      | 'ohmsStep'
      | 'ohmsPercent'
      | 'ohmsCounts'
      | 'millivoltStep'
      | 'millivoltPercent'
      | 'millivoltCounts'
      | 'leadOhms',
    unit: string,
    most: number,
  ) => (
    <NumberField
      label={label}
      value={draft[key]}
      unit={unit}
      min={key === 'ohmsStep' || key === 'millivoltStep' ? 0.0001 : 0}
      max={most}
      places={4}
      onChange={(value) => {
        if (value !== null) change({ [key]: value });
      }}
    />
  );
  const nameless = draft.name.trim() === '';
  return (
    <fieldset className="own-meter">
      <legend className="only-read-aloud">{words.own}</legend>
      <Field
        label={words.name}
        value={draft.name}
        maxLength={80}
        {...(pressed && nameless ? { trouble: words.nameMissing } : {})}
        onChange={(name) => change({ name })}
      />
      {number(words.ohmsStep, 'ohmsStep', 'Ω', 10)}
      {number(words.ohmsPercent, 'ohmsPercent', '%', 20)}
      {number(words.counts, 'ohmsCounts', '', 100)}
      {number(words.millivoltStep, 'millivoltStep', 'mV', 100)}
      {number(words.millivoltPercent, 'millivoltPercent', '%', 20)}
      {number(words.counts, 'millivoltCounts', '', 100)}
      {number(words.leads, 'leadOhms', 'Ω', 10)}
      <NumberField
        label={words.beep}
        value={draft.beepOhms}
        unit="Ω"
        min={0.1}
        max={10_000}
        onChange={(beepOhms) => change({ beepOhms })}
      />
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
      <p className="quiet own-meter-hint">{words.hint}</p>
      <div className="button-row">
        <Button
          onClick={() => {
            setPressed(true);
            if (!nameless) onKeep(meterOfDraft(draft));
          }}
        >
          {words.keep}
        </Button>
        {onRemove ? (
          <Button weight="quiet" onClick={onRemove}>
            {words.remove}
          </Button>
        ) : null}
      </div>
    </fieldset>
  );
}
