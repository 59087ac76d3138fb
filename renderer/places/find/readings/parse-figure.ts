/** What a typed figure is a figure of; a plain number is taken in this unit. */
export type FigureUnit = 'ohm' | 'volt' | 'millivolt' | 'picofarad' | 'ampere';

/** Why a typed figure was not understood. */
export type FigureTrouble = 'empty' | 'not-a-figure' | 'two-marks' | 'other-unit';

export type ParsedFigure =
  | { readonly kind: 'figure'; readonly value: number }
  /** The letters most meters show for an open line were typed. */
  | { readonly kind: 'open-line' }
  | { readonly kind: 'trouble'; readonly trouble: FigureTrouble };

/** What each suffix does to a figure, by the unit asked for. Small m is milli, large M is mega. */
const suffixes: Readonly<Record<FigureUnit, { readonly unit: RegExp; readonly factors: Factors }>> = {
  ohm: {
    unit: /(?:Ω|Ω|ohms?|R)$/i,
    factors: { '': 1, m: 1e-3, k: 1e3, K: 1e3, M: 1e6, meg: 1e6, Meg: 1e6 },
  },
  volt: { unit: /V$/i, factors: { '': 1, m: 1e-3, µ: 1e-6, μ: 1e-6, u: 1e-6, k: 1e3 } },
  // A plain figure is in millivolts; with the letter V behind it, the prefix counts from volts.
  millivolt: { unit: /V$/i, factors: { '': 1e3, m: 1, µ: 1e-3, μ: 1e-3, u: 1e-3 } },
  // Likewise: with nothing behind it a figure is in picofarad, with the letter F alone it would be farad.
  picofarad: { unit: /F$/i, factors: { '': 1e12, p: 1, n: 1e3, µ: 1e6, μ: 1e6, u: 1e6 } },
  ampere: { unit: /A$/i, factors: { '': 1, m: 1e-3 } },
};
type Factors = Readonly<Record<string, number>>;

/**
 * A figure as a person types it from a meter: a point or a comma as decimal mark, spaces ignored, and a
 * suffix such as k, M, m or nF. `4k7` is read as 4.7 kilohm.
 */
export function parseFigure(text: string, unit: FigureUnit): ParsedFigure {
  const trouble = (what: FigureTrouble): ParsedFigure => ({ kind: 'trouble', trouble: what });
  const plain = text.replaceAll(/\s/g, '').replace('−', '-');
  if (plain === '') return trouble('empty');
  if (/^[0O]?\.?O?L\.?$|^O\.L\.?$/i.test(plain) && /L/i.test(plain)) return { kind: 'open-line' };
  const between = unit === 'ohm' ? /^(\d+)([kKmMR])(\d+)(?:Ω|Ω|ohms?)?$/.exec(plain) : null;
  if (between) {
    const [, whole, letter, rest] = between as unknown as [string, string, string, string];
    const factor = letter === 'R' ? 1 : factorOf(suffixes.ohm.factors, letter);
    return { kind: 'figure', value: Number(`${whole}.${rest}`) * (factor as number) };
  }
  const [, digits, suffix] = /^([+-]?[\d.,]*)(.*)$/.exec(plain) as unknown as [string, string, string];
  if ((digits.match(/[.,]/g) ?? []).length > 1) return trouble('two-marks');
  const number = digits.replace(',', '.');
  if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(number)) return trouble('not-a-figure');
  if ((unit === 'millivolt' || unit === 'picofarad') && suffix === '')
    return { kind: 'figure', value: Number(number) };
  const named = suffixes[unit];
  const factor = factorOf(named.factors, suffix.replace(named.unit, ''));
  return factor === undefined
    ? trouble('other-unit')
    : { kind: 'figure', value: round(Number(number) * factor) };
}

/** A kept figure as text that is read back as the same figure: plain digits, never a power of ten. */
export function plainFigure(value: number): string {
  const text = String(value);
  return text.includes('e') ? value.toFixed(18).replace(/\.?0+$/, '') : text;
}

const factorOf = (factors: Factors, prefix: string): number | undefined =>
  Object.hasOwn(factors, prefix) ? factors[prefix] : undefined;

/** Takes away what multiplying by a power of ten adds in the last place. */
const round = (value: number): number => Number(value.toPrecision(12));
