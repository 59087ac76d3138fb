import { layStraight } from '#core/circuit/circuit-line.ts';
import type { Circuit } from '#core/map/records.ts';
import { drawWords } from '../../language/draw.ts';
import { nameOf } from '../../language/name-of.ts';
import { Field } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';

/** The pin at each plug or part on a circuit's way. */
export function CircuitPins({
  circuit,
  change,
}: {
  readonly circuit: Circuit;
  readonly change: (changes: Partial<Omit<Circuit, 'id'>>, joinKey?: string) => void;
}) {
  const { map } = useDraw();
  const laid = layStraight(map, circuit);
  if (!laid.ok) return null;
  const plugged = laid.value.nodes.filter(({ nodeId }) => {
    const kind = map.nodes.get(nodeId)?.kind;
    return kind !== undefined && kind !== 'branch' && kind !== 'grommet' && kind !== 'splice';
  });
  if (plugged.length === 0) return null;
  return (
    <fieldset className="picks">
      <legend className="field-label">{drawWords.fields.pins}</legend>
      {plugged.map(({ nodeId }) => (
        <Field
          key={nodeId}
          label={drawWords.fields.pin(nameOf(map, nodeId))}
          value={circuit.pins.find((pin) => pin.nodeId === nodeId)?.pin ?? ''}
          maxLength={20}
          onChange={(pin) => {
            const others = circuit.pins.filter((each) => each.nodeId !== nodeId);
            change({ pins: pin === '' ? others : [...others, { nodeId, pin }] }, `pin.${nodeId}`);
          }}
        />
      ))}
    </fieldset>
  );
}
