import type { Bounds } from '../geometry/bounds.ts';
import type { PlanPoint } from '../geometry/place.ts';
import { type BodyProportions, bodyProportions, type StarterStyle } from './body-proportions.ts';
import type { DriveSide } from './kinds.ts';

/**
 * Where a panel lies in plan: from x to x in mm of the style's usual car, from y to y as shares of half its
 * width, the right side positive. `right` is the right one of a pair, `driver` lies on the driver's side.
 */
interface Place {
  readonly side: 'whole' | 'right' | 'driver' | 'passenger';
  readonly box: (body: BodyProportions) => readonly [fromX: number, fromY: number, toX: number, toY: number];
}

const doorSplit = (body: BodyProportions): number => body.beltPillarMm;
const tailFrom = (body: BodyProportions): number => body.rearPillarMm - 60;

/** Believable places, common practice, no source: a start to drag into shape. */
const places: Readonly<Record<string, Place>> = {
  glovebox: { side: 'passenger', box: (b) => [b.dashMm - 150, 0.25, b.dashMm + 120, 0.72] },
  'lower-dash': { side: 'driver', box: (b) => [b.dashMm - 150, 0.2, b.dashMm + 120, 0.72] },
  'radio-trim': { side: 'whole', box: (b) => [b.dashMm - 60, -0.16, b.dashMm + 140, 0.16] },
  console: { side: 'whole', box: (b) => [b.dashMm + 140, -0.12, b.frontSeatMm + 560, 0.12] },
  'front-tread': { side: 'right', box: (b) => [b.dashMm + 200, 0.8, doorSplit(b) - 50, 0.93] },
  'rear-tread': { side: 'right', box: (b) => [doorSplit(b) + 50, 0.8, b.rearAxleMm - 320, 0.93] },
  'kick-trim': { side: 'right', box: (b) => [b.dashMm - 40, 0.74, b.dashMm + 200, 0.93] },
  'lower-b-trim': { side: 'right', box: (b) => [doorSplit(b) - 130, 0.78, doorSplit(b) + 130, 0.95] },
  'upper-b-trim': { side: 'right', box: (b) => [doorSplit(b) - 80, 0.68, doorSplit(b) + 80, 0.8] },
  'a-trim': { side: 'right', box: (b) => [b.screenBaseMm + 275, 0.62, b.roofFromMm + 90, 0.86] },
  'front-seat': { side: 'right', box: (b) => [b.frontSeatMm, 0.14, b.frontSeatMm + 650, 0.73] },
  'half-carpet': { side: 'right', box: (b) => [b.dashMm - 60, 0.1, b.frontSeatMm + 760, 0.8] },
  'front-door-card': { side: 'right', box: (b) => [b.dashMm + 60, 0.86, doorSplit(b) - 60, 0.98] },
  'rear-door-card': { side: 'right', box: (b) => [doorSplit(b) + 60, 0.86, b.rearAxleMm - 120, 0.98] },
  'rear-seat-base': { side: 'whole', box: (b) => [b.benchMm ?? 0, -0.74, (b.benchMm ?? 0) + 480, 0.74] },
  'rear-seat-back': {
    side: 'whole',
    box: (b) => [(b.benchMm ?? 0) + 420, -0.66, (b.benchMm ?? 0) + 600, 0.66],
  },
  'rear-pillar-trim': { side: 'right', box: (b) => [tailFrom(b) - 140, 0.64, tailFrom(b) + 110, 0.86] },
  'boot-floor': { side: 'whole', box: (b) => [b.loadFromMm, -0.56, b.loadToMm - 90, 0.56] },
  'boot-sill': { side: 'whole', box: (b) => [b.loadToMm - 90, -0.6, b.loadToMm + 40, 0.6] },
  'boot-side': { side: 'right', box: (b) => [b.loadFromMm + 40, 0.56, b.loadToMm - 60, 0.86] },
  'boot-lid-cover': { side: 'whole', box: (b) => [b.loadFromMm + 80, -0.5, b.loadToMm - 20, 0.5] },
  'hinge-gaiter': { side: 'right', box: (b) => [b.roofToMm - 90, 0.28, b.roofToMm + 30, 0.4] },
  'tailgate-surround': { side: 'whole', box: (b) => [b.roofToMm - 40, -0.62, b.roofToMm + 60, 0.62] },
  'tailgate-trim': { side: 'whole', box: (b) => [b.roofToMm + 60, -0.62, b.lengthMm - 40, 0.62] },
  'headlining-front': { side: 'whole', box: (b) => [b.roofFromMm + 20, -0.6, doorSplit(b), 0.6] },
  'headlining-rear': { side: 'whole', box: (b) => [doorSplit(b), -0.6, b.roofToMm - 60, 0.6] },
  'headlining-side': { side: 'right', box: (b) => [b.roofFromMm + 200, 0.5, b.roofToMm - 140, 0.68] },
  'ply-side': { side: 'right', box: (b) => [b.loadFromMm + 60, 0.85, b.loadToMm - 60, 0.95] },
  'step-trim': { side: 'passenger', box: (b) => [doorSplit(b) + 120, 0.62, doorSplit(b) + 1000, 0.93] },
  'arch-liner': { side: 'right', box: (b) => [b.frontAxleMm - 345, 0.68, b.frontAxleMm + 345, 0.93] },
  undertray: { side: 'whole', box: (b) => [120, -0.6, b.frontAxleMm + 300, 0.6] },
  'bumper-cover': { side: 'whole', box: (b) => [b.lengthMm - 190, -0.74, b.lengthMm, 0.74] },
  'spare-wheel': { side: 'whole', box: (b) => [b.rearAxleMm + 180, -0.36, b.rearAxleMm + 840, 0.36] },
  'load-bed': { side: 'whole', box: (b) => [b.loadFromMm, -0.85, b.loadToMm, 0.85] },
  'fuel-tank': { side: 'whole', box: (b) => [b.rearAxleMm - 620, -0.45, b.rearAxleMm - 160, 0.45] },
  battery: { side: 'passenger', box: (b) => [b.noseMm * 0.7, 0.4, b.noseMm * 0.7 + 280, 0.62] },
};

