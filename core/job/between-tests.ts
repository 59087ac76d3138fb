import { besideStations } from '../circuit/beside.ts';
import { type CircuitLine, layStraight, lineEnds } from '../circuit/circuit-line.ts';
import { bareState, withEndsApart } from '../circuit/circuit-network.ts';
import { handMeter } from '../circuit/default-meter-table.ts';
import { honestFloorMm } from '../circuit/honest-width.ts';
import { withBranches } from '../circuit/joined-wires.ts';
import { leadSpreadOhms, shownSpread } from '../circuit/meter.ts';
import { safeInjection } from '../circuit/safe-injection.ts';
import { usualErrors } from '../circuit/shared-errors.ts';
import { shareBelow } from '../circuit/strength-share.ts';
import { layLadder, wireOhmsTo } from '../circuit/wire-ladder.ts';
import { endPlaces, isReached, reachedWire } from '../circuit/wire-reach.ts';
import { cumulate, medianStation } from '../locate/cumulative.ts';
import { type Hypotheses, noneAt } from '../locate/hypotheses.ts';
import {
  binaryOutcomes,
  likelyPieces,
  type OutcomeChances,
  placingOutcomes,
} from '../locate/outcome-chances.ts';
import type { CircuitDuty } from '../map/kinds.ts';
import type { CircuitId, NodeId } from '../quantity/id.ts';
import type { FigureUnit, OutcomeLabel } from './next-test.ts';
import { panelsHiding } from './panels-hiding.ts';
import type { PossibleTest, TestGrounds } from './possible-test.ts';
import { figureAt, placeSpread } from './test-figures.ts';
import { type WirePiece, wirePieces } from './wire-pieces.ts';

/** Less chance than this for two wires touching, and no test asks of it (judgement). */
const leastTouching = 0.02;

/** Wires beside the searched one that are asked of; the rest have to wait. */
const mostWires = 2;

/** A wire that fails too is this much likelier to be the one touched, and one that works this much less (judgement). */
const failingWeight = 5;
const workingWeight = 0.3;

/** Chance that the wire touched is one nobody drew (judgement). */
const undrawnShare = 0.2;

/** A figure falls into one of so many pieces, as for the tests on one wire. */
const mostPieces = 6;

/** Wires on which no test is ever asked for. */
const guarded: ReadonlySet<CircuitDuty> = new Set(['restraint', 'high-voltage']);

/** A wire the searched one may touch, with both ends to put leads to. */
interface TouchedWire {
  readonly line: CircuitLine;
  /** The searched wire's ends and the other's that lie on the same side. */
  readonly ends: readonly [NodeId, NodeId];
  readonly otherEnds: readonly [NodeId, NodeId];
  /** Per cell: where it runs beside, its own station. NaN where it does not. */
  readonly besideMm: Float64Array;
  /** Chance that, if two wires touch at a cell beside it, it is this one. */
  readonly share: number;
}

/**
 * Tests between the searched wire and another that runs beside it, where two wires touching is a live
 * thought: a beep, ohms from both ends, and a small current from the one into the other. Both wires
 * dead and unplugged at both ends; none on airbag and high-voltage wires, no current into data wires.
 * @example
 * betweenTests({ map: sample.map, line: sample.line, cells: layHypotheses(new Float64Array([0, 1500]), []), cellProbability: Float64Array.of(1), stretches: [], entries: [], medianMm: 700 }) // => []
 */
export function betweenTests(grounds: TestGrounds): PossibleTest[] {
  const touching = touchingCurve(grounds);
  const total = touching.reduce((sum, p) => sum + p, 0);
  if (total < leastTouching) return [];
  const pieces = wirePieces(grounds);
  return touchedWires(grounds, touching).flatMap((wire) => [
    ...testsWith(grounds, wire, touching),
    ...pieces.flatMap((piece) => atPlug(grounds, wire, piece)),
  ]);
}

