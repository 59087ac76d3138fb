import type { CircuitState } from '../circuit/car-state.ts';
import type { InjectionPlan } from '../circuit/safe-injection.ts';
import { likelyPieces, placingOutcomes } from '../locate/outcome-chances.ts';
import type { NodeId } from '../quantity/id.ts';
import type { ExpectedFigure, FigureUnit, OutcomeLabel } from './next-test.ts';
import type { PossibleTest, TestGrounds } from './possible-test.ts';
import { figureAt, figureShares, placeSpread } from './test-figures.ts';
import type { WirePiece } from './wire-pieces.ts';

/** Pieces a figure is told apart in; more would cost time and change little. */
const mostPieces = 6;

/** What is seen when no figure comes. */
const withoutFigure = {
  drop: 'no-current',
  'drop-both-ends': 'no-current',
  'lamp-for-fuse': 'lamp-dark',
  'ohms-both-ends': 'open-line',
  capacitance: 'no-steady-figure',
} as const;

/** How a test that reads off a place is done. */
export interface PlacingWay {
  readonly kind: keyof typeof withoutFigure;
  /** The first or driven lead before the other, and where they are on the circuit itself. */
  readonly nodeIds: readonly [NodeId, NodeId];
  readonly firstMm: number;
  readonly otherMm: number;
  readonly state: CircuitState;
  readonly injection: InjectionPlan | null;
  /** The other end was driven before: now it places as a test from both ends. */
  readonly isSecondOfTwo?: boolean;
  /** Done on this piece of the circuit only. */
  readonly piece?: WirePiece;
}

/**
 * A test whose figure stands for a place: which figures mean which pieces of the circuit, and how likely
 * each is under every hypothesis. On a piece of the circuit a fault elsewhere gives no figure.
 * @example
 * placingTest({ map: sample.map, line: sample.line, cells: layHypotheses(new Float64Array([0, 1500]), []), cellProbability: Float64Array.of(1), stretches: [], entries: [], medianMm: 700 }, { kind: 'capacitance', nodeIds: ['node:west', 'node:far'], firstMm: 0, otherMm: 1500, state: bareState, injection: null }).expected // => { value: 31.5, unit: 'picofarad' }
 */
export function placingTest(
  grounds: TestGrounds,
  way: PlacingWay,
): Omit<PossibleTest, 'panelIds' | 'ranges' | 'other'> {
  const { map, line, cells, cellProbability, medianMm } = grounds;
  const { kind, nodeIds, firstMm, otherMm, state, injection, piece } = way;
  const amps = injection ? injection.amps : 0;
  const apartNodeIds = piece ? piece.apartNodeIds : [];
  const test = { kind, amps, firstMm, otherMm, apartNodeIds };
  const here = piece ? cellProbability.map((p, cell) => p * (piece.share[cell] as number)) : cellProbability;
  const pieces = likelyPieces(cells.cellEdgesMm, here, mostPieces);
  const figure = (mm: number): ExpectedFigure => figureAt(map, line, test, mm);
  const unit: FigureUnit = figure(medianMm).unit;
  const within = (mm: number): number =>
    piece ? Math.min(Math.max(mm, Math.min(firstMm, otherMm)), Math.max(firstMm, otherMm)) : mm;
  const labels: OutcomeLabel[] = pieces.map((range) => {
    const [fromMm, toMm] = [within(range.fromMm), within(range.toMm)];
    const [a, b] = [figure(fromMm).value, figure(toMm).value];
    return { what: 'figure', from: Math.min(a, b), to: Math.max(a, b), unit, fromMm, toMm };
  });
  const placesAs = way.isSecondOfTwo ? ({ ...test, kind: 'drop-both-ends' } as const) : test;
  const sideOf = (nodeId: NodeId) => piece?.places.find((place) => place.nodeId === nodeId)?.side ?? null;
  return {
    kind,
    nodeIds,
    sides: nodeIds.map(sideOf),
    towardsId: null,
    state,
    plugsParted: piece?.plugsParted ?? 0,
    labels: [...labels, { what: withoutFigure[kind] }],
    chances: placingOutcomes(cells, {
      figureShare: figureShares(kind, amps),
      spreadMm: placeSpread(map, line, placesAs),
      pieces,
      ...(piece ? { where: (cell) => piece.share[cell] as number } : {}),
    }),
    injection,
    expected: !piece || within(medianMm) === medianMm ? figure(medianMm) : null,
  };
}
