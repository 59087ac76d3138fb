import { changeClip } from '#core/map/commands/change-clip.ts';
import { changeOutline } from '#core/map/commands/change-outline.ts';
import { changeUnderlay } from '#core/map/commands/change-underlay.ts';
import { clipKinds, outlineKinds } from '#core/map/kinds.ts';
import type { Clip, Outline, Underlay } from '#core/map/records.ts';
import type { SegmentId } from '#core/quantity/id.ts';
import { drawWords } from '../../../language/draw.ts';
import { pictureWords } from '../../../language/draw-first.ts';
import { clipKindWords, outlineKindWords } from '../../../language/words.ts';
import { optionsOf } from '../options-of.ts';
import { SharedFigure, SharedSelect, SharedTick } from './shared-fields.tsx';
import { shareOf } from './shared-value.ts';
import { useChangeEach } from './use-change-each.ts';

/** What several outlines have in common. */
export function SeveralOutlines({ outlines }: { readonly outlines: readonly Outline[] }) {
  const change = useChangeEach(outlines, (map, { id }, changes) =>
    changeOutline(map, { outlineId: id, changes }),
  );
  return (
    <SharedSelect
      label={drawWords.fields.kind}
      values={outlines.map((outline) => outline.kind)}
      options={optionsOf(outlineKinds, outlineKindWords)}
      onChange={(kind) => change({ kind })}
    />
  );
}

/** A fixing with the run it sits on. */
export interface SeatedClip extends Clip {
  readonly segmentId: SegmentId;
}

/** What several fixings have in common. */
export function SeveralClips({ clips }: { readonly clips: readonly SeatedClip[] }) {
  const change = useChangeEach(clips, (map, { id, segmentId }, { kind, missing }) =>
    changeClip(map, {
      segmentId,
      clipId: id,
      changes: { ...(kind ? { kind } : {}), ...(missing === undefined ? {} : { missing }) },
    }),
  );
  return (
    <>
      <SharedSelect
        label={drawWords.fields.kind}
        values={clips.map((clip) => clip.kind)}
        options={optionsOf(clipKinds, clipKindWords)}
        onChange={(kind) => change({ kind })}
      />
      <SharedTick
        label={drawWords.fields.missing}
        share={shareOf(
          clips.map((clip) => [clip.missing]),
          true,
        )}
        onChange={(missing) => change({ missing })}
      />
    </>
  );
}

/** What several pictures have in common. */
export function SeveralPictures({ pictures }: { readonly pictures: readonly Underlay[] }) {
  const change = useChangeEach(pictures, (map, { id }, changes) =>
    changeUnderlay(map, { underlayId: id, changes }),
  );
  return (
    <>
      <SharedFigure
        label={pictureWords.strength}
        values={pictures.map((picture) => picture.opacity * 100)}
        unit={pictureWords.strengthUnit}
        min={0}
        max={100}
        places={0}
        onChange={(percent) => change({ opacity: (percent ?? 0) / 100 }, 'opacity')}
      />
      <SharedTick
        label={pictureWords.hidden}
        share={shareOf(
          pictures.map((picture) => [picture.hidden]),
          true,
        )}
        onChange={(hidden) => change({ hidden })}
      />
    </>
  );
}
