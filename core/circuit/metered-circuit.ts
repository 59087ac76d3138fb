import type { CircuitId, NodeId } from '../quantity/id.ts';
import type { CircuitState, ElectricalReading, ProbePlace } from './car-state.ts';
import {
  type CircuitNetwork,
  circuitNetwork,
  type StandingWire,
  type SupplyFigures,
  type WireLayout,
} from './circuit-network.ts';
import { invertMatrix } from './invert-matrix.ts';
import type { NetNode } from './network.ts';
import { floatingIslands } from './network-islands.ts';
import { networkMatrix } from './network-matrix.ts';
import { refinedSolution } from './refined-solution.ts';
import type { WireLadder } from './wire-ladder.ts';

/** Input resistance of a meter's volts and ohms ranges. */
export const meterInputOhms = 1e7;

/** Current an ohmmeter sends; between 0.1 and 1 mA is usual. Only matters where the circuit is live. */
export const ohmmeterAmps = 1e-3;

/** Ties a measured part that hangs free to the body, far above any reading, so that rounding stays below 1e-7 ohm. */
const looseTieOhms = 1e8;

/** Inner resistance of an injecting supply: what it would push into a wire that leads nowhere. */
const injectorOhms = 1e7;

/** The wires of one reading: the searched one and, when a lead or the fault may touch it, a second. */
export interface ReadingWires {
  readonly mainId: CircuitId;
  readonly main: StandingWire;
  readonly other: { readonly circuitId: CircuitId; readonly wire: StandingWire } | null;
}

/** A circuit with a meter connected, solved: what a fault anywhere does to the reading follows without another solve. */
export interface MeteredCircuit {
  readonly network: CircuitNetwork;
  readonly size: number;
  readonly inverse: Float64Array;
  readonly solution: Float64Array;
  /** Per equation: what one unit of excitation there adds between the meter's leads, in volt. */
  readonly transfer: Float64Array;
  readonly plus: NetNode;
  readonly minus: NetNode;
  /** Displayed units (ohm, volt, millivolt) per volt between the leads. */
  readonly unitsPerVolt: number;
}

/** A test that is read as a figure between two leads. */
export type TwoLeadReading = Exclude<ElectricalReading, { readonly test: 'capacitance' }>;

/**
 * Leads of a two-lead test, the positive one first.
 * @example
 * leadsOf({ test: 'volts', from: { on: 'battery-positive' }, to: { on: 'body' }, volts: 12 }) // => [{ on: 'battery-positive' }, { on: 'body' }]
 */
export function leadsOf(reading: TwoLeadReading): readonly [ProbePlace, ProbePlace] {
  return reading.test === 'drop' ? [reading.driven, reading.sensed] : [reading.from, reading.to];
}

/**
 * Connects the meter of a reading and solves the sound circuit. Null when a lead sits on a node that
 * neither wire has a point at. `injectedSign` -1 draws the current of a drop test out of the wire
 * instead, as a load on a wire that is shorted to supply does.
 * @example
 * meterConnected({ mainId: sample.circuit.id, main: standingWire(layLadder(sample.map, sample.line, []), sample.circuit), other: null }, { test: 'volts', from: { on: 'battery-positive' }, to: { on: 'body' }, volts: 12 }, { ...bareState, batteryConnected: true }, typicalSupply).unitsPerVolt // => 1
 */
export function meterConnected(
  wires: ReadingWires,
  reading: TwoLeadReading,
  state: CircuitState,
  supply: SupplyFigures,
  injectedSign: 1 | -1 = 1,
): MeteredCircuit | null {
  const network = circuitNetwork(wires.main, wires.other?.wire ?? null, state, supply);
  const [first, second] = leadsOf(reading);
  const plus = leadNode(wires, network, first, second);
  const minus = leadNode(wires, network, second, first);
  if (plus === null || minus === null) return null;
  let unitsPerVolt = 1;
  if (reading.test === 'ohms' || reading.test === 'beep') {
    network.currentSources.push({ from: minus, to: plus, amps: ohmmeterAmps });
    unitsPerVolt = 1 / ohmmeterAmps;
  }
  if (reading.test === 'drop') {
    network.currentSources.push({ from: 0, to: plus, amps: injectedSign * reading.currentA });
    network.resistors.push({ a: plus, b: 0, ohms: injectorOhms });
    unitsPerVolt = 1000;
    // A short to another wire is injected with that wire's first end tied to the body as the return.
    if (network.other) network.resistors.push({ a: network.other.firstNode, b: 0, ohms: 0.01 });
    else if (network.neighbourNode !== null)
      network.resistors.push({ a: network.neighbourNode, b: 0, ohms: 0.01 });
  }
  if (plus !== minus) network.resistors.push({ a: plus, b: minus, ohms: meterInputOhms });
  const loose = floatingIslands(network).find((island) => island.includes(minus));
  if (loose) network.resistors.push({ a: minus, b: 0, ohms: looseTieOhms });
  const { size, matrix, excitation } = networkMatrix(network);
  const inverse = invertMatrix(matrix, size);
  if (!inverse) return null;
  const solution = refinedSolution(matrix, inverse, excitation);
  // The equations are symmetric, so one ampere between the leads gives what one ampere anywhere does there.
  const between = new Float64Array(size);
  if (plus > 0) between[plus - 1] = (between[plus - 1] as number) + 1;
  if (minus > 0) between[minus - 1] = (between[minus - 1] as number) - 1;
  const transfer = refinedSolution(matrix, inverse, between);
  return { network, size, inverse, solution, transfer, plus, minus, unitsPerVolt };
}

