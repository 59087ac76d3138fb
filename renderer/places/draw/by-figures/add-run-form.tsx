import type { FormEvent } from 'react';
import { compareText } from '#core/quantity/compare-text.ts';
import type { NodeId } from '#core/quantity/id.ts';
import { figureWords } from '../../../language/by-figures.ts';
import { drawWords } from '../../../language/draw.ts';
import { nameOf } from '../../../language/name-of.ts';
import { Button, Field, Select } from '../../../parts/index.ts';
import { useDraft } from '../../../session/drafts.ts';
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
const newRun: {
  readonly name: string;
  readonly from: End;
  readonly to: End;
  readonly bends: readonly Measured[];
} = { name: '', from: newEnd, to: newEnd, bends: [] };

/** A run from one end to the other through bends, all by figures. */
export function AddRunForm() {
  const { map } = useDraw();
  const { add, said } = useAdding();
  const [{ name, from, to, bends }, change] = useDraft(map.id, 'add run', newRun);
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
      change({ name: '', bends: [] });
    }
  };
  return (
    <form className="by-figures-form" onSubmit={send}>
      <Field
        label={drawWords.fields.routeName}
        value={name}
        maxLength={120}
        hint={figureWords.nameHint}
        onChange={(value) => change({ name: value })}
      />
      <EndFields label={figureWords.from} value={from} onChange={(value) => change({ from: value })} />
      <PlaceList
        values={bends}
        onChange={(value) => change({ bends: value })}
        nameOf={figureWords.bend}
        more={figureWords.addBend}
      />
      <EndFields label={figureWords.to} value={to} onChange={(value) => change({ to: value })} />
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
