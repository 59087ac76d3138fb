import type { FormEvent } from 'react';
import { type ClipKind, clipKinds } from '#core/map/kinds.ts';
import type { SegmentId } from '#core/quantity/id.ts';
import { figureWords } from '../../../language/by-figures.ts';
import { clipKindWords } from '../../../language/words.ts';
import { Button, Select } from '../../../parts/index.ts';
import { useDraft } from '../../../session/drafts.ts';
import { useDraw } from '../draw-context.ts';
import { optionsOf } from '../options-of.ts';
import { addedClip } from './added-things.ts';
import { RunSelect, runStillThere, StationField } from './run-station.tsx';
import { useAdding } from './use-adding.tsx';

const newClip: {
  readonly kind: ClipKind;
  readonly segmentId: SegmentId | null;
  readonly stationMm: number;
} = { kind: 'clip', segmentId: null, stationMm: 0 };

/** A fixing by its place along a run. */
export function AddClipForm() {
  const { map } = useDraw();
  const { add, said } = useAdding();
  const [draft, change] = useDraft(map.id, 'add fixing', newClip);
  const { kind, stationMm } = draft;
  const segmentId = runStillThere(map, draft.segmentId);
  const send = (event: FormEvent): void => {
    event.preventDefault();
    const added = segmentId
      ? addedClip(map, { segmentId, stationMm, kind }, Math.random)
      : { missing: figureWords.missing.run };
    add(added, 'edit.addClip');
  };
  return (
    <form className="by-figures-form" onSubmit={send}>
      <RunSelect value={segmentId} onChange={(value) => change({ segmentId: value })} />
      <StationField
        segmentId={segmentId}
        value={stationMm}
        onChange={(value) => change({ stationMm: value })}
      />
      <Select
        label={figureWords.kind}
        value={kind}
        options={optionsOf(clipKinds, clipKindWords)}
        onChange={(value) => change({ kind: value })}
      />
      <Button type="submit">{figureWords.add}</Button>
      {said}
    </form>
  );
}
