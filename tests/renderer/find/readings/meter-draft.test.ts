import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fourWireMeter, handMeter } from '#core/circuit/default-meter-table.ts';
import { type MeterRecord, meterOf, meterSchema } from '#core/job/meter-record.ts';
import { assert } from '#core/quantity/assert.ts';
import {
  type MeterDraft,
  type MeterFigure,
  meterDraft,
  meterFigures,
  meterOfDraft,
} from '#renderer/places/find/readings/meter-draft.ts';
import { plainFigure } from '#renderer/places/find/readings/parse-figure.ts';
import { meterTroubleSentence } from '#renderer/places/find/readings/trouble-sentences.ts';

const named = (changes: Partial<MeterDraft> = {}): MeterDraft => ({
  ...meterDraft(null),
  name: 'Bench',
  ...changes,
});
const withFigure = (key: MeterFigure, text: string): MeterDraft =>
  named({ figures: { ...meterDraft(null).figures, [key]: text } });
const kept = (draft: MeterDraft, before: MeterRecord | null = null): MeterRecord => {
  const answer = meterOfDraft(draft, before, []);
  assert(answer.ok, `a meter: ${JSON.stringify(answer)}`);
  return answer.meter;
};
const why = (draft: MeterDraft, otherNames: readonly string[] = []): readonly string[] => {
  const answer = meterOfDraft(draft, null, otherNames);
  return answer.ok ? [] : answer.troubles.map((trouble) => `${trouble.at} ${trouble.why}`);
};

describe('a meter of one’s own', () => {
  test('starts as an ordinary hand meter and needs a name', () => {
    expect(why(meterDraft(null))).toEqual(['name missing']);
    expect(why(named({ name: '   ' }))).toEqual(['name missing']);
    expect(meterOf(kept(named()))).toMatchObject({
      name: 'Bench',
      ohms: { finestStep: handMeter.ohms.finestStep, percent: handMeter.ohms.percent },
      beepOhms: null,
    });
  });

  test('may not take the name of another, own or usual', () => {
    expect(why(named({ name: ' Shop ' }), ['Shop'])).toEqual(['name taken']);
    expect(why(named({ name: handMeter.name }))).toEqual(['name taken']);
    expect(why(named({ name: 'Shop' }), ['Bench'])).toEqual([]);
  });

  test('every figure is told of when it is none or out of bounds, and what was typed stays', () => {
    for (const key of Object.keys(meterFigures) as MeterFigure[]) {
      for (const text of ['abc', '5 V', '1e2', '1,000.5'])
        expect(why(withFigure(key, text)), key).toEqual([`${key} not-a-figure`]);
      expect(why(withFigure(key, '-1')), key).toEqual([`${key} out-of-bounds`]);
      expect(why(withFigure(key, '9999999')), key).toEqual([`${key} out-of-bounds`]);
      expect(why(withFigure(key, ' 2,5 ')), key).toEqual([]);
      if (key !== 'beepOhms') expect(why(withFigure(key, '')), key).toEqual([`${key} not-a-figure`]);
    }
    expect(kept(withFigure('beepOhms', '')).beepOhms).toBeNull();
    expect(meterTroubleSentence({ at: 'beepOhms', why: 'out-of-bounds' })).toContain('0.1');
  });

  test('with four leads the leads add nothing, whatever was typed for them', () => {
    const draft = { ...withFigure('leadOhms', 'abc'), fourWire: true };
    expect(meterOf(kept(draft)).ohms).toMatchObject({ fourWire: true, leadOhms: 0 });
  });

  test('written down and opened again it is the same meter', () => {
    const text = (key: MeterFigure) => {
      const { least, most } = meterFigures[key];
      return fc
        .double({ min: least, max: most, noNaN: true })
        .map((figure) => plainFigure(Math.max(least, Number(figure.toPrecision(6)))));
    };
    const draft = fc.record({
      name: fc.stringMatching(/^[A-Z][a-z]{1,8}$/),
      figures: fc.record({
        ohmsStep: text('ohmsStep'),
        ohmsPercent: text('ohmsPercent'),
        ohmsCounts: text('ohmsCounts'),
        millivoltStep: text('millivoltStep'),
        millivoltPercent: text('millivoltPercent'),
        millivoltCounts: text('millivoltCounts'),
        leadOhms: text('leadOhms'),
        beepOhms: fc.oneof(fc.constant(''), text('beepOhms')),
      }),
      fourWire: fc.boolean(),
      capacitance: fc.boolean(),
    });
    fc.assert(
      fc.property(draft, (typed) => {
        const meter = kept(typed);
        expect(meterSchema.safeParse(meter).error).toBeUndefined();
        expect(meter.ohms?.lowestTop).toBeLessThanOrEqual(meter.ohms?.highest ?? 0);
        expect(meter.millivolts?.lowestTop).toBeLessThanOrEqual(meter.millivolts?.highest ?? 0);
        expect(kept(meterDraft(meter), meter)).toEqual(meter);
      }),
      { seed: 11, numRuns: 500 },
    );
  });

  test('what its owner is not asked for is as it was', () => {
    const before: MeterRecord = {
      ...fourWireMeter,
      name: 'Bench',
      ohms: { ...fourWireMeter.ohms, leadSpreadOhms: 0.01 },
      volts: { percent: 0.1, counts: 1, finestStep: 0.01, lowestTop: 60, highest: 600 },
    };
    const after = kept({ ...meterDraft(before), name: 'Bench 2' }, before);
    expect(after).toEqual({ ...before, name: 'Bench 2' });
  });
});
