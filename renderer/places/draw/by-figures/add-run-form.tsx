import { type FormEvent, useState } from 'react';
import { compareText } from '#core/quantity/compare-text.ts';
import type { NodeId } from '#core/quantity/id.ts';
import { figureWords } from '../../../language/by-figures.ts';
import { drawWords } from '../../../language/draw.ts';
import { nameOf } from '../../../language/name-of.ts';
import { Button, Field, Select } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';
import { addedRun } from './added-things.ts';
import { atZero, bodyFrame, type Measured, placeOf } from './body-frame.ts';
import { PlaceFields, PlaceList } from './place-fields.tsx';
import { useAdding } from './use-adding.tsx';

interface End {
  readonly nodeId: NodeId | null;
  readonly at: Measured;
}
const newEnd: End = { nodeId: null, at: atZero };

/** A run from one end to the other through bends, all by figures. */
export function AddRunForm() {
  const { map } = useDraw();
  const { add, said } = useAdding();
  const [name, setName] = useState('');
  const [from, setFrom] = useState(newEnd);
  const [to, setTo] = useState(newEnd);
  const [bends, setBends] = useState<readonly Measured[]>([]);
  const send = (event: FormEvent): void => {
    event.preventDefault();
    const frame = bodyFrame(map);
    const endOf = ({ nodeId, at }: End) => (nodeId && map.nodes.has(nodeId) ? nodeId : placeOf(frame, at));
    const added = addedRun(
      map,
      { name, from: endOf(from), to: endOf(to), bends: bends.map((bend) => placeOf(frame, bend)) },
      Math.random,
    );
    if (add(added, 'edit.drawRoute')) {
      setName('');
      setBends([]);
    }
  };
  return (
    <form className="by-figures-form" onSubmit={send}>
      <Field
        label={drawWords.fields.routeName}
        value={name}
        maxLength={120}
        hint={figureWords.nameHint}
        onChange={setName}
      />
      <EndFields label={figureWords.from} value={from} onChange={setFrom} />
      <PlaceList values={bends} onChange={setBends} nameOf={figureWords.bend} more={figureWords.addBend} />
      <EndFields label={figureWords.to} value={to} onChange={setTo} />
      <Button type="submit">{figureWords.add}</Button>
      {said}
    </form>
  );
}

/** One end of a run: a part that is there, or a place. */
function EndFields({
  label,
  value,
  onChange,
}: {
  readonly label: string;
  readonly value: End;
  readonly onChange: (value: End) => void;
}) {
  const { map } = useDraw();
  const nodes = [...map.nodes.values()]
    .map(({ id }) => ({ value: id as string, label: nameOf(map, id) }))
    .sort((a, b) => compareText(a.label, b.label) || compareText(a.value, b.value));
  return (
    <fieldset className="bend">
      <legend className="only-read-aloud">{label}</legend>
      <Select
        label={label}
        value={value.nodeId ?? ''}
        options={[{ value: '', label: figureWords.newEnd }, ...nodes]}
        onChange={(id) => onChange({ ...value, nodeId: id === '' ? null : (id as NodeId) })}
      />
      {value.nodeId === null ? (
        <PlaceFields value={value.at} onChange={(at) => onChange({ ...value, at })} />
      ) : null}
    </fieldset>
  );
}
