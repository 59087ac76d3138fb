import { describe, expect, test } from 'vitest';
import type { Job, JobEntry } from '#core/job/job-document.ts';
import { rank } from '#core/job/rank.ts';
import type { Ranking } from '#core/job/ranking.ts';
import type { CarState, Reading } from '#core/job/reading.ts';
import type { FaultClass } from '#core/map/kinds.ts';
import type { Circuit } from '#core/map/records.ts';
import { straightWire } from '#tests/core/circuit/four-metre-wire.ts';
import { sample } from '#tests/sample.ts';

const wire = straightWire({ lengthMm: 4000, plugsMm: [2000], branchesMm: [1000, 3000], mm2: 0.35 });
/** A second wire beside the last metre and a half of the searched one. */
const beside: Circuit = {
  ...wire.line.circuit,
  id: 'circuit:beside',
  path: wire.line.circuit.path.slice(2),
  ends: [
    { nodeId: 'node:c1', kind: 'other' },
    { nodeId: 'node:switch', kind: 'load' },
  ],
};
const map = { ...wire.map, circuits: new Map([...wire.map.circuits, [beside.id, beside]]) };
const apart: CarState = {
  apartNodeIds: ['node:module', 'node:switch'],
  switchClosed: null,
  ignitionOn: false,
  batteryConnected: false,
};
const live: CarState = { apartNodeIds: [], switchClosed: false, ignitionOn: true, batteryConnected: true };
const near = { on: 'wire', nodeId: 'node:module' } as const;
const far = { on: 'wire', nodeId: 'node:switch' } as const;
const body = { on: 'body' } as const;
const lastRun = [{ segmentId: 'segment:s4' as const, fromMm: 0, toMm: 1000 }];

const ranked = (readings: readonly (readonly [Reading, CarState])[], changed: Partial<Job> = {}): Ranking => {
  const entries = readings.map(
    ([reading, state], i): JobEntry => ({
      id: `entry:${i}`,
      at: '2026-01-05T09:00:00Z',
      type: 'reading',
      reading,
      state,
      note: '',
    }),
  );
  const job: Job = {
    ...sample.job,
    mapId: map.id,
    circuitId: wire.line.circuit.id,
    failureType: 'not-known',
    ...changed,
    entries,
  };
  const answer = rank(map, job, { readingDraws: 16 });
  if (!answer.ok) throw new Error(answer.problem.code);
  return answer.value;
};
const ofClass = ({ posterior }: Ranking, kind: FaultClass): number => posterior.classes[kind];
const beyond = ({ posterior }: Ranking, fromMm: number): number =>
  posterior.stretches
    .filter((stretch) => stretch.fromMm >= fromMm)
    .reduce((sum, { probability }) => sum + probability, 0);
const unread = ranked([]);

