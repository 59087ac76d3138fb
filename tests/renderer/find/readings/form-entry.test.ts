import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jobEntrySchema } from '#core/job/job-document.ts';
import type { Probe, Reading } from '#core/job/reading.ts';
import { assert } from '#core/quantity/assert.ts';
import { mostDropCurrentA } from '#renderer/places/find/readings/form-cautions.ts';
import { entryOf, type FormTrouble } from '#renderer/places/find/readings/form-entry.ts';
import { plainFigure } from '#renderer/places/find/readings/parse-figure.ts';
import {
  firstForm,
  formOf,
  meterTests,
  type ReadingEntry,
  type ReadingForm,
  type ReadingTest,
  readingTests,
} from '#renderer/places/find/readings/reading-form.ts';
import { troubleSentences } from '#renderer/places/find/readings/trouble-sentences.ts';
import { sample } from '#tests/sample.ts';
import { demoJobs } from './demo-jobs.ts';

const { line, map } = sample;
const ground = { map, line, standing: [], meter: null, picked: null };
const at = '2026-01-05T10:00:00Z';

/** The least that makes an empty form of each kind a reading, and what is then kept. */
const filled: Readonly<Record<ReadingTest, readonly [Partial<ReadingForm>, Partial<Reading>]>> = {
  ohms: [{ figure: '0,51' }, { ohms: 0.51 }],
  beep: [{ yes: false }, { beeps: false }],
  volts: [{ figure: '206 mV' }, { volts: 0.206 }],
  drop: [{ figure: '8.66' }, { millivolts: 8.66, currentA: 0.1 }],
  capacitance: [{ figure: '0.24n' }, { picofarads: 240 }],
  symptom: [{ yes: true }, { stays: true }],
  move: [
    { changed: '3', pieces: [{ fromMm: 500, toMm: 1000 }] },
    { changed: 3, tried: 10 },
  ],
  function: [{ yes: true, note: 'Seat back', pieces: [{ fromMm: 500, toMm: 1000 }] }, { works: true }],
};

const entryFrom = (form: ReadingForm, on = line): ReadingEntry => {
  const answer = entryOf(form, on);
  assert(answer.ok, `a reading: ${JSON.stringify(answer)}`);
  return { id: 'entry:one', at, ...answer.entry };
};
const troublesOf = (form: ReadingForm): readonly FormTrouble[] => {
  const answer = entryOf(form, line);
  return answer.ok ? [] : answer.troubles;
};

describe('a reading of every kind', () => {
  for (const kind of readingTests) {
    const [typed, kept] = filled[kind];

    test(`${kind}: an empty form says what is missing, and one answer makes it a reading`, () => {
      const empty = firstForm(kind, ground);
      const troubles = troublesOf(empty);
      expect(troubles.length).toBeGreaterThan(0);
      for (const sentence of troubleSentences(troubles, empty)) expect(sentence).toMatch(/^[A-Z].+\.$/);
      const entry = entryFrom({ ...empty, ...typed });
      expect(entry.reading).toMatchObject({ test: kind, ...kept });
      expect(jobEntrySchema.safeParse(entry).error).toBeUndefined();
    });

    test(`${kind}: it says in what state the car was`, () => {
      const { state } = entryFrom({ ...firstForm(kind, ground), ...typed });
      const dead = kind === 'ohms' || kind === 'beep' || kind === 'capacitance' || kind === 'drop';
      expect(state.batteryConnected).toBe(!dead);
      expect(state.apartNodeIds).toEqual(
        dead ? ['node:west', 'node:far'] : kind === 'symptom' ? ['node:far'] : [],
      );
    });

    test(`${kind}: put right without a change it is the same reading`, () => {
      const entry = entryFrom({ ...firstForm(kind, ground), ...typed, note: ' Second try, seat back ' });
      expect(entry.note).toBe('Second try, seat back');
      expect(entryFrom(formOf(entry, line))).toEqual(entry);
    });
  }

  test('the next of its kind starts from the last: same leads, same car, no figure', () => {
    const entry = entryFrom({
      ...firstForm('ohms', ground),
      figure: '4.7',
      from: { on: 'wire', nodeId: 'node:far' },
      state: { apartNodeIds: ['node:far'], switchClosed: true, ignitionOn: false, batteryConnected: false },
    });
    const next = firstForm('ohms', { ...ground, standing: [entry] });
    expect(next).toMatchObject({ from: { nodeId: 'node:far' }, state: entry.state, figure: '' });
    expect(firstForm('beep', { ...ground, standing: [entry] }).state.switchClosed).toBeNull();
  });

  test('a picked stretch is what was moved', () => {
    const picked = { fromMm: 250, toMm: 700 };
    expect(firstForm('move', { ...ground, picked }).pieces).toEqual([picked]);
  });
});

