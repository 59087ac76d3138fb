import { describe, expect, test } from 'vitest';
import { canClose } from '#core/job/can-close.ts';
import { looksSound, soundCurrent } from '#core/job/looks-sound.ts';
import { proofChecklist } from '#core/job/proof-checklist.ts';
import type { Reading } from '#core/job/reading.ts';
import { shownAfterRepair } from '#core/job/shown-after-repair.ts';
import { soundExpectation } from '#core/job/sound-expectation.ts';
import { expectationSentence } from '#renderer/language/close.ts';
import { sample } from '#tests/sample.ts';
import { bare, ClosingRecord, toBody, wholeJob } from './closing-record.ts';

const { map, line } = sample;
const state = { ...bare, apartNodeIds: [...bare.apartNodeIds] };
const near = { on: 'wire', nodeId: 'node:west' } as const;
const far = { on: 'wire', nodeId: 'node:far' } as const;
const body = { on: 'body' } as const;

describe('a beep test comes back with what the circuit makes the buzzer do', () => {
  const beep = (to: typeof far | typeof body, beeps: boolean): Reading => ({
    test: 'beep',
    from: near,
    to,
    beeps,
  });

  test('end to end it beeps, and the wire’s own ohms are said: 1.5 m of 0.35 mm² and a plug', () => {
    const expected = soundExpectation(map, line, beep(far, false), state);
    // 54.4 milliohm a metre (ISO 6722-1 maximum, from memory) and 5 milliohm for the plug.
    expect(expected).toMatchObject({ what: 'beeps', rough: false });
    expect('ohms' in expected ? Number(expected.ohms) : 0).toBeCloseTo(1.5 * 0.0544 + 0.005, 4);
    expect(expectationSentence(expected)).toBe('beeps: the sound wire has about 0.087 Ω');
    expect(looksSound(expected, beep(far, true), null)).toBe(true);
    expect(looksSound(expected, beep(far, false), null)).toBe(false);
  });

  test('to the body it is silent, for the sound circuit is an open line', () => {
    const expected = soundExpectation(map, line, beep(body, true), state);
    expect(expectationSentence(expected)).toBe('silent: the sound circuit has an open line');
    expect(looksSound(expected, beep(body, true), null)).toBe(false);
  });

  test('a meter whose buzzer starts far below the wire’s ohms is silent on a sound wire', () => {
    const expected = soundExpectation(map, line, beep(far, true), state, { meter: { beepOhms: 0.01 } });
    expect(expected.what).toBe('silent');
    const close = soundExpectation(map, line, beep(far, true), state, { meter: { beepOhms: 0.087 } });
    expect(close.what).toBe('may-beep');
    expect(looksSound(close, beep(far, true), null)).toBeNull();
  });
});

describe('a drop test comes back with the current that still flows', () => {
  const drop: Reading = { test: 'drop', driven: near, sensed: far, currentA: 0.1, millivolts: 4 };

  test('with both ends apart none does, and any that does says the fault is there', () => {
    const expected = soundExpectation(map, line, drop, state);
    expect(expected).toEqual({ what: 'current', amps: 0, rough: false });
    expect(expectationSentence(expected)).toBe('no current: under 0.01 A, lamp dark');
    expect(soundCurrent(expected, 0)).toBe(true);
    expect(soundCurrent(expected, 0.02)).toBe(false);
    expect(looksSound(expected, drop, null)).toBe(false);
  });

  test('with the switch at the far end plugged in and closed, the wire lets 12 V through, and it is said how much', () => {
    const closed = { ...state, apartNodeIds: ['node:west' as const], switchClosed: true };
    const expected = soundExpectation(map, line, drop, closed);
    expect(expected).toMatchObject({ what: 'current' });
    // 12 V by 0.0866 ohm of wire and plug and the contact of the switch, which is at most an ohm.
    expect('amps' in expected ? expected.amps : 0).toBeGreaterThan(10);
  });
});

describe('a capacitance test comes back with the whole wire’s figure', () => {
  const at = (lead: typeof near | typeof far, picofarads: number) =>
    ({ test: 'capacitance', at: lead, picofarads }) as const;

  test('what both ends showed before comes to the whole wire, whatever it has a metre', () => {
    const record = new ClosingRecord();
    record.add('reading', { reading: at(near, 30), state, note: '' });
    record.add('reading', { reading: at(far, 90), state, note: '' });
    const [item] = proofChecklist(map, line, record.entries);
    const expected = item?.expected;
    if (expected?.what !== 'capacitance') throw new Error('a capacitance is expected');
    expect(expected.by).toBe('both-ends');
    expect((expected.fromPf + expected.toPf) / 2).toBeCloseTo(120, 6);
    expect(looksSound(expected, at(near, 121), null)).toBe(true);
    expect(looksSound(expected, at(near, 31), null)).toBe(false);
    expect(expectationSentence(expected)).toMatch(
      /^\d+ pF to \d+ pF: what both ends showed before, together$/,
    );
  });

  test('from one end only the usual bounds for 1.5 m are known, and no less than before will do', () => {
    const record = new ClosingRecord();
    record.add('reading', { reading: at(near, 45), state, note: '' });
    const [item] = proofChecklist(map, line, record.entries);
    const expected = item?.expected;
    if (expected?.what !== 'capacitance') throw new Error('a capacitance is expected');
    // 20 to 100 pF a metre, from memory.
    expect(expected).toMatchObject({ fromPf: 45, toPf: 150, by: 'usual-wire' });
    expect(looksSound(expected, at(near, 44), null)).toBe(false);
    expect(looksSound(expected, at(near, 90), null)).toBeNull();
  });

  test('with a part plugged in no figure is promised', () => {
    const plugged = { ...state, apartNodeIds: ['node:west' as const] };
    expect(soundExpectation(map, line, at(near, 45), plugged)).toEqual({ what: 'as-sound' });
  });
});

describe('a reading after the repair that still shows a fault', () => {
  const shown = (record: ClosingRecord) => shownAfterRepair(map, line, record.entries).map(({ id }) => id);

  test('keeps the job open and is named, until the same test comes back good', () => {
    const record = wholeJob();
    const bad = record.add('reading', { reading: toBody(2), state, note: '' });
    expect(shown(record)).toEqual([bad.id]);
    expect(canClose(map, line, record.entries, 'proved', '').hindrances).toContainEqual({
      code: 'shown-after-repair',
      entryIds: [bad.id],
    });
    record.add('reading', { reading: toBody('open-line'), state, note: '' });
    expect(shown(record)).toEqual([]);
  });

  test('is what the search goes on with, and is not held against the next repair before it is made', () => {
    const record = wholeJob();
    record.add('reading', { reading: toBody(2), state, note: '' });
    record.add('search-on', { note: '' });
    expect(shown(record)).toEqual([]);
  });

  test('is not looked for before there is a repair', () => {
    const record = new ClosingRecord();
    record.add('reading', { reading: toBody(2), state, note: '' });
    expect(shown(record)).toEqual([]);
  });
});
