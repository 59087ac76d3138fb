import { type CircuitState, isElectrical } from '../circuit/car-state.ts';
import { lineEnds } from '../circuit/circuit-line.ts';
import { bareState, withEndsApart } from '../circuit/circuit-network.ts';
import { leadNodeIds } from '../circuit/metered-circuit.ts';
import type { InjectionPlan } from '../circuit/safe-injection.ts';
import { safeInjection } from '../circuit/safe-injection.ts';
import { moveEvidence } from '../locate/move-evidence.ts';
import { classOutcomes, twoOutcomes } from '../locate/outcome-chances.ts';
import type { StationRange } from '../locate/station-ranges.ts';
import { coveredShare, joinRanges } from '../locate/station-ranges.ts';
import { type Caution, type FaultClass, isLookOnly } from '../map/kinds.ts';
import type { NodeId } from '../quantity/id.ts';
import { betweenTests } from './between-tests.ts';
import { symptomEvidence, watchingEnds } from './job-evidence.ts';
import { panelsHiding } from './panels-hiding.ts';
import { onCircuit, type PathStretch } from './path-stretches.ts';
import { pieceTests } from './piece-tests.ts';
import { type PlacingWay, placingTest } from './placing-test.ts';
import type { PossibleTest, TestGrounds } from './possible-test.ts';

/** Places to move at least this likely are worth naming, and no more than so many. */
const leastMoved = 0.04;
const mostMoved = 6;

const live: CircuitState = { ...bareState, ignitionOn: true, batteryConnected: true };

/**
 * Every test that may be done on the circuit as things stand. None on restraint and high-voltage
 * circuits; none that puts current into a data circuit or a wire with an end plugged in; ohms, beep and
 * capacitance only with both ends of the wire measured free and the battery off; the same for both of two wires.
 * @example
 * possibleTests({ map: sample.map, line: sample.line, cells: layHypotheses(new Float64Array([0, 1500]), []), cellProbability: Float64Array.of(1), stretches: [], entries: [], medianMm: 700 }).slice(2, 8).map(({ kind }) => kind) // => ['drop', 'drop', 'drop-both-ends', 'ohms-both-ends', 'capacitance', 'beep']
 */
export function possibleTests(grounds: TestGrounds): PossibleTest[] {
  const { circuit, branches } = grounds.line;
  const isGuarded = [circuit, ...branches.map((branch) => branch.circuit)].some(({ duty }) =>
    isLookOnly(duty),
  );
  if (isGuarded) return [];
  return [
    ...unplugTests(grounds),
    ...currentTests(grounds),
    ...deadTests(grounds),
    ...pieceTests(grounds),
    ...betweenTests(grounds),
    ...moveTests(grounds),
  ];
}

const bare = {
  other: null,
  ranges: [],
  sides: [],
  towardsId: null,
  plugsParted: 0,
  injection: null,
  expected: null,
} as const;

function unplugTests(grounds: TestGrounds): PossibleTest[] {
  const { map, line, cells, entries } = grounds;
  const tried = new Set(
    entries.flatMap((entry) =>
      entry.type === 'reading' && entry.reading.test === 'symptom' ? entry.state.apartNodeIds : [],
    ),
  );
  const [first, second] = line.circuit.ends;
  const rows = [
    { nodes: line.nodes, begin: first, end: second },
    ...line.branches.map(({ nodes, end }) => ({ nodes, begin: null, end })),
  ];
  const ends = lineEnds(line);
  const tests: PossibleTest[] = [];
  for (const { nodes, begin, end } of rows)
    for (const [i, { nodeId }] of nodes.entries()) {
      const part = i === 0 ? begin : i === nodes.length - 1 ? end : null;
      const isPlug = i > 0 && part === null && map.nodes.get(nodeId)?.kind === 'inline-connector';
      const isPart =
        part !== null && ends.includes(part) && !watchingEnds.has(part.kind) && part.kind !== 'ground-point';
      const stays = symptomEvidence(line, [nodeId], true);
      if (!(isPlug || isPart) || tried.has(nodeId) || !stays) continue;
      tried.add(nodeId);
      tests.push({
        ...bare,
        kind: 'unplug',
        nodeIds: [nodeId],
        state: { ...live, apartNodeIds: [nodeId] },
        panelIds: panelsHiding(grounds, [nodeId]),
        labels: [{ what: 'stays' }, { what: 'gone' }],
        chances: twoOutcomes(cells, stays),
      });
    }
  return tests;
}

/** Ends of the circuit that leads can be put to; null when one is not known. */
function endNodes({ line }: TestGrounds): readonly [NodeId, NodeId] | null {
  const [first, second] = line.circuit.ends;
  return first.nodeId !== null && second.nodeId !== null ? [first.nodeId, second.nodeId] : null;
}

function currentTests(grounds: TestGrounds): PossibleTest[] {
  const ends = endNodes(grounds);
  if (!ends) return [];
  const { circuit } = grounds.line;
  const feedAt = circuit.ends.findIndex(({ kind }) => kind === 'fused-supply');
  const apart = withEndsApart(bareState, lineEnds(grounds.line));
  const joined = grounds.line.branches;
  const driven = new Set(
    grounds.entries.flatMap((entry) => {
      if (entry.type !== 'reading' || entry.reading.test !== 'drop') return [];
      const { driven } = entry.reading;
      return driven.on === 'wire' && ends.includes(driven.nodeId) ? [driven.nodeId] : [];
    }),
  );
  if (feedAt >= 0) {
    const nodeIds = feedAt === 0 ? ends : ([ends[1], ends[0]] as const);
    const loads = apart.apartNodeIds.filter((id) => id !== nodeIds[0]);
    const state = { ...live, apartNodeIds: loads };
    const answer = safeInjection(circuit, state, { joined });
    if (answer.outcome === 'refused' || driven.has(nodeIds[0])) return [];
    return [placing(grounds, 'lamp-for-fuse', nodeIds, state, answer.plan)];
  }
  const answer = safeInjection(circuit, apart, { joined });
  if (answer.outcome === 'refused') return [];
  const tests: PossibleTest[] = [];
  // With one end driven already, driving the other makes it a test from both ends.
  for (const nodeIds of [ends, [ends[1], ends[0]] as const])
    if (!driven.has(nodeIds[0]))
      tests.push(placing(grounds, 'drop', nodeIds, apart, answer.plan, driven.has(nodeIds[1])));
  if (driven.size === 0) tests.push(placing(grounds, 'drop-both-ends', ends, apart, answer.plan));
  return tests;
}

