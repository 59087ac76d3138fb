import type { ChafeAssumptions } from '#core/chafe/chafe-assumptions.ts';
import type { NearSpot } from '#core/chafe/near-spots.ts';
import type { RunContext } from '#core/chafe/run-context.ts';
import type { Span, Swing } from '#core/chafe/span.ts';
import { spotDistanceMm } from '#core/chafe/spot-distance.ts';
import { runReach, type SpotMeeting, spotMeeting } from '#core/chafe/spot-meeting.ts';
import { planDistanceToPathMm } from '#core/geometry/piece-distance.ts';
import { polygonContains } from '#core/geometry/polygon.ts';
import { pointAtStation } from '#core/geometry/station-line.ts';
import type { RubSpot } from '#core/map/records.ts';
import { normalTail } from '#core/quantity/normal-tail.ts';

/**
 * The rubbing of a run on a spot and on the bare body, cut into the same pieces as the quick way cuts it, but each
 * worked out by itself from the formulas: every place measured, every sine and tail exact, no tables, nothing
 * jumped, nothing carried on from the piece before.
 */

/** A part of a half cell that lies in one span, from and to in half cells from the run's start. */
interface Slice {
  readonly cell: number;
  readonly from: number;
  readonly to: number;
  readonly span: Span;
}

function slicesOf({ spans, cellCount, cellMm }: RunContext): readonly Slice[] {
  const slices: Slice[] = [];
  for (let half = 0; half < 2 * cellCount; half++) {
    const borders = spans.slice(0, -1).map(({ toMm }) => (2 * toMm) / cellMm);
    const inside = borders.filter((at) => at > half + 1e-6 && at < half + 1 - 1e-6);
    const cuts = [half, ...inside, half + 1];
    for (let i = 1; i < cuts.length; i++) {
      const [from, to] = [cuts[i - 1] as number, cuts[i] as number];
      const middleMm = ((from + to) * cellMm) / 4;
      const span = spans.find(({ toMm }) => toMm > middleMm) ?? (spans[spans.length - 1] as Span);
      slices.push({ cell: half >> 1, from, to, span });
    }
  }
  return slices;
}

/** Every swing a span may make, with its chance. */
function swingsOf(span: Span, { clipGoneShare }: ChafeAssumptions): readonly (readonly [Swing, number])[] {
  const gone = [span.ifFromGone, span.ifToGone].filter((swing) => swing !== null);
  return [
    [span, 1 - (gone.length * clipGoneShare) / 2],
    ...gone.map((swing) => [swing, clipGoneShare / 2] as const),
  ];
}

const sinc = (angle: number) => Math.sin(angle) / angle;

/** How a swing moves over a slice: mean height of its half-sine, its rise over it, and mean square of the shape. */
function motionOver({ from, to }: Slice, { fromMm, drive }: Swing, { cellMm, assumptions }: RunContext) {
  const still = assumptions.motionAtClip;
  const turn = (Math.PI * (to - from) * cellMm) / 2 / drive.spanMm;
  const angle = (Math.PI * (((from + to) * cellMm) / 4 - fromMm)) / drive.spanMm;
  const height = Math.sin(angle) * sinc(turn / 2);
  const square = (1 - Math.cos(2 * angle) * sinc(turn)) / 2;
  const shapeSquare = still ** 2 + 2 * still * (1 - still) * height + (1 - still) ** 2 * square;
  return { height, rise: Math.cos(angle) * turn, shapeSquare };
}

function wearAt({ wear }: RunContext, { cell, from, to }: Slice): number {
  const here = wear[cell] as number;
  return here + ((wear[cell + 1] as number) - here) * ((from + to) / 4 - cell);
}

const steadyForceN = ({ segment, assumptions }: RunContext) =>
  segment.traits.includes('drawn-tight') ? assumptions.tightForceN : 0;

/** Rubbing on the body beside the loom, mean over each cell, per mm. No factors. */
export function plainBodyRubbing(run: RunContext): Float64Array {
  const { motionAtClip, clearanceSigmaMm } = run.assumptions;
  const cells = new Float64Array(run.cellCount);
  for (const slice of slicesOf(run)) {
    for (const [swing, chance] of swingsOf(slice.span, run.assumptions)) {
      const { drive } = swing;
      const { height, shapeSquare } = motionOver(slice, swing, run);
      const contact = normalTail((-drive.slackReachMm * height) / clearanceSigmaMm);
      const shape = motionAtClip + (1 - motionAtClip) * height;
      const pressed = (steadyForceN(run) * contact * 4 * drive.hz * drive.motionMm * shapeSquare) / shape;
      const work = drive.work * shapeSquare * contact + pressed;
      addTo(cells, slice, chance * work * wearAt(run, slice));
    }
  }
  return cells;
}

