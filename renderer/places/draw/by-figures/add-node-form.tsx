import { type FormEvent, useState } from 'react';
import { nodeKinds } from '#core/map/kinds.ts';
import type { SegmentId } from '#core/quantity/id.ts';
import { figureWords } from '../../../language/by-figures.ts';
import { nodeKindWords } from '../../../language/words.ts';
import { Button, Choice, Field, Select } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';
import { optionsOf } from '../options-of.ts';
import { addedNode } from './added-things.ts';
import { atZero, bodyFrame, placeOf } from './body-frame.ts';
import { PlaceFields } from './place-fields.tsx';
import { RunSelect, StationField } from './run-station.tsx';
import { useAdding } from './use-adding.tsx';

const wheres = [
  { value: 'alone', label: figureWords.alone },
  { value: 'run', label: figureWords.onRun },
] as const;

/** A plug or part by its place, or by its place along a run. */
export function AddNodeForm() {
  const { map } = useDraw();
  const { add, said } = useAdding();
  const [kind, setKind] = useState<(typeof nodeKinds)[number]>('inline-connector');
  const [name, setName] = useState('');
  const [where, setWhere] = useState<'alone' | 'run'>('alone');
  const [at, setAt] = useState(atZero);
  const [segmentId, setSegmentId] = useState<SegmentId | null>(null);
  const [stationMm, setStationMm] = useState(0);
  const send = (event: FormEvent): void => {
    event.preventDefault();
    const place = where === 'alone' ? placeOf(bodyFrame(map), at) : segmentId && { segmentId, stationMm };
    const added = place
      ? addedNode(map, { kind, name, at: place }, Math.random)
      : { missing: figureWords.missing.run };
    if (add(added, 'edit.addNode')) setName('');
  };
  return (
    <form className="by-figures-form" onSubmit={send}>
      <Select
        label={figureWords.kind}
        value={kind}
        options={optionsOf(nodeKinds, nodeKindWords)}
        onChange={setKind}
      />
      <Field
        label={figureWords.name}
        value={name}
        maxLength={120}
        hint={figureWords.nameHint}
        onChange={setName}
      />
      <Choice label={figureWords.where} value={where} options={wheres} onChange={setWhere} />
      {where === 'alone' ? (
        <PlaceFields value={at} onChange={setAt} />
      ) : (
        <>
          <RunSelect value={segmentId} onChange={setSegmentId} />
          <StationField segmentId={segmentId} value={stationMm} onChange={setStationMm} />
        </>
      )}
      <Button type="submit">{figureWords.add}</Button>
      {said}
    </form>
  );
}
