import { describe, expect, test } from 'vitest';
import { lookMinutes } from '#core/dig/look.ts';
import type { Job, JobEntry } from '#core/job/job-document.ts';
import type { NextTest } from '#core/job/next-test.ts';
import { nextTests, type TestQuestion } from '#core/job/next-tests.ts';
import { possibleTests } from '#core/job/possible-tests.ts';
import { rank } from '#core/job/rank.ts';
import { testMinutes } from '#core/job/test-minutes-table.ts';
import { layHypotheses } from '#core/locate/hypotheses.ts';
import { isolationTrust } from '#core/locate/unplug-evidence.ts';
import type { Caution, CircuitDuty } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Circuit, Panel, Segment } from '#core/map/records.ts';
import { sample } from '#tests/sample.ts';
import { sampleJob, sampleMap } from '#tests/samples/read-sample.ts';

const panelMinutes = 20;
const half = (id: Segment['id']): Segment => ({ ...sample.segment, id, clips: [], tags: [] });

/** Two runs of 750 mm under a panel each, a plug in reach between them; the fault as likely in either. */
const twoHalves = (shares: readonly [number, number] = [0.5, 0.5]): TestQuestion => {
  const panel = (id: Panel['id']): Panel => ({ ...sample.tread, id, minutesOff: panelMinutes, offFirst: [] });
  const map: MapDocument = {
    ...sample.map,
    panels: new Map([panel('panel:a'), panel('panel:b')].map((each) => [each.id, each])),
  };
  const cells = layHypotheses(new Float64Array([0, 500, 1500]), []);
  const probability = new Float64Array(cells.size);
  probability.set(shares);
  return {
    map,
    line: sample.line,
    cells,
    probability,
    stretches: [
      { segmentId: half('segment:front').id, fromMm: 0, toMm: 500, panelIds: ['panel:a'] },
      { segmentId: half('segment:rear').id, fromMm: 500, toMm: 1000, panelIds: ['panel:b'] },
    ],
    entries: [],
    medianMm: 500,
    parts: [],
    off: new Set(),
    lookQuality: 1,
  };
};

const kinds = (tests: readonly { readonly kind: string }[]) => new Set(tests.map(({ kind }) => kind));

const withDuty = (duty: CircuitDuty): TestQuestion => {
  const question = twoHalves();
  return { ...question, line: { ...question.line, circuit: { ...sample.circuit, duty } } };
};

const possible = (question: TestQuestion) =>
  possibleTests({ ...question, cellProbability: Float64Array.of(0.5, 0.5) });

describe('the worth of a test in minutes', () => {
  test('pulling the plug between two equal halves: worked by hand', () => {
    // Only the first half of the second cell is in view, so its share there is a half.
    const seenFirst = 0.5;
    const seenSecond = 0.25;
    const step = panelMinutes + lookMinutes(500);
    const minutesFor = (first: number, second: number): number => {
      const [sooner, later] = first >= second ? [first, second] : [second, first];
      return (sooner * step + later * 2 * step) / (sooner + later);
    };
    const trust = isolationTrust;
    const stays = { first: seenFirst * trust, second: seenSecond * (1 - trust) };
    const gone = { first: seenFirst * (1 - trust), second: seenSecond * trust };
    const seen = seenFirst + seenSecond;
    const withTest =
      ((stays.first + stays.second) * minutesFor(stays.first, stays.second) +
        (gone.first + gone.second) * minutesFor(gone.first, gone.second)) /
      seen;
    const saved = minutesFor(seenFirst, seenSecond) - withTest - testMinutes.unplug;
    const pulled = nextTests(twoHalves()).find(
      ({ kind, nodeIds }) => kind === 'unplug' && nodeIds[0] === 'node:middle',
    ) as NextTest;
    expect(pulled.minutesSaved).toBeCloseTo(saved, 9);
    expect(pulled.minutes).toBe(testMinutes.unplug);
    expect(pulled.outcomes.map(({ label }) => label.what)).toEqual(['stays', 'gone']);
    expect(pulled.outcomes.map(({ first }) => first?.takeOff)).toEqual([['panel:a'], ['panel:b']]);
  });

  test('when the place is nearly known no test pays', () => {
    expect(nextTests(twoHalves([0.99, 0.01]))).toEqual([]);
  });

  test('a plug behind trim costs the minutes of the trim, and that trim is then off', () => {
    const question = twoHalves();
    const node = question.map.nodes.get('node:middle');
    if (!node) throw new Error('the sample has a plug');
    const nodes = new Map(question.map.nodes).set(node.id, { ...node, panelIds: ['panel:a'] });
    const [free, behind] = [question, { ...question, map: { ...question.map, nodes } }].map((each) =>
      nextTests(each).find(({ kind, nodeIds }) => kind === 'unplug' && nodeIds[0] === 'node:middle'),
    );
    expect(free?.takeOff).toEqual([]);
    expect(behind?.takeOff ?? ['panel:a']).toEqual(['panel:a']);
    expect(behind?.minutesSaved ?? 0).toBeLessThan(free?.minutesSaved ?? 0);
  });
});