/**
 * The area of a default panel (by its key) of a body style, fitted to the rectangle round the drawn shell:
 * four corners on the plan. Empty for a panel nobody has given a place.
 * @example
 * panelPlace('hatch', 'load-bed', { minXMm: 0, minYMm: -930, maxXMm: 5300, maxYMm: 930 }, 'right').length // => 4
 */
export function panelPlace(
  style: StarterStyle,
  key: string,
  shell: Bounds,
  driveSide: DriveSide,
): readonly PlanPoint[] {
  const left = key.startsWith('left-');
  const place = places[key.replace(/^(left|right)-/, '')];
  if (!place) return [];
  const body = bodyProportions[style];
  const [fromX, fromY, toX, toY] = place.box(body);
  const onLeft =
    place.side === 'right'
      ? left
      : place.side !== 'whole' && (place.side === 'driver') === (driveSide === 'left');
  const sign = onLeft ? -1 : 1;
  const middleMm = (shell.minYMm + shell.maxYMm) / 2;
  const halfMm = (shell.maxYMm - shell.minYMm) / 2;
  const x = (mm: number): number => shell.minXMm + (mm / body.lengthMm) * (shell.maxXMm - shell.minXMm);
  const y = (share: number): number => middleMm + sign * share * halfMm;
  return [
    { xMm: x(fromX), yMm: y(fromY) },
    { xMm: x(toX), yMm: y(fromY) },
    { xMm: x(toX), yMm: y(toY) },
    { xMm: x(fromX), yMm: y(toY) },
  ];
}

/**
 * Keys of all panels that have a place, without their side.
 * @example
 * placedPanelKeys().includes('console') // => true
 */
export function placedPanelKeys(): readonly string[] {
  return Object.keys(places);
}
