import type { Circuit, CircuitEnd } from '../map/records.ts';
import type { NodeId } from '../quantity/id.ts';
import type { CircuitState } from './car-state.ts';
import { type EndFigures, type EndLinks, endLinks, openEnd, typicalEnd } from './end-links.ts';
import type { CurrentSource, NetNode, Resistor, VoltageSource } from './network.ts';
import type { WireLadder } from './wire-ladder.ts';

/** The car's supply as a reading sees it. */
export interface SupplyFigures {
  readonly batteryVolts: number;
  readonly batteryOhms: number;
  /** All other consumers together, from battery positive to the body: what is left with the battery off. */
  readonly parkedLoadOhms: number;
  /** An unnamed wire beside the searched one: to the body, or to battery positive with the ignition on. */
  readonly neighbourOhms: number;
}

/** A battery at rest; the loads are judgement. */
export const typicalSupply: SupplyFigures = {
  batteryVolts: 12.6,
  batteryOhms: 0.02,
  parkedLoadOhms: 50,
  neighbourOhms: 30,
};

/** A wire of the ladder kind with what is tied to its ends and the ohms of its links as they are now. */
export interface StandingWire {
  readonly ladder: WireLadder;
  readonly linkOhms: Float64Array;
  readonly ends: readonly [CircuitEnd, CircuitEnd];
  readonly figures: readonly [EndFigures, EndFigures];
  /** What sits at the ends of its branches. */
  readonly branchEnds: readonly BranchEnd[];
}

/** What sits at the end of a branch, and at which point of the ladder. */
export interface BranchEnd {
  readonly point: number;
  readonly end: CircuitEnd;
  readonly figures: EndFigures;
}

/**
 * A circuit's wire with the ohms its ladder was laid with and typical end parts.
 * @example
 * standingWire(layLadder(sample.map, sample.line, []), sample.circuit).linkOhms // => Float64Array.of(0.0272, 0.005, 0.0544)
 */
export function standingWire(
  ladder: WireLadder,
  circuit: Circuit,
  figures: readonly [EndFigures, EndFigures] = [typicalEnd, typicalEnd],
): StandingWire {
  return {
    ladder,
    linkOhms: Float64Array.from(ladder.links, (link) => link.ohms),
    ends: [endOrSplice(ladder, circuit.ends[0]), endOrSplice(ladder, circuit.ends[1])],
    figures,
    branchEnds: ladder.branches.flatMap(({ lastPoint, end }) =>
      end ? [{ point: lastPoint, end, figures: typicalEnd }] : [],
    ),
  };
}

/** A circuit that ends at a splice has no part there: its branches go on. */
function endOrSplice({ pointsAt, branches }: WireLadder, end: CircuitEnd): CircuitEnd {
  const points = end.nodeId === null ? undefined : pointsAt.get(end.nodeId);
  const isSpliced = branches.some(({ joinPoint }) => joinPoint === points?.firstEnd);
  return isSpliced ? { ...end, kind: 'other' } : end;
}

/** Where a wire's parts are in the network. */
export interface WireLayout {
  readonly firstNode: NetNode;
  /** Branch number of each link, -1 for a plug that is apart. */
  readonly branchOf: Int32Array;
}

/** A network still being put together, with the places of the searched wire and its neighbour. */
export interface CircuitNetwork {
  readonly nodeCount: number;
  readonly resistors: Resistor[];
  readonly branches: Resistor[];
  readonly voltageSources: VoltageSource[];
  readonly currentSources: CurrentSource[];
  readonly main: WireLayout;
  readonly other: WireLayout | null;
  /** Battery positive. */
  readonly railNode: NetNode;
  /** Stands for an unnamed wire beside the searched one; null when the other wire is known. */
  readonly neighbourNode: NetNode | null;
}

/**
 * The network of a traced circuit (and of a second wire when one is named) as the car stood: links that
 * are not apart, end parts that are plugged in, the supply. No meter, no fault.
 * @example
 * circuitNetwork(standingWire(layLadder(sample.map, sample.line, []), sample.circuit), null, bareState, typicalSupply).branches.length // => 3
 */
