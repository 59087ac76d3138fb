import { joinSegments } from '#core/map/commands/join-segments.ts';
import { splitSegment } from '#core/map/commands/split-segment.ts';
import { compareMaps } from '#core/map/compare-maps.ts';
import { applyPatch } from '#core/map/patch.ts';
import { edited } from '#tests/generated/edited.ts';
import { randomEdit, verbNames } from '#tests/generated/random-edit.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { type Measured, measure } from './measure.ts';

/** Verbs that by their nature touch everything drawn; the rest must answer within a few frames. */
const wholeMapVerbs: ReadonlySet<string> = new Set(['setScale', 'proposeTags', 'confirmTags']);

/** How long each drawing verb takes on a map of 5,000 runs, and comparing two states of it. */
export function drawingVerbs(): Measured[] {
  const map = randomMap(7, { runs: 5_000, bendsPerRun: 4, panels: 60, rubSpots: 300, circuits: 60 });
  // The random join looks through the whole map for runs that fit: it is measured on known ones instead.
  const measured = verbNames
    .filter((verb) => verb !== 'joinSegments')
    .map((verb) =>
      measure(`verb ${verb} on 5,000 runs`, 9, wholeMapVerbs.has(verb) ? null : 50, (round) =>
        randomEdit(map, verb, round + 100),
      ),
    );
  const nodeId = 'node:cut';
  const [run] = map.segments.values();
  if (!run) throw new Error('the map has no run');
  const ids = { nodeId, segmentId: 'segment:cut' } as const;
  const cut = edited(map, splitSegment(map, { segmentId: run.id, stationMm: 40, ids }));
  measured.push(
    measure('verb joinSegments on 5,000 runs', 9, 50, () => edited(cut, joinSegments(cut, { nodeId }))),
  );
  const patch = randomEdit(map, 'moveThings', 7);
  const other = patch?.ok ? applyPatch(map, patch.value) : null;
  if (!other?.ok) throw new Error('the edit to compare was refused');
  // As two states come from the store: nothing shared, every record looked into.
  const reread = { ...other.value, segments: structuredClone(other.value.segments) };
  return [...measured, measure('compare two states of 5,000 runs', 9, null, () => compareMaps(map, reread))];
}