function touchingCurve({ cells, probability }: TestGrounds): Float64Array {
  const from = cells.classes.indexOf('wire-to-wire') * cells.cellCount;
  return probability ? probability.slice(from, from + cells.cellCount) : new Float64Array(0);
}

/** Wires beside, likeliest touched first. */
function touchedWires(grounds: TestGrounds, touching: Float64Array): TouchedWire[] {
  const { map, line, cells } = grounds;
  const middles = Float64Array.from(
    touching,
    (_, i) => ((cells.cellEdgesMm[i] as number) + (cells.cellEdgesMm[i + 1] as number)) / 2,
  );
  const runs = new Set(line.spans.map(({ segment }) => segment.id));
  const own = new Set([line.circuit.id, ...line.branches.map((branch) => branch.circuit.id)]);
  const [a, b] = line.circuit.ends;
  const found: TouchedWire[] = [];
  for (const circuit of map.circuits.values()) {
    const { duty, ends, path } = circuit;
    if (own.has(circuit.id) || guarded.has(duty)) continue;
    if (a.nodeId === null || b.nodeId === null || ends[0].nodeId === null || ends[1].nodeId === null)
      continue;
    if (!path.some(({ segmentId }) => runs.has(segmentId))) continue;
    const laid = layStraight(map, circuit);
    if (!laid.ok) continue;
    const other = withBranches(map, laid.value);
    if (other.branches.some((branch) => guarded.has(branch.circuit.duty))) continue;
    const besideMm = besideStations(line, other, middles);
    const mass = touching.reduce((sum, p, i) => sum + (Number.isNaN(besideMm[i]) ? 0 : p), 0);
    if (mass <= 0) continue;
    const known = besideMm.filter((mm) => !Number.isNaN(mm));
    const isTurned = (known[0] as number) > (known.at(-1) as number);
    const weight = grounds.alsoFailing?.includes(circuit.id)
      ? failingWeight
      : grounds.working?.includes(circuit.id)
        ? workingWeight
        : 1;
    found.push({
      line: other,
      ends: [a.nodeId, b.nodeId],
      otherEnds: isTurned ? [ends[1].nodeId, ends[0].nodeId] : [ends[0].nodeId, ends[1].nodeId],
      besideMm,
      share: mass * weight,
    });
  }
  const all = found.reduce((sum, { share }) => sum + share, 0);
  return found
    .map((wire) => ({ ...wire, share: (wire.share / all) * (1 - undrawnShare) }))
    .sort((x, y) => y.share - x.share)
    .slice(0, mostWires);
}

