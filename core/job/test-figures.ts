import { usualPicofaradsPerMetre } from '../circuit/capacitance-likelihood.ts';
import type { CircuitLine } from '../circuit/circuit-line.ts';
import { handMeter } from '../circuit/default-meter-table.ts';
import { honestFloorMm } from '../circuit/honest-width.ts';
import { leadSpreadOhms, shownSpread } from '../circuit/meter.ts';
import { mostInjectionVolts } from '../circuit/safe-injection.ts';
import { undrawnErrors, usualErrors } from '../circuit/shared-errors.ts';
import { shareBelow } from '../circuit/strength-share.ts';
import { layLadder, wireOhmsTo } from '../circuit/wire-ladder.ts';
import { reachedWire } from '../circuit/wire-reach.ts';
import type { FaultClass } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { NodeId } from '../quantity/id.ts';
import type { ExpectedFigure, NextTestKind } from './next-test.ts';
import { capacitanceSpreadShare } from './sharper-way.ts';

/** A test that gives a figure for a place. */
export interface FigureTest {
  readonly kind: NextTestKind;
  readonly amps: number;
  /** Stations of the first or driven lead and of the other, on the circuit itself. */
  readonly firstMm: number;
  readonly otherMm: number;
  /** What is apart; only capacitance asks. Nothing when absent: the leads are at free ends. */
  readonly apartNodeIds?: readonly NodeId[] | undefined;
}

/** A lamp in place of the fuse glows visibly through a fault of at most this (judgement: a third of its voltage). */
const lampGlowsOhms = 10;

/**
 * What the meter would show for a fault at a station, wire and plugs as usual: millivolts from the
 * driven end, ohms at the first lead's end less the other's, picofarad from the first lead's end.
 * @example
 * figureAt(sample.map, sample.line, { kind: 'capacitance', amps: 0, firstMm: 0, otherMm: 1500 }, 1000) // => { value: 45, unit: 'picofarad' }
 */
export function figureAt(
  map: MapDocument,
  line: CircuitLine,
  test: FigureTest,
  stationMm: number,
): ExpectedFigure {
  if (test.kind === 'capacitance')
    return { value: (usualPicofaradsPerMetre * seenMm(line, test, stationMm)) / 1000, unit: 'picofarad' };
  const before = ohmsBefore(map, line, test);
  if (test.kind === 'ohms-both-ends')
    return { value: 2 * before(stationMm) - before(test.otherMm), unit: 'ohm' };
  return { value: 1000 * test.amps * before(stationMm), unit: 'millivolt' };
}

/** Wire that a capacitance meter sees from the first lead, broken at a station or whole. */
function seenMm(line: CircuitLine, test: FigureTest, brokenMm?: number): number {
  const { firstMm, otherMm, apartNodeIds = [] } = test;
  const side = firstMm < otherMm ? 'second-end' : 'first-end';
  const pieces = reachedWire(line, { row: 0, atMm: firstMm, side, apartNodeIds, brokenMm });
  return pieces.reduce((sum, { fromMm, toMm }) => sum + toMm - fromMm, 0);
}

/** Ohms from the first lead up to a station; beyond either lead as at the lead. */
function ohmsBefore(
  map: MapDocument,
  line: CircuitLine,
  { firstMm, otherMm }: FigureTest,
): (stationMm: number) => number {
  const ohms = usualOhms(map, line);
  const [fromMm, toMm] = [Math.min(firstMm, otherMm), Math.max(firstMm, otherMm)];
  return (stationMm) => {
    const atMm = Math.min(toMm, Math.max(fromMm, onMainMm(line, stationMm)));
    return firstMm < otherMm ? ohms(fromMm, atMm) : ohms(atMm, toMm);
  };
}

/**
 * Spread of the place a test reads off, in mm, at each station: the meter's, the wire's and the plugs'
 * up to there; from both ends only the floor that plugs and wire set.
 * @example
 * Math.round(placeSpread(sample.map, sample.line, { kind: 'drop-both-ends', amps: 0.1, firstMm: 0, otherMm: 1500 })(700)) // => 62
 */
