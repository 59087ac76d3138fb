import type { FormEvent } from 'react';
import { nodeKinds } from '#core/map/kinds.ts';
import type { SegmentId } from '#core/quantity/id.ts';
import { figureWords } from '../../../language/by-figures.ts';
import { nodeKindWords } from '../../../language/words.ts';
import { Button, Choice, Field, Select } from '../../../parts/index.ts';
import { useDraft } from '../../../session/drafts.ts';
import { useDraw } from '../draw-context.ts';
import { optionsOf } from '../options-of.ts';
import { addedNode } from './added-things.ts';
import { atZero, bodyFrame, type Measured, placeOf } from './body-frame.ts';
import { PlaceFields } from './place-fields.tsx';
import { RunSelect, runStillThere, StationField } from './run-station.tsx';
import { useAdding } from './use-adding.tsx';

const wheres = [
  { value: 'alone', label: figureWords.alone },
  { value: 'run', label: figureWords.onRun },
] as const;

const newNode: {
  readonly kind: (typeof nodeKinds)[number];
  readonly name: string;
  readonly where: 'alone' | 'run';
  readonly at: Measured;
  readonly segmentId: SegmentId | null;
  readonly stationMm: number;
} = { kind: 'inline-connector', name: '', where: 'alone', at: atZero, segmentId: null, stationMm: 0 };

/** A plug or part by its place, or by its place along a run. */
export function AddNodeForm() {
  const { map } = useDraw();
  const { add, said } = useAdding();
  const [draft, change] = useDraft(map.id, 'add part', newNode);
  const { kind, name, where, at, stationMm } = draft;
  const segmentId = runStillThere(map, draft.segmentId);
  const send = (event: FormEvent): void => {
    event.preventDefault();
    const place = where === 'alone' ? placeOf(bodyFrame(map), at) : segmentId && { segmentId, stationMm };
    const added = place
      ? addedNode(map, { kind, name, at: place }, Math.random)
      : { missing: figureWords.missing.run };
    if (add(added, 'edit.addNode')) change({ name: '' });
  };
  return (
    <form className="by-figures-form" onSubmit={send}>
      <Select
        label={figureWords.kind}
        value={kind}
        options={optionsOf(nodeKinds, nodeKindWords)}
        onChange={(value) => change({ kind: value })}
      />
      <Field
        label={figureWords.name}
        value={name}
        maxLength={120}
        hint={figureWords.nameHint}
        onChange={(value) => change({ name: value })}
      />
      <Choice
        label={figureWords.where}
        value={where}
        options={wheres}
        onChange={(value) => change({ where: value })}
      />
      {where === 'alone' ? (
        <PlaceFields value={at} onChange={(value) => change({ at: value })} />
      ) : (
        <>
          <RunSelect value={segmentId} onChange={(value) => change({ segmentId: value })} />
          <StationField
            segmentId={segmentId}
            value={stationMm}
            onChange={(value) => change({ stationMm: value })}
          />
        </>
      )}
      <Button type="submit">{figureWords.add}</Button>
      {said}
    </form>
  );
}