function testsWith(grounds: TestGrounds, wire: TouchedWire, touching: Float64Array): PossibleTest[] {
  const { map, line, cells, entries } = grounds;
  const other = wire.line.circuit;
  const state = withEndsApart(withEndsApart(bareState, lineEnds(line)), lineEnds(wire.line));
  const between = entries.flatMap((entry) =>
    entry.type === 'reading' && namesCircuit(entry.reading, other.id) ? [entry.reading] : [],
  );
  const done = new Set(between.map(({ test }) => test));
  const read = between.filter(({ test }) => test === 'ohms').map((reading) => JSON.stringify(reading));
  // With one end read already, reading the other makes it a test from both ends.
  const unread = [0, 1].filter((end) => !read.some((text) => text.includes(`"${wire.ends[end]}"`)));
  const nodeIds = [...wire.ends, ...wire.otherEnds];
  const common = {
    nodeIds: wire.ends,
    sides: [null, null],
    towardsId: null,
    plugsParted: 0,
    other: { circuitId: other.id, nodeIds: wire.otherEnds, sides: [null, null] },
    ranges: [],
    state,
    panelIds: panelsHiding(grounds, nodeIds),
  };
  const beside = (cell: number): number => (Number.isNaN(wire.besideMm[cell]) ? 0 : wire.share);
  const here = touching.map((p, cell) => (beside(cell) > 0 ? p : 0));
  const pieces = likelyPieces(cells.cellEdgesMm, here, mostPieces);
  const likeliestMm = medianStation(cumulate(cells.cellEdgesMm, here));
  const placing = (
    unit: FigureUnit,
    figure: (mm: number) => number,
    spreadMm: (mm: number) => number,
    share: number,
  ): Pick<PossibleTest, 'labels' | 'chances' | 'expected'> => ({
    labels: [
      ...pieces.map(({ fromMm, toMm }): OutcomeLabel => {
        const [from, to] = [figure(fromMm), figure(toMm)];
        return { what: 'figure', from: Math.min(from, to), to: Math.max(from, to), unit, fromMm, toMm };
      }),
      { what: unit === 'ohm' ? 'open-line' : 'no-current' },
    ],
    chances: placingOutcomes(cells, {
      figureShare: {
        'short-to-ground': 0,
        'short-to-supply': 0,
        'wire-to-wire': share,
        open: 0,
        'high-resistance': 0,
      },
      spreadMm,
      pieces,
      where: beside,
    }),
    expected: { value: figure(likeliestMm), unit },
  });
  const tests: PossibleTest[] = [];
  const ohms = betweenOhms(grounds, wire);
  if (!done.has('beep') && !done.has('ohms'))
    tests.push({
      ...common,
      kind: 'beep-between',
      injection: null,
      labels: [{ what: 'beeps' }, { what: 'silent' }],
      chances: touchChances(cells, (cell) => beside(cell) * shareBelow('wire-to-wire', 50)),
      expected: null,
    });
  if (unread.length > 0)
    tests.push({
      ...common,
      nodeIds: unread.map((end) => wire.ends[end] as NodeId),
      other: {
        circuitId: other.id,
        nodeIds: unread.map((end) => wire.otherEnds[end] as NodeId),
        sides: unread.map(() => null),
      },
      kind: 'ohms-between',
      injection: null,
      ...placing('ohm', ohms.differenceAt, ohms.spreadAt, 1),
    });
  const plans = [line, wire.line].map(({ circuit, branches }) =>
    safeInjection(circuit, state, { joined: branches }),
  );
  const plan = plans.every((each) => each.outcome === 'allowed' && each.plan.way === 'limited-supply')
    ? plans[0]
    : null;
  const isDriven = entries.some((entry) => entry.type === 'reading' && entry.reading.test === 'drop');
  if (plan?.outcome === 'allowed' && !isDriven) {
    const { amps } = plan.plan;
    const drop = { kind: 'drop', amps, firstMm: 0, otherMm: line.mainMm } as const;
    tests.push({
      ...common,
      kind: 'drop-between',
      injection: plan.plan,
      ...placing(
        'millivolt',
        (mm) => figureAt(map, line, drop, mm).value,
        placeSpread(map, line, drop),
        shareBelow('wire-to-wire', 12 / amps),
      ),
    });
  }
  return tests;
}

