import type { CarState } from '#core/job/reading.ts';
import type { NodeId } from '#core/quantity/id.ts';
import { nameOf } from '../../../language/name-of.ts';
import { readingWords } from '../../../language/readings.ts';
import { Button, Choice } from '../../../parts/index.ts';
import { useFind } from '../find-context.ts';
import { fuseNodes, plugsOf } from './lead.ts';

const words = readingWords.form;

/** How the car stood: what is apart, in the circuit's order, and switch, ignition and battery. */
export function CarStateChoice({
  state,
  onChange,
}: {
  readonly state: CarState;
  readonly onChange: (state: CarState) => void;
}) {
  const { open, say } = useFind();
  const { map, line } = open;
  if (!line) return null;
  const apart = new Set(state.apartNodeIds);
  const hasSwitch = line.circuit.ends.some(({ kind }) => kind === 'switch-to-ground');
  const fused = fuseNodes(line);
  const toggle = (nodeId: NodeId): void => {
    const next = new Set(apart);
    if (!next.delete(nodeId)) next.add(nodeId);
    onChange({ ...state, apartNodeIds: plugsOf(map, line, state).filter((id) => next.has(id)) });
  };
  return (
    <fieldset className="car-state">
      <legend className="only-read-aloud">{words.car}</legend>
      <span className="car-state-label" id="car-state-apart">
        {words.apart}
      </span>
      {plugsOf(map, line, state).map((nodeId) => (
        <Button key={nodeId} aria-pressed={apart.has(nodeId)} onClick={() => toggle(nodeId)}>
          <span className="only-read-aloud">{words.apart}: </span>
          {fused.has(nodeId) ? words.fuseOut : say(nameOf(map, nodeId))}
        </Button>
      ))}
      <span className="car-state-rest">
        <Button
          aria-pressed={state.ignitionOn}
          onClick={() => onChange({ ...state, ignitionOn: !state.ignitionOn })}
        >
          {words.ignition}
        </Button>
        <Button
          aria-pressed={state.batteryConnected}
          onClick={() => onChange({ ...state, batteryConnected: !state.batteryConnected })}
        >
          {words.battery12}
        </Button>
        {hasSwitch ? (
          <Choice
            label={words.switch}
            value={state.switchClosed === null ? 'unknown' : state.switchClosed ? 'closed' : 'open'}
            options={(['open', 'closed', 'unknown'] as const).map((value) => ({
              value,
              label: words.switchWords[value],
            }))}
            onChange={(value) =>
              onChange({ ...state, switchClosed: value === 'unknown' ? null : value === 'closed' })
            }
          />
        ) : null}
      </span>
    </fieldset>
  );
}
