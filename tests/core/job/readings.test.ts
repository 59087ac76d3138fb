import { describe, expect, test } from 'vitest';
import type { ElectricalReading } from '#core/circuit/car-state.ts';
import { layStraight } from '#core/circuit/circuit-line.ts';
import { bareState, withEndsApart } from '#core/circuit/circuit-network.ts';
import type { Job, JobEntry } from '#core/job/job-document.ts';
import { rank } from '#core/job/rank.ts';
import { type RankOptions, rankOnLine } from '#core/job/rank-on-line.ts';
import type { Ranking, ReadingEffect } from '#core/job/ranking.ts';
import { createReadingsCache, type ReadingsCache } from '#core/job/readings-cache.ts';
import { splitSegment } from '#core/map/commands/split-segment.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { applyPatch } from '#core/map/patch.ts';
import type { Circuit } from '#core/map/records.ts';
import { sample } from '#tests/sample.ts';

const at = '2026-01-05T10:00:00Z';
const west = { on: 'wire', nodeId: 'node:west' } as const;
const far = { on: 'wire', nodeId: 'node:far' } as const;
const body = { on: 'body' } as const;
const apart = withEndsApart(bareState, sample.circuit.ends);
type ReadingEntry = Extract<JobEntry, { type: 'reading' }>;

const entry = (
  id: JobEntry['id'],
  reading: ReadingEntry['reading'],
  state: typeof apart = apart,
): ReadingEntry => ({
  id,
  at,
  type: 'reading',
  reading,
  state: { ...state, apartNodeIds: [...state.apartNodeIds] },
  note: '',
});
/** Millivolts for a short at 1.2 m: 0.0622 ohm of wire at its usual ohms, one plug before it. */
const nearDrop = entry('entry:1', {
  test: 'drop',
  driven: west,
  sensed: far,
  currentA: 0.1,
  millivolts: 6.7,
});
const farDrop = entry('entry:2', { test: 'drop', driven: far, sensed: west, currentA: 0.1, millivolts: 1.6 });
const ohms = (id: JobEntry['id'], from: typeof west | typeof far, value: number) =>
  entry(id, { test: 'ohms', from, to: body, ohms: value } as ElectricalReading as ReadingEntry['reading']);

const jobWith = (entries: readonly JobEntry[], changes: Partial<Job> = {}): Job => ({
  ...sample.job,
  ...changes,
  entries: [...entries],
});
const ranked = (
  entries: readonly JobEntry[],
  map: MapDocument = sample.map,
  options: RankOptions = {},
): Ranking => {
  const answer = rank(map, jobWith(entries), options);
  if (!answer.ok) throw new Error(answer.problem.code);
  return answer.value;
};
const effectOf = (ranking: Ranking, id: string): ReadingEffect =>
  ranking.readings.find(({ entryId }) => entryId === id) as ReadingEffect;
const total = ({ posterior }: Ranking): number =>
  posterior.stretches.reduce((sum, { probability }) => sum + probability, 0) +
  posterior.components.reduce((sum, { probability }) => sum + probability, 0) +
  posterior.noneOfThese;