export function placeSpread(
  map: MapDocument,
  line: CircuitLine,
  test: FigureTest,
): (stationMm: number) => number {
  const { kind, amps, firstMm } = test;
  if (kind === 'capacitance') {
    const spreadMm = capacitanceSpreadShare * seenMm(line, test);
    return () => spreadMm;
  }
  const perMm = usualOhms(map, line)(0, line.mainMm) / line.mainMm;
  if (kind === 'ohms-both-ends') {
    const meterMm = (Math.SQRT2 * shownSpread(handMeter.ohms, 1, leadSpreadOhms)) / (2 * perMm);
    return () => Math.hypot(meterMm, honestFloorMm);
  }
  const before = ohmsBefore(map, line, test);
  const meterMm = (mm: number): number =>
    shownSpread(handMeter.millivolts, 1000 * amps * before(mm)) / (1000 * amps * perMm);
  if (kind === 'drop-both-ends') return (mm) => Math.hypot(meterMm(mm) / Math.SQRT2, honestFloorMm);
  const ladder = layLadder(map, line, []);
  const plugsMm = ladder.links.flatMap((link) =>
    link.kind === 'plug' && link.fromMm < line.mainMm ? [link.fromMm] : [],
  );
  return (stationMm) => {
    const mm = onMainMm(line, stationMm);
    const [fromMm, toMm] = [Math.min(firstMm, mm), Math.max(firstMm, mm)];
    const plugs = plugsMm.filter((at) => at > fromMm && at < toMm).length;
    const awayMm = toMm - fromMm;
    return Math.hypot(
      meterMm(mm),
      undrawnErrors.wireShare * awayMm,
      (Math.sqrt(plugs) * undrawnErrors.plugOhms) / perMm,
      honestFloorMm / 2,
    );
  };
}

/**
 * Share of faults of each class that give a figure at all: enough current must flow, or the wire be parted.
 * @example
 * figureShares('capacitance', 0).open // => 1
 */
export function figureShares(kind: NextTestKind, amps: number): Readonly<Record<FaultClass, number>> {
  const none = {
    'short-to-ground': 0,
    'short-to-supply': 0,
    'wire-to-wire': 0,
    open: 0,
    'high-resistance': 0,
  };
  if (kind === 'capacitance') return { ...none, open: 1 };
  const mostOhms =
    kind === 'ohms-both-ends'
      ? Number.POSITIVE_INFINITY
      : kind === 'lamp-for-fuse'
        ? lampGlowsOhms
        : mostInjectionVolts / amps;
  return { ...none, 'short-to-ground': shareBelow('short-to-ground', mostOhms) };
}

/** Between the circuit's own ends a fault on a branch reads as if it were at its splice. */
function onMainMm({ mainMm, branches }: CircuitLine, stationMm: number): number {
  let atMm = stationMm;
  while (atMm > mainMm) {
    const branch = branches.find(({ fromMm, toMm }) => fromMm <= atMm && atMm <= toMm);
    if (!branch) return mainMm;
    atMm = branch.joinMm;
  }
  return atMm;
}

/**
 * Ohms of wire and plugs between two stations, as a usual wire of the size has.
 * @example
 * usualOhms(sample.map, sample.line)(0, 1000) // => 0.0568432
 */
export function usualOhms(map: MapDocument, line: CircuitLine): (fromMm: number, toMm: number) => number {
  const ladder = layLadder(map, line, []);
  const { wireScale } = usualErrors(ladder.plugIds.length, false);
  const plugs = ladder.links.filter((link) => link.kind === 'plug');
  return (fromMm, toMm) => {
    let ohms = wireScale * (wireOhmsTo(ladder, toMm) - wireOhmsTo(ladder, fromMm));
    for (const plug of plugs) if (plug.fromMm > fromMm && plug.fromMm < toMm) ohms += plug.ohms;
    return ohms;
  };
}
