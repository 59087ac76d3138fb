import type { RunProfile } from './run-profile.ts';

/** How stations and heights fall on the picture. */
export interface ProfileFrame {
  readonly xOf: (stationMm: number) => number;
  readonly yOf: (zMm: number) => number;
  readonly mmPerPx: number;
  /** Heights that get a line and a figure. */
  readonly ticksMm: readonly number[];
}

/** Heights shown are at least this much apart, so that a flat run is no wall of noise. */
const leastRangeMm = 200;
/** Heights above and below what is drawn, to drag into. */
const spareShare = 0.25;
const steps = [20, 50, 100, 200, 500, 1_000, 2_000, 5_000, 10_000, 20_000] as const;
const mostTicks = 4;

/** A frame for a profile in a picture of a given size; `left` px are kept for the figures. */
export function profileFrame(
  profile: RunProfile,
  {
    widthPx,
    heightPx,
    leftPx,
  }: { readonly widthPx: number; readonly heightPx: number; readonly leftPx: number },
): ProfileFrame {
  const heights = [...profile.points.map(({ zMm }) => zMm), 0];
  const least = Math.min(...heights);
  const most = Math.max(...heights, least + leastRangeMm);
  const spareMm = (most - least) * spareShare;
  const top = most + spareMm;
  const bottom = least - (least < 0 ? spareMm : spareMm / 2);
  const mmPerPx = (top - bottom) / heightPx;
  const step = steps.find((mm) => (top - bottom) / mm <= mostTicks + 1) ?? steps[steps.length - 1] ?? 1;
  const ticksMm: number[] = [];
  for (let mm = Math.ceil(bottom / step) * step; mm <= top; mm += step) ticksMm.push(mm);
  const pxPerMm = Math.max(1, widthPx - leftPx - endPx) / profile.line.lengthMm;
  return {
    xOf: (stationMm) => leftPx + stationMm * pxPerMm,
    yOf: (zMm) => (top - zMm) / mmPerPx,
    mmPerPx,
    ticksMm,
  };
}

/** Room for half a handle after the last point. */
const endPx = 14;