function addTo(
  cells: Float64Array,
  { cell, from, to }: Pick<Slice, 'cell' | 'from' | 'to'>,
  density: number,
) {
  cells[cell] = (cells[cell] as number) + ((to - from) / 2) * density;
}

/** A straight piece of the way past a spot, in half cells, with the distances at its ends. */
interface Piece {
  readonly from: number;
  readonly to: number;
  readonly fromMm: number;
  readonly toMm: number;
}

/** Rubbing against one mapped spot, mean over each cell, per mm; null where the run comes nowhere near. No factors. */
export function plainSpotRubbing(run: RunContext, near: NearSpot, nearestMm: number): Float64Array | null {
  const meeting = spotMeeting(run, near, nearestMm, runReach(run.spans));
  if (!meeting) return null;
  const cells = new Float64Array(run.cellCount);
  const slices = slicesOf(run);
  for (const piece of piecesPast(run, near)) {
    for (const slice of slices) {
      const [from, to] = [Math.max(piece.from, slice.from), Math.min(piece.to, slice.to)];
      if (to - from <= 1e-9) continue;
      for (const part of outsideAndIn(between(piece, from, to))) {
        const reachMm = reachIn(slice.span, near.spot.side, meeting, run.assumptions);
        if ((part.fromMm + part.toMm) / 2 > reachMm) continue;
        for (const [swing, chance] of swingsOf(slice.span, run.assumptions)) {
          const rubbed = rubbedOn(run, near.spot.side, meeting, slice, swing, part);
          addTo(cells, { ...part, cell: slice.cell }, chance * rubbed * wearAt(run, slice));
        }
      }
    }
  }
  return cells;
}

/** Signed distance to a spot at half cells from the run's start; between two of those, from the middle of their chord. */
function signedAt(run: RunContext, { spot, inSpace }: NearSpot, halves: number): number {
  const along = (whole: number) => pointAtStation(run.around.shape.line, (whole * run.cellMm) / 2);
  const [a, b] = [along(Math.floor(halves)), along(Math.ceil(halves))];
  const at = { xMm: (a.xMm + b.xMm) / 2, yMm: (a.yMm + b.yMm) / 2, zMm: (a.zMm + b.zMm) / 2 };
  const area = spot.shape === 'area' && spot.points.length > 2;
  return area && polygonContains(spot.points, at)
    ? -planDistanceToPathMm(at, spot.points, true)
    : spotDistanceMm(spot, at, inSpace);
}

function piecesPast(run: RunContext, near: NearSpot): readonly Piece[] {
  const pieces: Piece[] = [];
  /** Places in a row as straight pieces, all lower by a twelfth of how much the row bends. */
  const put = (places: readonly number[], bentBy: readonly number[]) => {
    const [a, b, c] = bentBy.map((place) => signedAt(run, near, place)) as [number, number, number];
    for (let i = 1; i < places.length; i++) {
      const [from, to] = [places[i - 1] as number, places[i] as number];
      const below = (a - 2 * b + c) / 12;
      const [fromMm, toMm] = [signedAt(run, near, from) - below, signedAt(run, near, to) - below];
      pieces.push({ from, to, fromMm, toMm });
    }
  };
  for (let start = 0; start < 2 * run.cellCount; start += 2) {
    const whole = [start, start + 1, start + 2];
    const [a, b, c] = whole.map((place) => signedAt(run, near, place)) as [number, number, number];
    if (Math.abs(a - 2 * b + c) <= 0.5) put(whole, whole);
    else {
      for (const half of [start, start + 1]) {
        const row = [half, half + 0.5, half + 1];
        put(row, row);
      }
    }
  }
  return pieces;
}

function between(piece: Piece, from: number, to: number): Piece {
  const slope = (piece.toMm - piece.fromMm) / (piece.to - piece.from);
  const mmAt = (place: number) => piece.fromMm + slope * (place - piece.from);
  return { from, to, fromMm: mmAt(from), toMm: mmAt(to) };
}

