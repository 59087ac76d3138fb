import { useId } from 'react';
import type { Probe } from '#core/job/reading.ts';
import type { CircuitId } from '#core/quantity/id.ts';
import { nameOf } from '../../../language/name-of.ts';
import { readingWords } from '../../../language/readings.ts';
import { FieldFrame } from '../../../parts/index.ts';
import { type FindView, useFind } from '../find-context.ts';
import { type LeadGroup, leadKey } from './lead.ts';
import { leadName } from './reading-line.ts';

const words = readingWords.form;

/** Where one lead sits: the circuit's own nodes in order, the car, and the wires beside it. */
export function LeadSelect({
  label,
  value,
  groups,
  ownId,
  onChange,
}: {
  readonly label: string;
  readonly value: Probe;
  readonly groups: readonly LeadGroup[];
  readonly ownId: CircuitId;
  readonly onChange: (probe: Probe) => void;
}) {
  const view = useFind();
  const id = useId();
  const places = groups.flatMap((group) => group.places);
  const chosen = leadKey(value, ownId);
  // A lead kept without its half of a plug, or on a place no longer offered, is still said as it was written.
  const unlisted = places.some(({ key }) => key === chosen) ? null : value;
  return (
    <FieldFrame label={label} id={id}>
      <select
        id={id}
        className="input select"
        value={chosen}
        onChange={(event) => {
          const place = places.find(({ key }) => key === event.target.value);
          if (place) onChange(place.probe);
        }}
      >
        {unlisted ? <option value={chosen}>{placeName(unlisted, view)}</option> : null}
        {groups.map((group) => (
          <optgroup key={group.circuitId ?? 'car'} label={groupName(group, ownId, view)}>
            {group.places.map(({ key, probe }) => (
              <option key={key} value={key}>
                {placeName(probe, view)}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
    </FieldFrame>
  );
}

function groupName(group: LeadGroup, ownId: CircuitId, view: FindView): string {
  if (group.circuitId === null) return words.bodyAndBattery;
  const name = view.say(nameOf(view.open.map, group.circuitId));
  return group.circuitId === ownId ? `${words.ownWire}: ${name}` : name;
}

/** A place with its pin where the map knows it. */
function placeName(probe: Probe, view: FindView): string {
  const { map, line } = view.open;
  const name = leadName(probe, view);
  if (probe.on !== 'wire') return name;
  const circuit = probe.circuitId === undefined ? line?.circuit : map.circuits.get(probe.circuitId);
  const pin = circuit?.pins.find(({ nodeId }) => nodeId === probe.nodeId)?.pin;
  return pin ? words.pin(name, pin) : name;
}
