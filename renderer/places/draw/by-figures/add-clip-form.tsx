import { type FormEvent, useState } from 'react';
import { type ClipKind, clipKinds } from '#core/map/kinds.ts';
import type { SegmentId } from '#core/quantity/id.ts';
import { figureWords } from '../../../language/by-figures.ts';
import { clipKindWords } from '../../../language/words.ts';
import { Button, Select } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';
import { optionsOf } from '../options-of.ts';
import { addedClip } from './added-things.ts';
import { RunSelect, StationField } from './run-station.tsx';
import { useAdding } from './use-adding.tsx';

/** A fixing by its place along a run. */
export function AddClipForm() {
  const { map } = useDraw();
  const { add, said } = useAdding();
  const [kind, setKind] = useState<ClipKind>('clip');
  const [segmentId, setSegmentId] = useState<SegmentId | null>(null);
  const [stationMm, setStationMm] = useState(0);
  const send = (event: FormEvent): void => {
    event.preventDefault();
    const added = segmentId
      ? addedClip(map, { segmentId, stationMm, kind }, Math.random)
      : { missing: figureWords.missing.run };
    add(added, 'edit.addClip');
  };
  return (
    <form className="by-figures-form" onSubmit={send}>
      <RunSelect value={segmentId} onChange={setSegmentId} />
      <StationField segmentId={segmentId} value={stationMm} onChange={setStationMm} />
      <Select
        label={figureWords.kind}
        value={kind}
        options={optionsOf(clipKinds, clipKindWords)}
        onChange={setKind}
      />
      <Button type="submit">{figureWords.add}</Button>
      {said}
    </form>
  );
}
