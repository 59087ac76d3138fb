import type { CircuitState } from '#core/circuit/car-state.ts';
import { allNodes } from '#core/circuit/circuit-line.ts';
import { standingWire, typicalSupply } from '#core/circuit/circuit-network.ts';
import { type MeteredCircuit, meterConnected, type TwoLeadReading } from '#core/circuit/metered-circuit.ts';
import { layLadder, type WireLadder } from '#core/circuit/wire-ladder.ts';
import { circuitEndKinds, type FaultClass, faultClasses } from '#core/map/kinds.ts';
import { seededChance } from '#core/quantity/chance.ts';
import type { CircuitId, NodeId } from '#core/quantity/id.ts';
import { type BranchShape, branchedWire } from './branched-wire.ts';
import type { BuiltFault } from './explicit-fault.ts';
import { straightWire } from './four-metre-wire.ts';

/** One generated circuit with a meter on it and a fault to put in. */
export interface GeneratedCase {
  readonly metered: MeteredCircuit;
  readonly ladder: WireLadder;
  readonly fault: BuiltFault;
  readonly reading: TwoLeadReading;
}

const sizesMm2 = [0.22, 0.35, 0.5, 0.75, 1, 1.5, 2.5] as const;

/** Seeded circuits of every end kind, plug count, state, test and class of fault. */
export function generatedCases(count: number, seed: number): readonly GeneratedCase[] {
  const chance = seededChance(seed);
  const below = (n: number): number => Math.floor(chance() * n);
  const pick = <T>(list: readonly T[]): T => list[below(list.length)] as T;
  const cases: GeneratedCase[] = [];
  while (cases.length < count) {
    const lengthMm = 500 + 9500 * chance();
    const plugsMm = Array.from({ length: below(4) }, () => lengthMm * (0.05 + 0.9 * chance()))
      .sort((a, b) => a - b)
      // Two plugs in one place leave a run without length.
      .filter((mm, i, all) => i === 0 || mm - (all[i - 1] as number) > 1);
    const { map, line } = straightWire({
      lengthMm,
      plugsMm,
      mm2: pick(sizesMm2),
      ends: [pick(circuitEndKinds), pick(circuitEndKinds)],
    });
    const nodeIds = line.nodes.map(({ nodeId }) => nodeId);
    const ladder = layLadder(map, line, nodeIds);
    const state: CircuitState = {
      apartNodeIds: nodeIds.filter(() => chance() < 0.3),
      switchClosed: chance() < 0.5,
      ignitionOn: chance() < 0.5,
      batteryConnected: chance() < 0.5,
    };
    const reading = drawReading(pick(['ohms', 'volts', 'drop']), nodeIds, below, chance);
    const wires = { mainId: line.circuit.id, main: standingWire(ladder, line.circuit), other: null };
    const metered = meterConnected(wires, reading, state, typicalSupply);
    if (!metered) throw new Error('every lead sits on a node of the circuit');
    const wireLinks = ladder.links.flatMap((link, i) => (link.kind === 'wire' ? [i] : []));
    const faultClass: FaultClass = pick(faultClasses);
    const fault = {
      faultClass,
      link: pick(wireLinks),
      share: 0.02 + 0.96 * chance(),
      ohms: 10 ** (-2 + 6 * chance()),
    };
    cases.push({ metered, ladder, fault, reading });
  }
  return cases;
}

function drawReading(
  test: 'ohms' | 'volts' | 'drop',
  nodeIds: readonly NodeId[],
  below: (n: number) => number,
  chance: () => number,
): TwoLeadReading {
  const first = below(nodeIds.length);
  const second = (first + 1 + below(nodeIds.length - 1)) % nodeIds.length;
  const from = { on: 'wire', nodeId: nodeIds[first] as NodeId } as const;
  const to =
    test === 'drop' || chance() < 0.5
      ? ({ on: 'wire', nodeId: nodeIds[second] as NodeId } as const)
      : ({ on: 'body' } as const);
  if (test === 'drop') return { test, driven: from, sensed: to, currentA: 0.1, millivolts: 1 };
  return test === 'ohms' ? { test, from, to, ohms: 1 } : { test, from, to, volts: 1 };
}

/** Seeded circuits with one to three branches, one of them perhaps on another, leads at any end or plug of the tree. */
export function branchedCases(count: number, seed: number): readonly GeneratedCase[] {
  const chance = seededChance(seed);
  const below = (n: number): number => Math.floor(chance() * n);
  const pick = <T>(list: readonly T[]): T => list[below(list.length)] as T;
  const shape = (id: CircuitId, from: NodeId): BranchShape => ({
    id,
    from,
    lengthMm: 300 + 3000 * chance(),
    plugs: Array.from({ length: below(2) }, () => 0.1 + 0.3 * chance()),
    mm2: pick(sizesMm2),
    end: pick(circuitEndKinds),
    reversed: chance() < 0.5,
  });
  const cases: GeneratedCase[] = [];
  while (cases.length < count) {
    const lengthMm = 500 + 9500 * chance();
    const splicesMm = [0.2 + 0.2 * chance(), 0.6 + 0.2 * chance()].map((share) => share * lengthMm);
    const first = shape('circuit:one', 'node:b1');
    const branches: BranchShape[] = [{ ...first, splice: { id: 'node:fork', share: 0.7 } }];
    if (chance() < 0.6) branches.push(shape('circuit:two', pick(['node:b1', 'node:b2'] as const)));
    if (chance() < 0.5) branches.push(shape('circuit:three', 'node:fork'));
    const { map, line } = branchedWire({
      lengthMm,
      splicesMm,
      plugsMm: [0.05, 0.5, 0.9].filter(() => chance() < 0.4).map((share) => share * lengthMm),
      mm2: pick(sizesMm2),
      ends: [pick(circuitEndKinds), pick(circuitEndKinds)],
      branches,
    });
    const nodeIds = allNodes(line).map(({ nodeId }) => nodeId);
    const leads = [...new Set(nodeIds)].filter((id) => map.nodes.get(id)?.kind !== 'splice');
    const ladder = layLadder(map, line, nodeIds);
    const state: CircuitState = {
      apartNodeIds: leads.filter(() => chance() < 0.3),
      switchClosed: chance() < 0.5,
      ignitionOn: chance() < 0.5,
      batteryConnected: chance() < 0.5,
    };
    const reading = drawReading(pick(['ohms', 'volts', 'drop']), leads, below, chance);
    const wires = { mainId: line.circuit.id, main: standingWire(ladder, line.circuit), other: null };
    const metered = meterConnected(wires, reading, state, typicalSupply);
    if (!metered) throw new Error('every lead sits on a node of the circuit');
    const wireLinks = ladder.links.flatMap((link, i) => (link.kind === 'wire' ? [i] : []));
    const fault = {
      faultClass: pick(faultClasses),
      link: pick(wireLinks),
      share: 0.02 + 0.96 * chance(),
      ohms: 10 ** (-2 + 6 * chance()),
    };
    cases.push({ metered, ladder, fault, reading });
  }
  return cases;
}
