import { whatIf } from '#core/chafe/what-if.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Segment } from '#core/map/records.ts';

/** Places tried along the whole run, then as many again around the best of them. */
const tried = 16;
/** Nearer than this to a fixing another one holds nothing more. */
const apartMm = 20;

interface Best {
  readonly stationMm: number;
  readonly fallsBy: number;
}

/** Where one more fixing takes most of a run's hazard away; null where none takes any. */
export function bestClipMm(map: MapDocument, segment: Segment, lengthMm: number): number | null {
  const stepMm = lengthMm / (tried + 1);
  const rough = bestBetween(map, segment, stepMm, lengthMm - stepMm);
  if (!rough) return null;
  const from = Math.max(0, rough.stationMm - stepMm);
  const fine = bestBetween(map, segment, from, Math.min(lengthMm, rough.stationMm + stepMm));
  return fine && fine.fallsBy > rough.fallsBy ? fine.stationMm : rough.stationMm;
}

function bestBetween(map: MapDocument, segment: Segment, fromMm: number, toMm: number): Best | null {
  let best: Best | null = null;
  for (let i = 0; i < tried; i++) {
    const stationMm = fromMm + ((toMm - fromMm) * i) / (tried - 1);
    const near = segment.clips.some(
      (clip) => !clip.missing && Math.abs(clip.stationMm - stationMm) < apartMm,
    );
    if (near) continue;
    const change = whatIf(map, segment.id, { add: 'clip', stationMm });
    if (change.ok && change.value.fallsBy > (best?.fallsBy ?? 0)) {
      best = { stationMm, fallsBy: change.value.fallsBy };
    }
  }
  return best;
}