/** Cut where it passes an area's border; inside, everything is as near as can be. */
function outsideAndIn(piece: Piece): readonly Piece[] {
  const { from, to, fromMm, toMm } = piece;
  const held = (part: Piece) => ({ ...part, fromMm: Math.max(0, part.fromMm), toMm: Math.max(0, part.toMm) });
  if (fromMm < 0 === toMm < 0) return [held(piece)];
  const cut = from + ((to - from) * fromMm) / (fromMm - toMm);
  return [held({ from, to: cut, fromMm, toMm: 0 }), held({ from: cut, to, fromMm: 0, toMm })].filter(
    (part) => part.to > part.from,
  );
}

function droopOf({ slackReachMm, sagMm }: Swing['drive'], side: RubSpot['side']): number {
  return side === 'above' ? 0 : side === 'below' ? slackReachMm + sagMm : slackReachMm;
}

function reachIn(
  span: Span,
  side: RubSpot['side'],
  { tauMm, offsetMm, sigmas }: SpotMeeting,
  assumptions: ChafeAssumptions,
): number {
  const gaps = swingsOf(span, assumptions).map(
    ([{ drive }]) => droopOf(drive, side) + sigmas * Math.hypot(drive.sigmaMm, tauMm),
  );
  return Math.min(assumptions.reachMm, Math.max(0, ...gaps) - offsetMm);
}

/** Mean rubbing of one swing over one piece. */
function rubbedOn(
  run: RunContext,
  side: RubSpot['side'],
  { tauMm, offsetMm, sigmas }: SpotMeeting,
  slice: Slice,
  swing: Swing,
  { from, to, fromMm, toMm }: Piece,
): number {
  const { drive } = swing;
  const still = run.assumptions.motionAtClip;
  const { height, rise, shapeSquare } = motionOver(slice, swing, run);
  const share = (place: number) => (place - slice.from) / (slice.to - slice.from) - 0.5;
  const heightAt = (place: number) => height + rise * share(place);
  const middle = (from + to) / 2;
  const shape = still + (1 - still) * heightAt(middle);
  const openMm = Math.hypot(drive.sigmaMm * shape, tauMm);
  const droopMm = droopOf(drive, side);
  if (Math.min(fromMm, toMm) + offsetMm - droopMm > sigmas * openMm) return 0;
  const gapAt = (mm: number, place: number) => mm + offsetMm - droopMm * heightAt(place);
  const [gapFrom, gapTo] = [gapAt(fromMm, from), gapAt(toMm, to)];
  let contact = meanContactPlain(gapFrom, gapTo, openMm, tauMm);
  const riseOver = (2 * (1 - still) * rise) / (still + (1 - still) * height);
  if (Math.abs(riseOver) > 0.1) {
    const long = (to - from) / (slice.to - slice.from);
    const contactRise = contactAt(gapTo, openMm, tauMm) - contactAt(gapFrom, openMm, tauMm);
    contact += riseOver * (share(middle) * contact + (long * contactRise) / 12);
  }
  const hungMm = offsetMm - droopMm * heightAt(middle);
  const pressed = meanContactPlain(fromMm + hungMm, toMm + hungMm, tauMm, tauMm);
  const steady = (steadyForceN(run) * pressed * 4 * drive.hz * drive.motionMm) / shape;
  return shapeSquare * (drive.work * contact + steady);
}

const contactAt = (gapMm: number, openMm: number, tauMm: number) =>
  normalTail(gapMm / (gapMm > 0 ? openMm : tauMm));

/** Mean of the contact along a straight run of gaps, by Gauss and Legendre in five places of each side of zero. */
function meanContactPlain(fromMm: number, toMm: number, openMm: number, tauMm: number): number {
  const wayMm = toMm - fromMm;
  if (Math.abs(wayMm) < 0.02 * tauMm) return contactAt((fromMm + toMm) / 2, openMm, tauMm);
  const cut = fromMm < 0 !== toMm < 0 ? fromMm / (fromMm - toMm) : 1;
  const mean = (from: number, to: number) => {
    let sum = 0;
    for (const [place, weight] of gauss) {
      const share = (from + to) / 2 + (place * (to - from)) / 2;
      sum += (weight / 2) * contactAt(fromMm + wayMm * share, openMm, tauMm);
    }
    return sum * (to - from);
  };
  return mean(0, cut) + (cut < 1 ? mean(cut, 1) : 0);
}

/** Places and weights of five-point Gauss-Legendre integration (Abramowitz and Stegun table 25.4, from memory). */
const gauss = [
  [0, 128 / 225],
  [0.538469310105683, 0.478628670499366],
  [-0.538469310105683, 0.478628670499366],
  [0.906179845938664, 0.236926885056189],
  [-0.906179845938664, 0.236926885056189],
] as const;
