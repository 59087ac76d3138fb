import { changeSegment } from '#core/map/commands/change-segment.ts';
import { coverings, segmentTraits } from '#core/map/kinds.ts';
import type { Segment } from '#core/map/records.ts';
import { drawWords } from '../../../language/draw.ts';
import { severalWords } from '../../../language/draw-several.ts';
import { coveringWords, segmentTraitWords } from '../../../language/words.ts';
import { Field } from '../../../parts/index.ts';
import { optionsOf } from '../options-of.ts';
import { TagActions } from '../tag-actions.tsx';
import { SharedFigure, SharedNote, SharedSelect, SharedTick, SharedTicks } from './shared-fields.tsx';
import { sharedValue, shareOf } from './shared-value.ts';
import { useChangeEach, withWord } from './use-change-each.ts';

const words = drawWords.fields;

/** What several runs have in common. */
export function SeveralRuns({ runs }: { readonly runs: readonly Segment[] }) {
  const change = useChangeEach(runs, (map, { id }, { id: _, clips, tags, ...changes }: Partial<Segment>) =>
    changeSegment(map, { segmentId: id, changes }),
  );
  const route = sharedValue(runs.map((run) => run.routeName));
  const ticked = (values: readonly boolean[]) =>
    shareOf(
      values.map((value) => [value]),
      true,
    );
  return (
    <>
      <Field
        label={words.routeName}
        value={route ?? ''}
        maxLength={120}
        {...(route === undefined ? { placeholder: severalWords.differs } : {})}
        onChange={(routeName) => change({ routeName }, 'routeName')}
      />
      <SharedSelect
        label={words.cover}
        values={runs.map((run) => run.covering)}
        options={optionsOf(coverings, coveringWords)}
        onChange={(covering) => change({ covering })}
      />
      <SharedFigure
        label={words.bundle}
        values={runs.map((run) => run.bundleDiameterMm)}
        unit={drawWords.units.mm}
        min={0.1}
        max={200}
        mayBeEmpty
        hint={words.bundleHint}
        onChange={(bundleDiameterMm) => change({ bundleDiameterMm }, 'bundleDiameterMm')}
      />
      <TagActions segmentIds={runs.map((run) => run.id)} />
      <SharedTicks
        label={words.traits}
        lists={runs.map((run) => run.traits)}
        options={optionsOf(segmentTraits, segmentTraitWords)}
        onChange={(trait, on) =>
          change((run) => ({ traits: withWord(segmentTraits, run.traits, trait, on) }))
        }
      />
      <SharedTick
        label={words.smooth}
        share={ticked(runs.map((run) => run.smooth))}
        onChange={(smooth) => change({ smooth })}
      />
      <SharedTick
        label={words.unchecked}
        share={ticked(runs.map((run) => run.unchecked))}
        onChange={(unchecked) => change({ unchecked })}
      />
      <SharedNote values={runs.map((run) => run.note)} onChange={(note) => change({ note }, 'note')} />
    </>
  );
}