describe('tests on offer for a feed that nothing is known of yet', () => {
  const map = sampleMap('brannock-scarp');
  const job: Job = { ...sampleJob('brannock-scarp'), entries: [] };
  const answer = rank(map, job, { withTests: true });
  if (!answer.ok) throw new Error(answer.problem.code);
  const tests = answer.value.nextTests;

  test('are ranked by what they save, and each saves something', () => {
    const several = nextTests(twoHalves());
    expect(several.length).toBeGreaterThan(1);
    expect(tests.length).toBeGreaterThan(0);
    for (const list of [tests, several]) {
      for (const each of list) expect(each.minutesSaved).toBeGreaterThan(0);
      list.slice(1).forEach((each, i) => {
        expect(each.minutesSaved).toBeLessThan((list[i] as NextTest).minutesSaved + 0.06);
      });
    }
  });

  // Common practice, no source: battery off before anything near an airbag, a belt tensioner or high voltage.
  test('never move the loom behind airbag, tensioner or high-voltage trim with the battery on', () => {
    const question = twoHalves();
    const guardedBy = (caution: Caution | null) => {
      const panel = question.map.panels.get('panel:a') as Panel;
      const panels = new Map(question.map.panels).set(panel.id, {
        ...panel,
        cautions: caution ? [caution] : [],
      });
      const moves = possible({ ...question, map: { ...question.map, panels } }).filter(
        ({ kind }) => kind === 'move',
      );
      return moves.find(({ ranges }) => ranges[0]?.fromMm === 0);
    };
    expect(guardedBy(null)?.state.ignitionOn).toBe(true);
    for (const caution of ['airbag', 'belt-tensioner', 'high-voltage'] as const) {
      const { state } = guardedBy(caution) ?? {};
      expect(state?.ignitionOn).toBe(false);
      expect(state?.batteryConnected).toBe(false);
      expect(state?.apartNodeIds.length).toBeGreaterThan(0);
    }
  });

  test('have outcomes that add up to one, each with what is then opened first', () => {
    for (const { outcomes } of tests) {
      expect(outcomes.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 4);
      for (const { first } of outcomes) expect(first).not.toBeNull();
    }
  });

  test('include no supply into the feed and no ohms while it is live', () => {
    for (const { kind, state } of tests) {
      expect(kind.startsWith('drop')).toBe(false);
      if (['ohms-both-ends', 'beep', 'capacitance'].includes(kind))
        expect(state.batteryConnected).toBe(false);
    }
  });

  test('are worked out only when asked for', () => {
    const plain = rank(map, job);
    expect(plain.ok && plain.value.nextTests).toEqual([]);
  });
});