/** Tests with a meter on the dead wire, both ends unplugged. */
function deadTests(grounds: TestGrounds): PossibleTest[] {
  const ends = endNodes(grounds);
  if (!ends) return [];
  const { cells, line, entries } = grounds;
  const state = withEndsApart(bareState, lineEnds(line));
  const done = new Set(
    entries.flatMap((entry) =>
      entry.type === 'reading' &&
      isElectrical(entry.reading) &&
      leadNodeIds([entry.reading]).some((nodeId) => ends.includes(nodeId))
        ? [entry.reading.test]
        : [],
    ),
  );
  const tests: PossibleTest[] = [];
  if (!done.has('ohms')) tests.push(placing(grounds, 'ohms-both-ends', ends, state, null));
  if (!done.has('capacitance')) tests.push(placing(grounds, 'capacitance', ends, state, null));
  if (!done.has('beep'))
    tests.push({
      ...bare,
      kind: 'beep',
      nodeIds: ends,
      state,
      panelIds: panelsHiding(grounds, ends),
      labels: [{ what: 'beeps' }, { what: 'silent' }],
      chances: classOutcomes(cells, beepsWith, (place) => (place === 'plug' ? 0.5 : 0.99)),
    });
  return tests;
}

/** Chance that a wire with a fault of the class beeps from end to end (judgement). */
function beepsWith(kind: FaultClass): number {
  return kind === 'open' ? 0.01 : kind === 'high-resistance' ? 0.4 : 0.99;
}

/** A test that places the fault from the circuit's two ends, its first lead at the first node named. */
function placing(
  grounds: TestGrounds,
  kind: PlacingWay['kind'],
  nodeIds: readonly [NodeId, NodeId],
  state: CircuitState,
  injection: InjectionPlan | null,
  isSecondOfTwo = false,
): PossibleTest {
  const { mainMm, circuit } = grounds.line;
  const isFirst = nodeIds[0] === circuit.ends[0].nodeId;
  const [firstMm, otherMm] = isFirst ? [0, mainMm] : [mainMm, 0];
  const way = { kind, nodeIds, firstMm, otherMm, state, injection, isSecondOfTwo };
  return {
    other: null,
    ranges: [],
    ...placingTest(grounds, way),
    panelIds: panelsHiding(grounds, nodeIds),
  };
}

/** Panels behind which nothing is pressed or tugged at with the battery on. */
const movedDead: ReadonlySet<Caution> = new Set(['airbag', 'belt-tensioner', 'high-voltage']);

/**
 * The likeliest stretches, each pressed or tugged while watching; trim need not come off for that. Behind
 * panels with an airbag, a belt tensioner or high voltage the battery is off and a meter on the unplugged wire
 * is what is watched (common practice, no source).
 */
function moveTests(grounds: TestGrounds): PossibleTest[] {
  const { map, line, cells, stretches, cellProbability, entries } = grounds;
  const wantsBatteryOff = ({ panelIds }: PathStretch): boolean =>
    panelIds.some((id) => map.panels.get(id)?.cautions.some((each) => movedDead.has(each)));
  const ends = endNodes(grounds);
  const dead = ends && {
    state: withEndsApart(bareState, lineEnds(line)),
    panelIds: panelsHiding(grounds, ends),
  };
  const moved = joinRanges(
    entries.flatMap((entry) =>
      entry.type === 'reading' && entry.reading.test === 'move'
        ? onCircuit(line, entry.reading.stretches)
        : [],
    ),
  );
  const massOf = ({ fromMm, toMm }: StationRange): number => {
    let mass = 0;
    for (let cell = 0; cell < cells.cellCount; cell++) {
      const a = cells.cellEdgesMm[cell] as number;
      const b = cells.cellEdgesMm[cell + 1] as number;
      mass += (cellProbability[cell] as number) * coveredShare([{ fromMm, toMm }], a, b);
    }
    return mass;
  };
  return stretches
    .filter(({ fromMm, toMm }) => coveredShare(moved, fromMm, toMm) < 0.8)
    .map((stretch) => ({
      range: { fromMm: stretch.fromMm, toMm: stretch.toMm },
      mass: massOf(stretch),
      how: wantsBatteryOff(stretch) ? dead : { state: live, panelIds: [] },
    }))
    .filter(({ mass }) => mass >= leastMoved)
    .sort((a, b) => b.mass - a.mass || a.range.fromMm - b.range.fromMm)
    .slice(0, mostMoved)
    .flatMap(({ range, how }) => {
      if (!how) return [];
      const labels = [{ what: 'changes' as const }, { what: 'no-change' as const }];
      const chances = twoOutcomes(cells, moveEvidence([range], 1, 1));
      return [{ ...bare, kind: 'move' as const, nodeIds: [], ranges: [range], ...how, labels, chances }];
    });
}