describe('each kind of reading says something of its own', { timeout: 60_000 }, () => {
  test.each<[string, Reading, CarState, FaultClass]>([
    [
      'few ohms to the body: a short to it',
      { test: 'ohms', from: near, to: body, ohms: 3 },
      apart,
      'short-to-ground',
    ],
    [
      'a beep to the body: a short to it',
      { test: 'beep', from: near, to: body, beeps: true },
      apart,
      'short-to-ground',
    ],
    [
      'an open line from end to end: a break',
      { test: 'ohms', from: near, to: far, ohms: 'open-line' },
      apart,
      'open',
    ],
    [
      'over-range from end to end: a break',
      { test: 'ohms', from: near, to: far, ohms: 'over-range' },
      apart,
      'open',
    ],
    ['no beep from end to end: a break', { test: 'beep', from: near, to: far, beeps: false }, apart, 'open'],
    [
      '30 ohm from end to end: a poor joint',
      { test: 'ohms', from: near, to: far, ohms: 30 },
      apart,
      'high-resistance',
    ],
    [
      'battery volts on a dead input: a short to supply',
      { test: 'volts', from: near, to: body, volts: 12.5 },
      live,
      'short-to-supply',
    ],
    [
      'a current that flows out of an unplugged wire: a short',
      { test: 'drop', driven: near, sensed: far, currentA: 0.1, millivolts: 12 },
      apart,
      'short-to-ground',
    ],
    [
      'ohms to the wire beside: the two touch',
      { test: 'ohms', from: far, to: { ...far, circuitId: 'circuit:beside' }, ohms: 0.3 },
      apart,
      'wire-to-wire',
    ],
    ['far too little capacitance: a break', { test: 'capacitance', at: near, picofarads: 30 }, apart, 'open'],
  ])('%s', (_, reading, state, kind) => {
    const after = ranked([[reading, state]]);
    expect(after.readings[0]?.unused).toBeNull();
    expect(ofClass(after, kind)).toBeGreaterThan(1.3 * ofClass(unread, kind));
  });

  test('a wire that beeps through is not broken', () => {
    const after = ranked([[{ test: 'beep', from: near, to: far, beeps: true }, apart]]);
    expect(ofClass(after, 'open')).toBeLessThan(0.1 * ofClass(unread, 'open'));
  });

  test('a drop places: 12 mV at 0.1 A are some 2.3 m of wire, so beyond the plug and before the last metre', () => {
    const after = ranked([
      [{ test: 'drop', driven: near, sensed: far, currentA: 0.1, millivolts: 12 }, apart],
    ]);
    expect(after.posterior.medianStationMm).toBeGreaterThan(2000);
    expect(after.posterior.medianStationMm).toBeLessThan(2600);
  });

  test('two capacitances place a break by their ratio', () => {
    const after = ranked([
      [{ test: 'capacitance', at: near, picofarads: 45 }, apart],
      [{ test: 'capacitance', at: far, picofarads: 135 }, apart],
    ]);
    expect(Math.abs(after.posterior.medianStationMm - 1000)).toBeLessThan(400);
  });

  test('a symptom that stays with the plug apart lies before it', () => {
    const short = { failureType: 'circuit-short-to-ground' } as const;
    const state: CarState = { ...live, apartNodeIds: ['node:c1'] };
    const after = ranked([[{ test: 'symptom', stays: true }, state]], short);
    expect(beyond(after, 2000)).toBeLessThan(0.5 * beyond(ranked([], short), 2000));
  });

  test('a place that changes the reading when pressed rises, one that never does falls a little', () => {
    const move = (changed: number): Reading => ({ test: 'move', stretches: lastRun, changed, tried: 10 });
    expect(beyond(ranked([[move(6), live]]), 3000)).toBeGreaterThan(2 * beyond(unread, 3000));
    const never = beyond(ranked([[move(0), live]]), 3000);
    expect(never).toBeLessThan(beyond(unread, 3000));
    expect(never).toBeGreaterThan(0.05 * beyond(unread, 3000));
  });

  test('a part that works in one position and fails in another points to what moved between', () => {
    const works = (yes: boolean): Reading => ({ test: 'function', works: yes, stretches: lastRun });
    const after = ranked([
      [works(true), live],
      [works(false), live],
    ]);
    expect(beyond(after, 3000)).toBeGreaterThan(1.5 * beyond(unread, 3000));
  });

  test('a circuit beside that fails too raises the stretch they share and the two touching; one that works lowers both', () => {
    const fails = ranked([], { alsoFailingCircuitIds: ['circuit:beside'] });
    const works = ranked([], { workingCircuitIds: ['circuit:beside'] });
    expect(beyond(fails, 2000)).toBeGreaterThan(beyond(unread, 2000));
    expect(beyond(works, 2000)).toBeLessThan(beyond(unread, 2000));
    expect(ofClass(fails, 'wire-to-wire')).toBeGreaterThan(1.5 * ofClass(unread, 'wire-to-wire'));
    expect(ofClass(works, 'wire-to-wire')).toBeLessThan(0.9 * ofClass(unread, 'wire-to-wire'));
  });
});