describe('every reading of the sample jobs', () => {
  test('is kept whole when it is put right without a change', () => {
    let seen = 0;
    for (const { job, line: demoLine } of demoJobs()) {
      for (const entry of job.entries) {
        if (entry.type !== 'reading') continue;
        seen += 1;
        const again = entryFrom(formOf(entry, demoLine), demoLine);
        const flat = (reading: Reading) => ('stretches' in reading ? { ...reading, stretches: [] } : reading);
        expect(flat(again.reading)).toEqual(flat(entry.reading));
        expect(again).toMatchObject({ state: entry.state, note: entry.note });
        expect(again.meter).toEqual(entry.meter);
        if (!('stretches' in entry.reading) || !('stretches' in again.reading)) continue;
        for (const [i, stretch] of entry.reading.stretches.entries()) {
          expect(again.reading.stretches[i]?.segmentId).toBe(stretch.segmentId);
          expect(again.reading.stretches[i]?.fromMm).toBeCloseTo(stretch.fromMm, 2);
          expect(again.reading.stretches[i]?.toMm).toBeCloseTo(stretch.toMm, 2);
        }
      }
    }
    expect(seen).toBeGreaterThanOrEqual(15);
  });
});

const probe: fc.Arbitrary<Probe> = fc.constantFrom<Probe>(
  { on: 'wire', nodeId: 'node:west' },
  { on: 'wire', nodeId: 'node:middle', side: 'first-end' },
  { on: 'wire', nodeId: 'node:middle', side: 'second-end' },
  { on: 'wire', nodeId: 'node:far' },
  { on: 'wire', nodeId: 'node:far', circuitId: 'circuit:other' },
  { on: 'body' },
  { on: 'battery-positive' },
);
const stations = fc.tuple(fc.integer({ min: 0, max: 14 }), fc.integer({ min: 1, max: 15 })).map(([a, b]) => ({
  fromMm: Math.min(a, b - 1) * 100,
  toMm: Math.max(a + 1, b) * 100,
}));
const anyForm: fc.Arbitrary<ReadingForm> = fc
  .record({
    test: fc.constantFrom(...readingTests),
    leads: fc.uniqueArray(probe, { minLength: 2, maxLength: 2, selector: (each) => JSON.stringify(each) }),
    figure: fc.double({ min: 1e-9, max: 59, noNaN: true }),
    instead: fc.constantFrom<ReadingForm['instead']>(null, 'open-line', 'over-range'),
    current: fc.double({ min: 1e-6, max: 0.5, noNaN: true }),
    yes: fc.boolean(),
    tried: fc.integer({ min: 1, max: 9_999 }),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
    piece: stations,
    apart: fc.subarray(['node:west', 'node:middle', 'node:far'] as const, { minLength: 1 }),
    switchClosed: fc.constantFrom(null, true, false),
    ignitionOn: fc.boolean(),
    batteryConnected: fc.boolean(),
    note: fc.string({ maxLength: 30 }),
    own: fc.boolean(),
  })
  .map((drawn) => ({
    test: drawn.test,
    from: drawn.leads[0] as Probe,
    to: drawn.leads[1] as Probe,
    figure: drawn.test === 'ohms' && drawn.instead ? '' : plainFigure(Number(drawn.figure.toPrecision(9))),
    instead: drawn.test === 'ohms' ? drawn.instead : null,
    current: plainFigure(Number(drawn.current.toPrecision(9))),
    yes: drawn.yes,
    changed: String(Math.floor(drawn.share * drawn.tried)),
    tried: String(drawn.tried),
    pieces: [drawn.piece],
    elsewhere: [],
    state: {
      apartNodeIds: [...drawn.apart],
      switchClosed: drawn.switchClosed,
      ignitionOn: drawn.ignitionOn,
      batteryConnected: drawn.batteryConnected,
    },
    meter: meterTests.has(drawn.test) && drawn.own ? { name: 'Bench', beepOhms: 30 } : null,
    note: drawn.note.trim(),
  }));

describe('whatever is written down', () => {
  test('is what the job’s record takes, and comes back into the form as it was', () => {
    fc.assert(
      fc.property(anyForm, (form) => {
        const entry = entryFrom(form);
        expect(jobEntrySchema.safeParse(entry).error).toBeUndefined();
        const again = formOf(entry, line);
        expect(entryFrom(again)).toEqual(entry);
        expect(again).toMatchObject({ state: form.state, note: form.note, meter: form.meter });
      }),
      { seed: 5, numRuns: 1_500 },
    );
  });

  test('on a run the circuit does not take, what was moved is kept beside what it does take', () => {
    const entry: ReadingEntry = {
      id: 'entry:one',
      at,
      type: 'reading',
      reading: {
        test: 'move',
        stretches: [
          { segmentId: 'segment:front', fromMm: 100, toMm: 300 },
          { segmentId: 'segment:roof', fromMm: 5, toMm: 80 },
        ],
        changed: 0,
        tried: 5,
      },
      state: { apartNodeIds: [], switchClosed: null, ignitionOn: true, batteryConnected: true },
      note: '',
    };
    expect(entryFrom(formOf(entry, line))).toEqual(entry);
  });
});

