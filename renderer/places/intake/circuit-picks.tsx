import type { Circuit } from '#core/map/records.ts';
import type { CircuitId } from '#core/quantity/id.ts';
import { intakeWords } from '../../language/intake.ts';
import { Choice } from '../../parts/index.ts';

type Standing = 'unknown' | 'failing' | 'working';

const options: readonly { readonly value: Standing; readonly label: string }[] = [
  { value: 'unknown', label: intakeWords.standing.unknown },
  { value: 'failing', label: intakeWords.standing.failing },
  { value: 'working', label: intakeWords.standing.working },
];

/** For each other circuit of the map: does it fail as well, does it work, or was it not tried? */
export function CircuitPicks({
  circuits,
  failing,
  working,
  onChange,
}: {
  readonly circuits: readonly Circuit[];
  readonly failing: readonly CircuitId[];
  readonly working: readonly CircuitId[];
  readonly onChange: (failing: CircuitId[], working: CircuitId[]) => void;
}) {
  const pick = (id: CircuitId, standing: Standing): void => {
    const without = (ids: readonly CircuitId[]): CircuitId[] => ids.filter((each) => each !== id);
    onChange(
      standing === 'failing' ? [...without(failing), id] : without(failing),
      standing === 'working' ? [...without(working), id] : without(working),
    );
  };
  return (
    <section className="circuit-picks" aria-label={`${intakeWords.alsoFailing}, ${intakeWords.working}`}>
      <p className="field-label">
        {intakeWords.alsoFailing} · {intakeWords.working}
      </p>
      <p className="field-hint">{intakeWords.othersHint}</p>
      <ul>
        {circuits.map((circuit) => (
          <li key={circuit.id}>
            <span>{circuit.name}</span>
            <Choice
              label={circuit.name}
              hideLabel
              value={
                failing.includes(circuit.id)
                  ? 'failing'
                  : working.includes(circuit.id)
                    ? 'working'
                    : 'unknown'
              }
              options={options}
              onChange={(standing) => pick(circuit.id, standing)}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}
