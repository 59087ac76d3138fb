import { whatIf } from '#core/chafe/what-if.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Segment } from '#core/map/records.ts';

/** Places tried along a run; between two of them the hazard hardly differs. */
const mostTried = 60;
const leastStepMm = 10;
/** Nearer than this to a fixing another one holds nothing more. */
const apartMm = 20;

/** Where one more fixing takes most of a run's hazard away; null where none takes any. */
export function bestClipMm(map: MapDocument, segment: Segment, lengthMm: number): number | null {
  const stepMm = Math.max(leastStepMm, lengthMm / mostTried);
  let best: number | null = null;
  let most = 0;
  for (let stationMm = stepMm; stationMm < lengthMm; stationMm += stepMm) {
    const near = segment.clips.some(
      (clip) => !clip.missing && Math.abs(clip.stationMm - stationMm) < apartMm,
    );
    if (near) continue;
    const tried = whatIf(map, segment.id, { add: 'clip', stationMm });
    if (tried.ok && tried.value.fallsBy > most) {
      most = tried.value.fallsBy;
      best = stationMm;
    }
  }
  return best;
}