describe('what cannot be a reading', () => {
  const why = (kind: ReadingTest, changes: Partial<ReadingForm>): readonly string[] =>
    troublesOf({ ...firstForm(kind, ground), ...filled[kind][0], ...changes }).map(
      (trouble) => `${trouble.at} ${trouble.why}`,
    );

  test('a figure that is none, has a foreign unit, is below zero or beyond belief', () => {
    expect(why('ohms', { figure: '' })).toEqual(['figure empty']);
    expect(why('ohms', { figure: 'abc' })).toEqual(['figure not-a-figure']);
    expect(why('ohms', { figure: '5 V' })).toEqual(['figure other-unit']);
    expect(why('ohms', { figure: '-3' })).toEqual(['figure negative']);
    expect(why('ohms', { figure: '99999999999' })).toEqual(['figure too-high']);
    expect(why('capacitance', { figure: '-1' })).toEqual(['figure negative']);
    expect(why('capacitance', { figure: '5 F' })).toEqual(['figure too-high']);
    expect(why('drop', { figure: '99999' })).toEqual(['figure too-high']);
    for (const kind of ['volts', 'drop', 'capacitance'] as const)
      expect(why(kind, { figure: 'OL' })).toEqual(['figure no-figure-here']);
  });

  test('volts of high voltage are not taken, and the sentence says to stop', () => {
    const form = { ...firstForm('volts', ground), figure: '400' };
    expect(troubleSentences(troublesOf(form), form)[0]).toContain('stop');
    expect(why('volts', { figure: '60.1' })).toEqual(['figure too-high']);
    expect(why('volts', { figure: '-60.1' })).toEqual(['figure too-high']);
    expect(why('volts', { figure: '28.8' })).toEqual([]);
    expect(why('volts', { figure: '-0.4' })).toEqual([]);
  });

  test('no current, no figure of it, or more than the wire bears', () => {
    for (const current of ['0', '-0.1']) expect(why('drop', { current })).toEqual(['current zero']);
    expect(why('drop', { current: '' })).toEqual(['current empty']);
    expect(why('drop', { current: 'OL' })).toEqual(['current no-figure-here']);
    expect(why('drop', { current: '100 mV' })).toEqual(['current other-unit']);
    expect(why('drop', { current: '0.51' })).toEqual(['current too-much']);
    expect(why('drop', { current: '500mA' })).toEqual([]);
    expect(why('drop', { current: '', figure: '' })).toEqual(['current empty', 'figure empty']);
  });

  test('a fused feed takes no more than fuse, wire and any lamp, so that the record takes it too', () => {
    const feed = (fuseA: number | null, conductorMm2: number): number =>
      mostDropCurrentA({
        ...sample.circuit,
        fuseA,
        conductorMm2,
        ends: [{ nodeId: 'node:west', kind: 'fused-supply' }, sample.circuit.ends[1]],
      });
    expect(feed(15, 1)).toBe(12);
    expect(feed(5, 1)).toBe(5);
    expect(feed(40, 6)).toBe(20);
    expect(feed(null, 6)).toBe(20);
    expect(mostDropCurrentA(sample.circuit)).toBe(0.5);
  });

  test('both leads in one place, no plug apart, no place moved, counts that cannot be', () => {
    const west: Probe = { on: 'wire', nodeId: 'node:west' };
    for (const kind of ['ohms', 'beep', 'volts', 'drop'] as const)
      expect(why(kind, { from: west, to: west })).toEqual(['leads same-place']);
    const { state } = firstForm('symptom', ground);
    expect(why('symptom', { state: { ...state, apartNodeIds: [] } })).toEqual(['apart none']);
    for (const kind of ['move', 'function'] as const)
      expect(why(kind, { pieces: [] })).toEqual(['place none']);
    expect(why('move', { changed: '', tried: '10' })).toEqual(['counts not-whole']);
    expect(why('move', { changed: '1.5' })).toEqual(['counts not-whole']);
    expect(why('move', { changed: '-1' })).toEqual(['counts not-whole']);
    expect(why('move', { changed: '0', tried: '0' })).toEqual(['counts none-tried']);
    expect(why('move', { changed: '11', tried: '10' })).toEqual(['counts more-than-tried']);
    for (const kind of ['beep', 'symptom', 'function'] as const)
      expect(why(kind, { yes: null })).toEqual(['yes not-said']);
  });

  test('every trouble has its sentence, each said once', () => {
    const form = firstForm('drop', ground);
    const said = troubleSentences(
      [
        { at: 'current', why: 'empty' },
        { at: 'current', why: 'empty' },
        { at: 'current', why: 'too-much', mostA: 0.5 },
        { at: 'figure', why: 'other-unit' },
      ],
      form,
    );
    expect(said).toHaveLength(3);
    expect(said[1]).toContain('0.5 A');
    expect(said[2]).toContain('mV, V, µV');
  });
});

describe('the meter', () => {
  test('goes with a figure or a beep and with nothing else', () => {
    const own = { name: 'Bench', beepOhms: 30 };
    for (const kind of readingTests) {
      const form = firstForm(kind, { ...ground, meter: own });
      expect(form.meter, kind).toEqual(meterTests.has(kind) ? own : null);
    }
    expect(entryFrom({ ...firstForm('beep', ground), yes: true })).not.toHaveProperty('meter');
  });
});