/**
 * Nodes where leads of these readings sat.
 * @example
 * leadNodeIds([{ test: 'capacitance', at: { on: 'wire', nodeId: 'node:west' }, picofarads: 90 }]) // => ['node:west']
 */
export function leadNodeIds(readings: readonly ElectricalReading[]): readonly NodeId[] {
  const ids = new Set<NodeId>();
  for (const reading of readings) {
    const leads = reading.test === 'capacitance' ? [reading.at] : leadsOf(reading);
    for (const lead of leads) if (lead.on === 'wire') ids.add(lead.nodeId);
  }
  return [...ids];
}

function leadNode(
  wires: ReadingWires,
  network: CircuitNetwork,
  lead: ProbePlace,
  partner: ProbePlace,
): NetNode | null {
  if (lead.on === 'body') return 0;
  if (lead.on === 'battery-positive') return network.railNode;
  const isOther = wires.other !== null && lead.circuitId === wires.other.circuitId;
  const wire = isOther ? wires.other?.wire : wires.main;
  const layout: WireLayout | null = isOther ? network.other : network.main;
  const points = wire ? leadPoints(wire.ladder, lead) : null;
  if (!wire || !layout || !points) return null;
  const side = lead.side ?? facingSide(wire.ladder, points.firstEnd, partner);
  return layout.firstNode + (side === 'first-end' ? points.firstEnd : points.secondEnd);
}

/**
 * Points of the place a lead sits at: on the branch whose circuit it names, else on the circuit itself, else
 * on the first branch that passes it. Null when none does.
 * @example
 * leadPoints(layLadder(sample.map, sample.line, []), { nodeId: 'node:far' }) // => { firstEnd: 3, secondEnd: 3 }
 */
export function leadPoints(
  { pointsAt, branches }: WireLadder,
  { nodeId, circuitId }: { readonly nodeId: NodeId; readonly circuitId?: CircuitId | undefined },
): { readonly firstEnd: number; readonly secondEnd: number } | null {
  const named = branches.find((each) => each.circuitId === circuitId && each.pointsAt.has(nodeId));
  const passing = branches.find((each) => each.pointsAt.has(nodeId));
  return named?.pointsAt.get(nodeId) ?? pointsAt.get(nodeId) ?? passing?.pointsAt.get(nodeId) ?? null;
}

/** A lead at a parted plug sits on the half that leads to the other lead; with that one elsewhere, on the longer half. */
function facingSide(ladder: WireLadder, own: number, partner: ProbePlace): 'first-end' | 'second-end' {
  const theirs = partner.on === 'wire' ? leadPoints(ladder, partner)?.firstEnd : undefined;
  const towards = theirs === undefined ? own : pointTowards(ladder, own, theirs);
  if (towards !== own) return towards < own ? 'first-end' : 'second-end';
  const stationMm = ladder.links[own]?.fromMm ?? ladder.lengthMm;
  return stationMm > ladder.lengthMm / 2 ? 'first-end' : 'second-end';
}

/** The point of one's own row of wire by which another point is reached, through the splices between. */
function pointTowards(ladder: WireLadder, own: number, theirs: number): number {
  const rowOf = (point: number) =>
    ladder.branches.find(({ firstPoint, lastPoint }) => firstPoint <= point && point <= lastPoint) ?? null;
  const mine = rowOf(own);
  let at = theirs;
  for (let row = rowOf(at); row !== mine; row = rowOf(at)) {
    // Past the circuit itself and still not met: it lies beyond one's own splice.
    if (!row) return mine?.firstPoint ?? own;
    at = row.joinPoint;
  }
  return at;
}