describe('electrical readings in the ranking', () => {
  test('a drop from both ends places a short, and no sharper than 0.06 m allows', () => {
    const { posterior } = ranked([nearDrop, farDrop]);
    expect(Math.abs(posterior.medianStationMm - 1200)).toBeLessThan(80);
    expect(posterior.credible80Mm).toBeGreaterThan(2 * 1.28 * 50);
    expect(posterior.credible80Mm).toBeLessThan(ranked([]).posterior.credible80Mm / 3);
  });

  test('everything still adds up to one', () => {
    for (const entries of [[nearDrop], [nearDrop, farDrop], [ohms('entry:3', west, 70)]])
      expect(total(ranked(entries))).toBeCloseTo(1, 9);
  });

  test('a reading that could not have come out otherwise changes nothing and told nothing', () => {
    const empty = entry('entry:9', { test: 'volts', from: body, to: body, volts: 0 });
    const before = ranked([nearDrop, farDrop]);
    const after = ranked([nearDrop, farDrop, empty]);
    const worst = Math.max(
      ...after.posterior.cellProbability.map((p, i) =>
        Math.abs(p - (before.posterior.cellProbability[i] as number)),
      ),
    );
    expect(worst).toBeLessThan(1e-6);
    expect(effectOf(after, 'entry:9').bits).toBeLessThan(1e-6);
    expect(effectOf(after, 'entry:9').interval).toBe('everywhere');
  });

  test('the order of the record does not matter', () => {
    const entries = [nearDrop, farDrop, ohms('entry:3', west, 0.6), ohms('entry:4', far, 0.6)];
    const forward = ranked(entries).posterior.cellProbability;
    const backward = ranked([...entries].reverse()).posterior.cellProbability;
    forward.forEach((p, i) => {
      expect(p).toBeCloseTo(backward[i] as number, 9);
    });
  });

  test('the circuit traced from its other end puts the fault in the same runs', () => {
    const circuit: Circuit = {
      ...sample.circuit,
      path: [...sample.circuit.path].reverse().map((step) => ({ ...step, reversed: true })),
      ends: [sample.circuit.ends[1], sample.circuit.ends[0]],
    };
    const turned = { ...sample.map, circuits: new Map([[circuit.id, circuit]]) };
    const forward = ranked([nearDrop, farDrop]).posterior;
    const backward = ranked([nearDrop, farDrop], turned).posterior;
    expect(backward.medianStationMm).toBeCloseTo(1500 - forward.medianStationMm, 0);
    expect(Math.abs(backward.credible80Mm - forward.credible80Mm)).toBeLessThan(5);
  });

  test('a run cut in two on the map changes nothing', () => {
    const cut = splitSegment(sample.map, {
      segmentId: 'segment:rear',
      stationMm: 220,
      ids: { nodeId: 'node:cut', segmentId: 'segment:cut' },
    });
    if (!cut.ok) throw new Error(cut.problem.code);
    const after = applyPatch(sample.map, cut.value);
    if (!after.ok) throw new Error(after.problem.code);
    const circuit = after.value.circuits.get(sample.circuit.id) as Circuit;
    const laid = layStraight(after.value, circuit);
    if (!laid.ok) throw new Error(laid.problem.code);
    const job = jobWith([nearDrop, farDrop]);
    const whole = rankOnLine(sample.map, sample.line, sample.field, job).posterior;
    const parts = rankOnLine(after.value, laid.value, sample.field, job).posterior;
    whole.cellProbability.forEach((p, i) => {
      expect(parts.cellProbability[i] as number).toBeCloseTo(p, 6);
    });
  });

  test('a meter named in the record counts: one with four leads places what a hand meter cannot', () => {
    const meter = {
      name: 'Four leads',
      ohms: {
        percent: 0.2,
        counts: 2,
        finestStep: 0.001,
        lowestTop: 2,
        highest: 2000,
        fourWire: true,
        leadOhms: 0,
      },
    };
    // 0.5 ohm at 1.2 m.
    const pair = [ohms('entry:1', west, 0.567), ohms('entry:2', far, 0.516)];
    const fine = pair.map((each) => ({ ...each, meter }));
    const rough = ranked(pair).posterior;
    expect(rough.credible80Mm).toBeGreaterThan(0.8 * ranked([]).posterior.credible80Mm);
    expect(ranked(fine).posterior.credible80Mm).toBeLessThan(rough.credible80Mm / 2);
  });
});

describe('what each reading did', () => {
  test('a drop alone gives an interval around the place and is worth bits', () => {
    const { interval, bits, flat } = effectOf(ranked([nearDrop, farDrop]), 'entry:1');
    expect(flat).toBeNull();
    expect(bits).toBeGreaterThan(0.05);
    if (interval === 'everywhere') throw new Error('a drop places');
    expect(interval.some(({ fromMm, toMm }) => fromMm < 1200 && 1200 < toMm)).toBe(true);
  });

  test('ohms by a hand meter are flat: why, and that a drop would place it to 6 to 10 cm', () => {
    const effect = effectOf(ranked([ohms('entry:1', west, 70.1)]), 'entry:1');
    expect(effect.interval).toBe('everywhere');
    expect(effect.flat?.why).toBe('two-wire-ohms');
    expect(effect.flat?.better).toBe('drop');
    expect(effect.flat?.expectedSdMm).toBeGreaterThanOrEqual(60);
    expect(effect.flat?.expectedSdMm).toBeLessThan(100);
  });

  test('ohms flat by themselves that place together with the other end are not called useless', () => {
    const meter = {
      name: 'Fine',
      ohms: {
        percent: 0,
        counts: 1,
        finestStep: 0.001,
        lowestTop: 60,
        highest: 6e6,
        fourWire: true,
        leadOhms: 0,
      },
    };
    const pair = [ohms('entry:1', west, 0.567), ohms('entry:2', far, 0.516)];
    const both = ranked(pair.map((each) => ({ ...each, meter })));
    for (const id of ['entry:1', 'entry:2']) {
      expect(effectOf(both, id).flat).toBeNull();
      expect(effectOf(both, id).bits).toBeGreaterThan(0.1);
    }
  });

  test('a silent beep from end to end cannot place the break: capacitance would', () => {
    const silent = entry('entry:1', { test: 'beep', from: west, to: far, beeps: false });
    const answer = rank(sample.map, jobWith([silent], { failureType: 'circuit-open' }));
    if (!answer.ok) throw new Error(answer.problem.code);
    const { flat } = effectOf(answer.value, 'entry:1');
    expect(flat).toEqual({ why: 'inside-one-access', better: 'capacitance', expectedSdMm: 112.5 });
  });

  test.each([
    ['a lead off the circuit', ohms('entry:1', { on: 'wire', nodeId: 'node:gone' } as never, 1), null],
    [
      'ohms on a live wire',
      entry(
        'entry:1',
        { test: 'ohms', from: west, to: body, ohms: 4 },
        { ...bareState, ignitionOn: true, batteryConnected: true },
      ),
      'live-while-measured',
    ],
    [
      'a symptom with nothing apart',
      entry('entry:1', { test: 'symptom', stays: true }, { ...bareState, batteryConnected: true }),
      'nothing-apart',
    ],
    [
      'a function tried in one position',
      entry('entry:1', {
        test: 'function',
        works: false,
        stretches: [{ segmentId: 'segment:rear', fromMm: 0, toMm: 500 }],
      }),
      'one-position-only',
    ],
  ] as const)('%s is not used, says why, and leaves the answer alone', (_, reading, why) => {
    const after = ranked([reading]);
    expect([...after.posterior.cellProbability]).toEqual([...ranked([]).posterior.cellProbability]);
    if (why === null) {
      expect(after.warnings.map(({ code }) => code)).toContain('entry-ignored');
      return;
    }
    expect(effectOf(after, 'entry:1').unused).toBe(why);
    expect(after.warnings).toContainEqual({
      code: 'readings-unused',
      count: 1,
      readings: [{ entryId: 'entry:1', why }],
    });
  });

  test('a function that fails only in one position points to what was moved', () => {
    const stretches = [{ segmentId: 'segment:rear' as const, fromMm: 0, toMm: 500 }];
    const tries = [true, false].map((works, i) =>
      entry(`entry:${i + 1}`, { test: 'function', works, stretches }),
    );
    const rear = (ranking: Ranking) => ranking.posterior.stretches.at(-1)?.probability ?? 0;
    expect(rear(ranked(tries))).toBeGreaterThan(rear(ranked([])));
  });
});

