import { causeMass } from '#core/chafe/run-causes.ts';
import { type SegmentHazard, wholeHazard } from '#core/chafe/segment-hazard.ts';

/** A part of a run, by drawn station. */
export interface Stretch {
  readonly fromMm: number;
  readonly toMm: number;
}

/** A hand's width to look at: causes farther off do not explain this place. */
const halfMm = 50;

/** The stretch around a place on a run; at an end it stays as long and lies inside. */
export function stretchAround(lengthMm: number, stationMm: number): Stretch {
  const fromMm = Math.max(0, Math.min(stationMm - halfMm, lengthMm - 2 * halfMm));
  return { fromMm, toMm: Math.min(lengthMm, Math.max(stationMm + halfMm, 2 * halfMm)) };
}

/** Share (0 to 1) of the run's hazard that lies on a stretch of it. */
export function shareOnStretch(hazard: SegmentHazard, { fromMm, toMm }: Stretch): number {
  const whole = wholeHazard(hazard);
  const here = causeMass(hazard, { firstCell: 0, perMm: hazard.perMm }, fromMm, toMm);
  return whole > 0 ? here / whole : 0;
}

/** Where on the run the hazard is largest. */
export function worstStationMm({ perMm, cellMm }: SegmentHazard): number {
  let worst = 0;
  for (let i = 1; i < perMm.length; i++) if ((perMm[i] as number) > (perMm[worst] as number)) worst = i;
  return (worst + 0.5) * cellMm;
}
