import { changeClip } from '#core/map/commands/change-clip.ts';
import { moveClip } from '#core/map/commands/move-clip.ts';
import { clipKinds } from '#core/map/kinds.ts';
import type { Clip, Segment } from '#core/map/records.ts';
import { runLine } from '../../board/run-line.ts';
import { drawWords } from '../../language/draw.ts';
import { nameOf } from '../../language/name-of.ts';
import { clipKindWords } from '../../language/words.ts';
import { Button, Checkbox, Select } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';
import { FigureField } from './figure-field.tsx';
import { optionsOf } from './options-of.ts';

/** One fixing on its run. */
export function ClipForm({ segment, clip }: { readonly segment: Segment; readonly clip: Clip }) {
  const { map, make, goTo } = useDraw();
  const at = { segmentId: segment.id, clipId: clip.id };
  return (
    <section className="form" aria-label={clipKindWords[clip.kind]}>
      <h2>{clipKindWords[clip.kind]}</h2>
      <Button onClick={() => goTo([segment.id])}>{nameOf(map, segment.id)}</Button>
      <Select
        label={drawWords.fields.kind}
        value={clip.kind}
        options={optionsOf(clipKinds, clipKindWords)}
        onChange={(kind) => make(changeClip(map, { ...at, changes: { kind } }), { label: 'edit.changeClip' })}
      />
      <FigureField
        label={drawWords.fields.station}
        value={clip.stationMm}
        unit={drawWords.units.mm}
        min={0}
        max={runLine(map, segment)?.lengthMm ?? 0}
        onChange={(stationMm) =>
          make(moveClip(map, { ...at, stationMm: stationMm ?? 0 }), {
            label: 'edit.moveClip',
            joinKey: `${clip.id}.station`,
          })
        }
      />
      <Checkbox
        label={drawWords.fields.missing}
        checked={clip.missing}
        onChange={(missing) =>
          make(changeClip(map, { ...at, changes: { missing } }), { label: 'edit.changeClip' })
        }
      />
    </section>
  );
}