export function circuitNetwork(
  main: StandingWire,
  other: StandingWire | null,
  state: CircuitState,
  supply: SupplyFigures,
): CircuitNetwork {
  const resistors: Resistor[] = [];
  const branches: Resistor[] = [];
  const voltageSources: VoltageSource[] = [];
  let nodeCount = main.ladder.pointCount;
  const railNode = ++nodeCount;
  const apart = new Set(state.apartNodeIds);
  const tie = (node: NetNode, links: EndLinks): void => {
    if (links.bodyOhms !== null) resistors.push({ a: node, b: 0, ohms: links.bodyOhms });
    if (links.railOhms !== null) resistors.push({ a: node, b: railNode, ohms: links.railOhms });
    if (links.source) {
      const source = ++nodeCount;
      voltageSources.push({ plus: source, minus: 0, volts: links.source.volts });
      resistors.push({ a: source, b: node, ohms: links.source.ohms });
    }
  };
  const layWire = (wire: StandingWire, firstNode: NetNode): WireLayout => {
    const branchOf = new Int32Array(wire.ladder.links.length).fill(-1);
    wire.ladder.links.forEach((link, i) => {
      if (link.kind === 'gap' || (link.nodeId !== null && apart.has(link.nodeId))) return;
      branchOf[i] = branches.length;
      branches.push({ a: firstNode + i, b: firstNode + i + 1, ohms: wire.linkOhms[i] as number });
    });
    for (const { firstPoint, joinPoint } of wire.ladder.branches)
      branches.push({ a: firstNode + joinPoint, b: firstNode + firstPoint, ohms: 0 });
    const [first, last] = wire.ends;
    const tied: readonly BranchEnd[] = [
      { point: 0, end: first, figures: wire.figures[0] },
      { point: wire.ladder.lastPoint, end: last, figures: wire.figures[1] },
      ...wire.branchEnds,
    ];
    for (const { point, end, figures } of tied) {
      const isApart = end.nodeId !== null && apart.has(end.nodeId);
      tie(firstNode + point, isApart ? openEnd : endLinks(end.kind, state, figures));
    }
    return { firstNode, branchOf };
  };
  if (state.batteryConnected) {
    const cell = ++nodeCount;
    voltageSources.push({ plus: cell, minus: 0, volts: supply.batteryVolts });
    resistors.push({ a: cell, b: railNode, ohms: supply.batteryOhms });
  } else resistors.push({ a: railNode, b: 0, ohms: supply.parkedLoadOhms });
  const mainLayout = layWire(main, 1);
  let otherLayout: WireLayout | null = null;
  let neighbourNode: NetNode | null = null;
  if (other) {
    const firstNode = nodeCount + 1;
    nodeCount += other.ladder.pointCount;
    otherLayout = layWire(other, firstNode);
  } else {
    neighbourNode = ++nodeCount;
    const isFed = state.ignitionOn && state.batteryConnected;
    resistors.push({ a: neighbourNode, b: isFed ? railNode : 0, ohms: supply.neighbourOhms });
  }
  return {
    nodeCount,
    resistors,
    branches,
    voltageSources,
    currentSources: [],
    main: mainLayout,
    other: otherLayout,
    railNode,
    neighbourNode,
  };
}

/** Everything unplugged and the battery off: how a wire stands for most resistance tests. */
export const bareState: CircuitState = {
  apartNodeIds: [],
  switchClosed: null,
  ignitionOn: false,
  batteryConnected: false,
};

/**
 * The state with both of a circuit's end parts unplugged as well.
 * @example
 * withEndsApart(bareState, sample.circuit.ends).apartNodeIds // => ['node:west', 'node:far']
 */
export function withEndsApart(state: CircuitState, ends: readonly CircuitEnd[]): CircuitState {
  const endIds = ends.flatMap((end): NodeId[] => (end.nodeId === null ? [] : [end.nodeId]));
  return { ...state, apartNodeIds: [...new Set([...state.apartNodeIds, ...endIds])] };
}
