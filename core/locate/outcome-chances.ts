import type { FaultClass } from '../map/kinds.ts';
import { normalTail } from '../quantity/normal-tail.ts';
import {
  type ComponentHypothesis,
  componentAt,
  type Evidence,
  type Hypotheses,
  noneAt,
} from './hypotheses.ts';
import type { StationRange } from './station-ranges.ts';

/** Probability of each outcome of a test under each hypothesis; per hypothesis they sum to one. */
export type OutcomeChances = readonly Float64Array[];

/** A figure comes out as if from somewhere else entirely this often: wrong pin, bad tip (judgement). */
const slipChance = 0.02;

/**
 * The two outcomes of a test that is already told as evidence when it came out one way: that way, and
 * the other.
 * @example
 * twoOutcomes(layHypotheses(new Float64Array([0, 10]), []), () => new Float64Array(6).fill(Math.log(0.6)))[1][0] // => 0.4
 */
export function twoOutcomes(hypotheses: Hypotheses, happened: Evidence): OutcomeChances {
  return binaryOutcomes(happened(hypotheses).map(Math.exp));
}

/**
 * Two outcomes from the chance of the first under every hypothesis.
 * @example
 * binaryOutcomes(Float64Array.of(0.6))[1][0] // => 0.4
 */
export function binaryOutcomes(first: Float64Array): OutcomeChances {
  return [first, first.map((chance) => 1 - chance)];
}

/** A test that gives a figure which stands for a place. */
export interface PlacingTest {
  /** Share of faults of each class that give a figure at all. */
  readonly figureShare: Readonly<Record<FaultClass, number>>;
  /** Share of faults at a cell that the test can reach at all; all of them when absent. */
  readonly where?: ((cell: number) => number) | undefined;
  /** Spread of the place read off, at a place, in mm. */
  readonly spreadMm: (stationMm: number) => number;
  /** Pieces of the circuit told apart, without gaps from end to end. */
  readonly pieces: readonly StationRange[];
}

/**
 * Outcomes of a test that places the fault: one for each piece the figure may fall into, and last the
 * one without a figure. Faulty parts give none; what is not in the list may give any.
 * @example
 * placingOutcomes(layHypotheses(new Float64Array([0, 10]), []), { figureShare: { 'short-to-ground': 1, 'short-to-supply': 0, 'wire-to-wire': 0, open: 0, 'high-resistance': 0 }, spreadMm: () => 1, pieces: [{ fromMm: 0, toMm: 10 }] })[1][0] // => 0.01
 */
export function placingOutcomes(hypotheses: Hypotheses, test: PlacingTest): OutcomeChances {
  const { cellCount, cellEdgesMm, classes } = hypotheses;
  const count = test.pieces.length + 1;
  const chances = Array.from({ length: count }, () =>
    new Float64Array(hypotheses.size).fill(slipChance / count),
  );
  const none = chances[count - 1] as Float64Array;
  for (let cell = 0; cell < cellCount; cell++) {
    const atMm = ((cellEdgesMm[cell] as number) + (cellEdgesMm[cell + 1] as number)) / 2;
    const spread = test.spreadMm(atMm);
    // Beyond the ends of the wire a figure is read as the end.
    const beyond = test.pieces.map((piece, i) => (i === 0 ? 1 : normalTail((piece.fromMm - atMm) / spread)));
    const within = beyond.map((chance, i) => chance - (beyond[i + 1] ?? 0));
    classes.forEach((kind, k) => {
      const at = k * cellCount + cell;
      const share = test.figureShare[kind] * (test.where?.(cell) ?? 1);
      within.forEach((chance, i) => {
        const row = chances[i] as Float64Array;
        row[at] = (row[at] as number) + (1 - slipChance) * share * chance;
      });
      none[at] = (none[at] as number) + (1 - slipChance) * (1 - share);
    });
  }
  hypotheses.components.forEach((_, i) => {
    const at = componentAt(hypotheses, i);
    none[at] = (none[at] as number) + 1 - slipChance;
  });
  for (const row of chances) row[noneAt(hypotheses)] = 1 / count;
  return chances;
}

/**
 * Outcomes of a test that only tells classes apart: happens with a chance for each class, for a faulty
 * plug or end part, and as often as not for what is not in the list.
 * @example
 * classOutcomes(layHypotheses(new Float64Array([0, 10]), []), () => 0.9, () => 0.5)[0][0] // => 0.9
 */
export function classOutcomes(
  hypotheses: Hypotheses,
  ofClass: (kind: FaultClass) => number,
  ofPart: (place: ComponentHypothesis['place']) => number,
): OutcomeChances {
  const { cellCount } = hypotheses;
  const yes = new Float64Array(hypotheses.size).fill(0.5);
  hypotheses.classes.forEach((kind, k) => {
    yes.fill(ofClass(kind), k * cellCount, (k + 1) * cellCount);
  });
  hypotheses.components.forEach(({ place }, i) => {
    yes[componentAt(hypotheses, i)] = ofPart(place);
  });
  return binaryOutcomes(yes);
}

/**
 * Pieces of the circuit that are about equally likely to hold the fault, so that each outcome counts.
 * @example
 * likelyPieces(new Float64Array([0, 10, 20]), new Float64Array([0.5, 0.5]), 2) // => [{ fromMm: 0, toMm: 10 }, { fromMm: 10, toMm: 20 }]
 */
export function likelyPieces(
  cellEdgesMm: Float64Array,
  cellProbability: Float64Array,
  count: number,
): StationRange[] {
  const total = cellProbability.reduce((sum, p) => sum + p, 0);
  const last = cellProbability.length;
  const pieces: StationRange[] = [];
  let fromMm = cellEdgesMm[0] as number;
  let mass = 0;
  for (let cell = 0; cell < last; cell++) {
    mass += cellProbability[cell] as number;
    const toMm = cellEdgesMm[cell + 1] as number;
    const isLast = cell === last - 1;
    if (!isLast && mass < ((pieces.length + 1) / count) * total * (1 - 1e-9)) continue;
    if (!isLast && pieces.length >= count - 1) continue;
    pieces.push({ fromMm, toMm });
    fromMm = toMm;
  }
  return pieces;
}