describe('readings that cannot both hold', () => {
  test('5 ohm from one end and 500 from the other: unless the fault changed', () => {
    const { contradictions } = ranked([ohms('entry:1', west, 5), ohms('entry:2', far, 500)]);
    expect(contradictions).toEqual([{ entryIds: ['entry:1', 'entry:2'], unless: 'fault-changed' }]);
  });

  test('two drops that put it at two ends: two faults or a slip', () => {
    const wrong = entry('entry:2', {
      test: 'drop',
      driven: far,
      sensed: west,
      currentA: 0.1,
      millivolts: 6.7,
    });
    const { contradictions } = ranked([nearDrop, wrong]);
    expect(contradictions[0]?.entryIds).toEqual(['entry:1', 'entry:2']);
    expect(contradictions[0]?.unless).toBe('two-faults-or-slip');
  });

  test('the odd one out of three is in every pair named', () => {
    const odd = ohms('entry:3', west, 900);
    const { contradictions } = ranked([ohms('entry:1', west, 5), ohms('entry:2', far, 5), odd]);
    expect(contradictions.length).toBeGreaterThan(0);
    for (const { entryIds } of contradictions) expect(entryIds).toContain('entry:3');
  });

  test('a plug that clears one side and a drop that lies there', () => {
    const goes = entry(
      'entry:3',
      { test: 'symptom', stays: true },
      { ...bareState, ignitionOn: true, batteryConnected: true, apartNodeIds: ['node:middle'] },
    );
    const { contradictions } = ranked([nearDrop, farDrop, goes]);
    expect(contradictions).toEqual([
      { entryIds: ['entry:1', 'entry:2', 'entry:3'], unless: 'two-faults-or-slip' },
    ]);
  });

  test('readings that agree are not called torn', () => {
    expect(ranked([nearDrop, farDrop, ohms('entry:3', west, 0.6)]).contradictions).toEqual([]);
  });
});

describe('what readings say is remembered', () => {
  /** A cache that counts how often something had to be worked out. */
  const counting = (): ReadingsCache & { readonly worked: () => number } => {
    const cache = createReadingsCache();
    let worked = 0;
    return {
      worked: () => worked,
      kept: (map, edges, question, work) =>
        cache.kept(map, edges, question, () => {
          worked++;
          return work();
        }),
    };
  };
  const look: JobEntry = {
    id: 'entry:look',
    at,
    type: 'inspection',
    stretches: [{ segmentId: 'segment:front', fromMm: 0, toMm: 400 }],
    result: 'seen-sound',
    lookQuality: 0.9,
    note: '',
  };

  test('after a look nothing about the readings is worked out again, and the answer is the same', () => {
    const readingsCache = counting();
    ranked([nearDrop, farDrop], sample.map, { readingsCache });
    const before = readingsCache.worked();
    expect(before).toBeGreaterThan(0);
    const kept = ranked([nearDrop, farDrop, look], sample.map, { readingsCache });
    expect(readingsCache.worked()).toBe(before);
    expect(kept).toEqual(ranked([nearDrop, farDrop, look]));
  });

  test('another figure or another map is worked out anew', () => {
    const readingsCache = counting();
    ranked([nearDrop], sample.map, { readingsCache });
    const first = readingsCache.worked();
    const other = { ...nearDrop, reading: { ...nearDrop.reading, millivolts: 3 } } as ReadingEntry;
    expect(ranked([other], sample.map, { readingsCache })).toEqual(ranked([other]));
    const second = readingsCache.worked();
    expect(second).toBeGreaterThan(first);
    ranked([other], { ...sample.map }, { readingsCache });
    expect(readingsCache.worked()).toBeGreaterThan(second);
  });
});
