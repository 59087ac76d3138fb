import { describe, expect, test } from 'vitest';
import { partsOnLeads } from '#core/circuit/usable-readings.ts';
import { hearReadings } from '#core/job/hear-readings.ts';
import type { Job, JobEntry } from '#core/job/job-document.ts';
import { possibleTests } from '#core/job/possible-tests.ts';
import { rank, searchedLine } from '#core/job/rank.ts';
import { layHypotheses } from '#core/locate/hypotheses.ts';
import { branchedWire } from '#tests/core/circuit/branched-wire.ts';
import { sample } from '#tests/sample.ts';

/** A feed of 4 m with a splice at 1.5 m and 2 m of branch to a second lamp, a plug half way along it. */
const { map, line } = branchedWire({
  lengthMm: 4000,
  splicesMm: [1500],
  plugsMm: [3000],
  mm2: 0.35,
  ends: ['module-input-pull-up', 'switch-to-ground'],
  branches: [
    { id: 'circuit:side', from: 'node:b1', lengthMm: 2000, plugs: [0.5], mm2: 0.35, end: 'switch-to-ground' },
  ],
});
const apartNodeIds = ['node:module', 'node:switch', 'node:side-end'] as const;
const drop = (id: JobEntry['id'], driven: string, sensed: string, millivolts: number): JobEntry => ({
  id,
  at: '2026-01-05T09:00:00Z',
  type: 'reading',
  reading: {
    test: 'drop',
    driven: { on: 'wire', nodeId: driven as 'node:module' },
    sensed: { on: 'wire', nodeId: sensed as 'node:module' },
    currentA: 0.1,
    millivolts,
  },
  state: { apartNodeIds: [...apartNodeIds], switchClosed: null, ignitionOn: false, batteryConnected: false },
  note: '',
});
const job: Job = {
  ...sample.job,
  mapId: map.id,
  circuitId: line.circuit.id,
  failureType: 'circuit-short-to-ground',
  entries: [],
};
const ranked = (entries: readonly JobEntry[], changed: Partial<Job> = {}) => {
  const answer = rank(map, { ...job, ...changed, entries: [...entries] });
  if (!answer.ok) throw new Error(answer.problem.code);
  return answer.value;
};
const onRuns = ({ posterior }: ReturnType<typeof ranked>, word: string): number =>
  posterior.stretches
    .filter(({ segmentId }) => segmentId.includes(word))
    .reduce((sum, { probability }) => sum + probability, 0);
// 5.18 milliohm a decimetre: 2.4 m and 1.1 m of wire, one plug of 5 milliohm on the branch.
const towardsSide = drop('entry:a', 'node:module', 'node:side-end', 11.9);
const fromSide = drop('entry:b', 'node:side-end', 'node:module', 6.2);

describe('a circuit with a branch is ranked as one', { timeout: 60_000 }, () => {
  const both = ranked([towardsSide, fromSide]);

  test('the branch is part of the search from the first, and all still adds up to one', () => {
    const unread = ranked([]);
    const { posterior, circuit } = unread;
    expect(circuit.lengthMm).toBe(6000);
    const sum = posterior.stretches.reduce((all, { probability }) => all + probability, 0);
    const parts = posterior.components.reduce((all, { probability }) => all + probability, 0);
    expect(sum + parts + posterior.noneOfThese).toBeCloseTo(1, 9);
    expect(onRuns(unread, 'side')).toBeGreaterThan(0.15);
    expect(posterior.components.map(({ nodeId }) => nodeId)).toEqual([
      'node:module',
      'node:c1',
      'node:switch',
      'node:side-c1',
      'node:side-end',
    ]);
  });

  test('readings to the branch’s own end put the fault on the branch, and the plan opens it there first', () => {
    const { digPlan, posterior } = both;
    expect(onRuns(both, 'side')).toBeGreaterThan(0.9);
    expect(posterior.medianStationMm).toBeGreaterThan(4750);
    expect(posterior.medianStationMm).toBeLessThan(5050);
    expect(digPlan[0]?.look.segmentIds.every((id) => id.includes('side'))).toBe(true);
  });

  test('searched from the branch’s own circuit the same readings point to the same run', () => {
    const asSide = ranked([towardsSide, fromSide], { circuitId: 'circuit:side' });
    expect(onRuns(asSide, 'side')).toBeGreaterThan(0.9);
    expect(Math.abs(onRuns(asSide, 'side') - onRuns(both, 'side'))).toBeLessThan(0.05);
  });

  test('with the order of the readings turned round the answer is the same', () => {
    const [a, b] = [both, ranked([fromSide, towardsSide])];
    a.posterior.stretches.forEach(({ probability }, i) => {
      expect(probability).toBeCloseTo(b.posterior.stretches[i]?.probability ?? -1, 9);
    });
  });

  test('a reading on the branch is used, not laid aside as another circuit’s', () => {
    const reading = towardsSide.type === 'reading' ? towardsSide.reading : null;
    if (reading?.test !== 'drop') throw new Error('a drop was made');
    const sensed = { on: 'wire', nodeId: 'node:side-end', circuitId: 'circuit:side' } as const;
    const named: JobEntry = {
      ...(towardsSide as JobEntry & { type: 'reading' }),
      reading: { ...reading, sensed },
    };
    expect(ranked([named]).readings[0]?.unused).toBeNull();
  });
});

describe('tests offered on a circuit with a branch', () => {
  const laid = searchedLine(map, job);
  if (!laid.ok) throw new Error(laid.problem.code);
  const cells = layHypotheses(
    Float64Array.from({ length: 61 }, (_, i) => i * 100),
    [],
  );
  const tests = possibleTests({
    map,
    line: laid.value,
    cells,
    cellProbability: new Float64Array(60).fill(1 / 60),
    stretches: [],
    entries: [],
    medianMm: 2000,
  });

  test('pull the plugs and parts of the branch too', () => {
    const pulled = tests.filter(({ kind }) => kind === 'unplug').flatMap(({ nodeIds }) => nodeIds);
    expect(pulled).toEqual(['node:c1', 'node:switch', 'node:side-c1', 'node:side-end']);
  });

  test('want the part at the end of the branch unplugged before ohms, capacitance or current', () => {
    const dead = tests.filter(({ kind }) => !['unplug', 'move'].includes(kind));
    expect(dead.length).toBeGreaterThan(3);
    for (const { state, sides, nodeIds, kind } of dead) {
      const isAtPlug = sides.some((side) => side !== null);
      if (!isAtPlug || kind.startsWith('drop')) expect(state.apartNodeIds).toContain('node:side-end');
      // At a parted plug only what still hangs on the wire measured has to be unplugged.
      const leads = nodeIds.map(
        (nodeId, i) => ({ on: 'wire', nodeId, side: sides[i] ?? undefined }) as const,
      );
      expect(partsOnLeads(line, leads, state)).toEqual([]);
    }
  });
});

test('without readings nothing is heard on a branch either', () => {
  const cells = layHypotheses(Float64Array.of(0, 3000, 6000), []);
  expect(hearReadings(map, line, cells, []).together).toBeNull();
});
