import { bundleWith, circuitsThrough } from '#core/chafe/bundle-through.ts';
import { changeSegment } from '#core/map/commands/change-segment.ts';
import type { Segment } from '#core/map/records.ts';
import { routeWords } from '../../../language/route-choice.ts';
import { Button } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';

const words = routeWords.bundle;

/** How thick the loom is as worked out from the circuits through a run; a figure given by hand can be dropped for it. */
export function BundleLine({ segment }: { readonly segment: Segment }) {
  const { map, make } = useDraw();
  const { bundle, circuits, assumedWires } = bundleWith(circuitsThrough(map, segment.id), null);
  const mm = bundle.diameterMm.toFixed(1);
  const given = segment.bundleDiameterMm !== null;
  return (
    <div className="bundle-line">
      <p className="field-hint">
        {words.workedOut(mm, circuits.length, assumedWires)} {given ? words.given : ''}
      </p>
      {given ? (
        <Button
          onClick={() =>
            make(changeSegment(map, { segmentId: segment.id, changes: { bundleDiameterMm: null } }), {
              label: 'edit.changeSegment',
            })
          }
        >
          {words.use(mm)}
        </Button>
      ) : null}
    </div>
  );
}
