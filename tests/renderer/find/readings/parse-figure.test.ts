import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type FigureUnit, parseFigure, plainFigure } from '#renderer/places/find/readings/parse-figure.ts';

/** What stands behind a figure and how many of the kept unit it is, written down anew. */
const behind: Readonly<Record<FigureUnit, readonly (readonly [suffix: string, powerOfTen: number])[]>> = {
  ohm: [
    ['', 0],
    ['Ω', 0],
    ['ohm', 0],
    ['R', 0],
    ['m', -3],
    ['mΩ', -3],
    ['k', 3],
    ['K', 3],
    ['kΩ', 3],
    ['kohm', 3],
    ['M', 6],
    ['MΩ', 6],
  ],
  volt: [
    ['', 0],
    ['V', 0],
    ['v', 0],
    ['mV', -3],
    ['µV', -6],
    ['uV', -6],
  ],
  millivolt: [
    ['', 0],
    ['mV', 0],
    ['V', 3],
    ['µV', -3],
    ['uV', -3],
  ],
  picofarad: [
    ['', 0],
    ['pF', 0],
    ['p', 0],
    ['nF', 3],
    ['n', 3],
    ['µF', 6],
    ['uF', 6],
  ],
  ampere: [
    ['', 0],
    ['A', 0],
    ['a', 0],
    ['mA', -3],
    ['m', -3],
  ],
};
const units = Object.keys(behind) as FigureUnit[];

const typed = fc.constantFrom(...units).chain((unit) =>
  fc.record({
    unit: fc.constant(unit),
    suffix: fc.constantFrom(...behind[unit]),
    digits: fc.integer({ min: 0, max: 999_999 }),
    places: fc.integer({ min: 0, max: 5 }),
    mark: fc.constantFrom('.', ','),
    space: fc.constantFrom('', ' ', '\u00a0'),
    minus: fc.constantFrom('', '-', '−'),
  }),
);

describe('a figure as typed', () => {
  test('in any unit it is kept in the base unit and shown back equal', () => {
    fc.assert(
      fc.property(typed, ({ unit, suffix: [suffix, power], digits, places, mark, space, minus }) => {
        const text = `${minus}${(digits / 10 ** places).toFixed(places).replace('.', mark)}${space}${suffix}`;
        const parsed = parseFigure(text, unit);
        if (parsed.kind !== 'figure') throw new Error(`${text} was not understood`);
        const meant = (minus === '' ? 1 : -1) * (digits / 10 ** places) * 10 ** power;
        expect(Math.abs(parsed.value - meant)).toBeLessThanOrEqual(1e-11 * Math.abs(meant));
        const back = parseFigure(plainFigure(parsed.value), unit);
        expect(back).toEqual({ kind: 'figure', value: parsed.value + 0 });
      }),
      { seed: 20261125, numRuns: 3_000 },
    );
  });

  test('a letter between the digits is the point: 4k7 is 4,700 ohm, 0R47 is 0.47 ohm', () => {
    expect(parseFigure('4k7', 'ohm')).toEqual({ kind: 'figure', value: 4_700 });
    expect(parseFigure('0R47', 'ohm')).toEqual({ kind: 'figure', value: 0.47 });
    expect(parseFigure('1M2', 'ohm')).toEqual({ kind: 'figure', value: 1_200_000 });
    expect(parseFigure('4k7', 'volt')).toEqual({ kind: 'trouble', trouble: 'other-unit' });
  });

  test('what a meter shows for an open line is understood as one', () => {
    for (const text of ['OL', 'O.L', 'ol', '0L', '.OL', '0.L', 'O.L.', 'OL.']) {
      expect(parseFigure(text, 'ohm'), text).toEqual({ kind: 'open-line' });
    }
  });

  test('what is no figure says why', () => {
    const troubleOf = (text: string, unit: FigureUnit = 'ohm') => {
      const parsed = parseFigure(text, unit);
      return parsed.kind === 'trouble' ? parsed.trouble : parsed;
    };
    for (const text of ['', ' ', '\t']) expect(troubleOf(text)).toBe('empty');
    for (const text of ['abc', '-', '.', 'k', '--3', '+ -2'])
      expect(troubleOf(text), text).toBe('not-a-figure');
    for (const text of ['1,000.5', '1.2.3', '1,000,000']) expect(troubleOf(text), text).toBe('two-marks');
    for (const text of ['5V', '5 mA', '1e5', '3 apples', '4 kk'])
      expect(troubleOf(text), text).toBe('other-unit');
    expect(troubleOf('5 Ω', 'volt')).toBe('other-unit');
    expect(troubleOf('2 M', 'millivolt')).toBe('other-unit');
    expect(troubleOf('5 V', 'ampere')).toBe('other-unit');
    expect(troubleOf('5 pV', 'picofarad')).toBe('other-unit');
  });

  test('a letter F alone is farad and never taken for picofarad', () => {
    expect(parseFigure('5 F', 'picofarad')).toEqual({ kind: 'figure', value: 5e12 });
  });

  test('a very small or large figure is written without a power of ten', () => {
    expect(plainFigure(1e-7)).toBe('0.0000001');
    expect(plainFigure(4.7e-9)).toBe('0.0000000047');
    expect(plainFigure(2.5e8)).toBe('250000000');
    expect(plainFigure(-0.51)).toBe('-0.51');
  });
});