/** Ohms between the two wires on one side of a plug in reach that both pass. */
function atPlug(grounds: TestGrounds, wire: TouchedWire, piece: WirePiece): PossibleTest[] {
  const { line, cells, entries } = grounds;
  const other = wire.line.circuit;
  const [a, b] = piece.places;
  const [lead, towards] = a.side ? [a, b] : [b, a];
  const there = wire.line.nodes.slice(1, -1).find(({ nodeId }) => nodeId === lead.nodeId);
  const onward = lead.atMm + (lead.side === 'second-end' ? 1 : -1);
  const besideMm = besideStations(line, wire.line, [onward])[0] as number;
  if (piece.row !== 0 || !there || Number.isNaN(besideMm)) return [];
  const side = besideMm > there.stationMm ? 'second-end' : 'first-end';
  const { apartNodeIds } = piece;
  const reached = reachedWire(wire.line, { row: 0, atMm: there.stationMm, side, apartNodeIds });
  const parts = endPlaces(wire.line)
    .filter((place) => isReached(reached, place))
    .map(({ end }) => end);
  const isRead = entries.some(
    (entry) =>
      entry.type === 'reading' &&
      entry.reading.test === 'ohms' &&
      namesCircuit(entry.reading, other.id) &&
      apartNodeIds.every((id) => entry.state.apartNodeIds.includes(id)),
  );
  if (isRead || parts.some(({ nodeId }) => nodeId === null)) return [];
  const state = withEndsApart({ ...bareState, apartNodeIds }, parts);
  const touch = (cell: number): number =>
    Number.isNaN(wire.besideMm[cell]) ? 0 : wire.share * (piece.share[cell] as number);
  return [
    {
      kind: 'ohms-between-at-plug',
      nodeIds: [lead.nodeId],
      sides: [lead.side],
      towardsId: towards.nodeId,
      other: { circuitId: other.id, nodeIds: [lead.nodeId], sides: [side] },
      ranges: [],
      state,
      panelIds: panelsHiding(grounds, state.apartNodeIds),
      plugsParted: piece.plugsParted,
      injection: null,
      labels: [{ what: 'touch' }, { what: 'clear' }],
      chances: touchChances(cells, touch),
      expected: null,
    },
  ];
}

function namesCircuit(reading: object, id: CircuitId): boolean {
  return Object.values(reading).some(
    (value) => typeof value === 'object' && value !== null && 'circuitId' in value && value.circuitId === id,
  );
}

/** How ohms between two wires from both ends place the touch. */
interface BetweenOhms {
  readonly differenceAt: (stationMm: number) => number;
  readonly spreadAt: (stationMm: number) => number;
}

/** Ohms between the two wires at the first ends less those at the others, and how sharply they place. */
function betweenOhms({ map, line }: TestGrounds, wire: TouchedWire): BetweenOhms {
  const own = layLadder(map, line, []);
  const theirs = layLadder(map, wire.line, []);
  const isTurned = wire.otherEnds[0] !== wire.line.circuit.ends[0].nodeId;
  const away = (mm: number): number => (isTurned ? theirs.lengthMm - mm : mm);
  const theirLoop = wireOhmsTo(theirs, theirs.lengthMm);
  const loop = wireOhmsTo(own, own.lengthMm) + theirLoop;
  const before = (mm: number, besideMm: number): number => {
    const theirsBefore = wireOhmsTo(theirs, Number.isNaN(besideMm) ? away(mm) : besideMm);
    return wireOhmsTo(own, mm) + (isTurned ? theirLoop - theirsBefore : theirsBefore);
  };
  const besideAt = (mm: number): number => besideStations(line, wire.line, [mm])[0] as number;
  const { wireScale } = usualErrors(0, false);
  const perMm = wireScale * (wireOhmsTo(own, own.lengthMm) / own.lengthMm + theirLoop / theirs.lengthMm);
  const meterMm = (Math.SQRT2 * shownSpread(handMeter.ohms, 1, leadSpreadOhms)) / (2 * perMm);
  return {
    differenceAt: (mm: number): number => wireScale * (2 * before(mm, besideAt(mm)) - loop),
    spreadAt: (): number => Math.hypot(meterMm, honestFloorMm),
  };
}

/** Beeps, or shows ohms, where the wires touch hard enough; for what is not in the list, as often as not. */
function touchChances(cells: Hypotheses, chanceAt: (cell: number) => number): OutcomeChances {
  const yes = new Float64Array(cells.size).fill(0.01);
  const from = cells.classes.indexOf('wire-to-wire') * cells.cellCount;
  for (let cell = 0; cell < cells.cellCount; cell++) yes[from + cell] = Math.max(0.01, 0.99 * chanceAt(cell));
  yes[noneAt(cells)] = 0.5;
  return binaryOutcomes(yes);
}