describe('what is never offered', () => {
  test('anything on an airbag or high-voltage circuit', () => {
    for (const duty of ['restraint', 'high-voltage'] as const) {
      expect(possible(withDuty(duty))).toEqual([]);
      expect(nextTests(withDuty(duty))).toEqual([]);
    }
  });

  test('current or a lamp into a data line', () => {
    const offered = kinds(possible(withDuty('data')));
    for (const kind of ['drop', 'drop-both-ends', 'lamp-for-fuse']) expect(offered).not.toContain(kind);
    expect(offered).toContain('unplug');
  });

  test('ohms, beep or capacitance with the battery on or an end of the measured wire plugged in', () => {
    for (const { kind, state, sides } of possible(twoHalves())) {
      if (kind === 'unplug' || kind === 'move') continue;
      expect(state.batteryConnected).toBe(false);
      expect(state.ignitionOn).toBe(false);
      const isAtPlug = sides.some((side) => side !== null);
      if (!isAtPlug) expect([...state.apartNodeIds].sort()).toEqual(['node:far', 'node:west']);
      else expect(state.apartNodeIds).toContain('node:middle');
    }
  });

  test('more current than 0.1 A, 12 V and a fuse of 1 A into a signal wire', () => {
    const drops = possible(twoHalves()).filter(({ kind }) => kind.startsWith('drop'));
    expect(drops.length).toBe(7);
    for (const { injection, state } of drops) {
      expect(state.apartNodeIds).toEqual(expect.arrayContaining(['node:west', 'node:far']));
      expect(injection).toMatchObject({ way: 'limited-supply', amps: 0.1, supplyVolts: 12, fuseA: 1 });
    }
  });

  test('a drop on a wire with an unknown end', () => {
    const question = twoHalves();
    const ends: Circuit['ends'] = [sample.circuit.ends[0], { nodeId: null, kind: 'other' }];
    const line = { ...question.line, circuit: { ...sample.circuit, ends } };
    expect(kinds(possible({ ...question, line }))).not.toContain('drop');
  });

  test('a test that was done already', () => {
    const state = {
      apartNodeIds: ['node:middle' as const],
      switchClosed: null,
      ignitionOn: true,
      batteryConnected: true,
    };
    const entry = (
      id: JobEntry['id'],
      reading: Extract<JobEntry, { type: 'reading' }>['reading'],
    ): JobEntry => ({
      id,
      at: '2026-01-05T10:00:00Z',
      type: 'reading',
      reading,
      state,
      note: '',
    });
    const west = { on: 'wire', nodeId: 'node:west' } as const;
    const entries = [
      entry('entry:1', { test: 'symptom', stays: true }),
      entry('entry:2', {
        test: 'move',
        stretches: [{ segmentId: 'segment:front', fromMm: 0, toMm: 500 }],
        changed: 0,
        tried: 5,
      }),
      entry('entry:3', { test: 'drop', driven: west, sensed: west, currentA: 0.1, millivolts: 3 }),
    ];
    const left = possible({ ...twoHalves(), entries });
    expect(left.filter(({ nodeIds, kind }) => kind === 'unplug' && nodeIds[0] === 'node:middle')).toEqual([]);
    expect(left.filter(({ kind, ranges }) => kind === 'move' && ranges[0]?.fromMm === 0)).toEqual([]);
    const fromEnds = left.filter(({ kind, sides }) => kind === 'drop' && !sides.some(Boolean));
    expect(fromEnds.map(({ nodeIds }) => nodeIds[0])).toEqual(['node:far']);
  });
});

describe('a fused feed', () => {
  test('is tested by a lamp in place of the fuse, no larger than fuse and wire bear, loads unplugged', () => {
    const ends: Circuit['ends'] = [{ nodeId: 'node:west', kind: 'fused-supply' }, sample.circuit.ends[1]];
    const question = twoHalves();
    const line = { ...question.line, circuit: { ...sample.circuit, fuseA: 5, ends } };
    const offered = possible({ ...question, line }).find(({ kind }) => kind === 'lamp-for-fuse');
    if (offered?.injection?.way !== 'lamp-for-fuse') throw new Error('a lamp is the way on a feed');
    expect(offered.injection.amps).toBeLessThanOrEqual(5);
    expect(offered.state.batteryConnected).toBe(true);
    expect(offered.state.apartNodeIds).toEqual(['node:far']);
  });
});
