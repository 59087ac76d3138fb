import type { SaidLength } from './say-length.ts';

/** Prefixes in steps of a thousand; figures from 0.1 up stay without one. */
const steps = [
  { from: 1e6, by: 1e6, prefix: 'M' },
  { from: 1e3, by: 1e3, prefix: 'k' },
  { from: 0, by: 1, prefix: '' },
] as const;

/** Ohms as a meter would write them: 0.51 Ω, 4.7 kΩ, 1.2 MΩ. */
export function sayOhms(ohms: number): SaidLength {
  const step = steps.find(({ from }) => Math.abs(ohms) >= from) ?? steps[2];
  return { value: short(ohms / step.by), unit: `${step.prefix}Ω` };
}

/** Picofarad, from 10,000 up as nanofarad. */
export function sayPicofarads(picofarads: number): SaidLength {
  return Math.abs(picofarads) >= 1e4
    ? { value: short(picofarads / 1e3), unit: 'nF' }
    : { value: short(picofarads), unit: 'pF' };
}

export const sayVolts = (volts: number): SaidLength => ({ value: short(volts), unit: 'V' });
export const sayMillivolts = (millivolts: number): SaidLength => ({ value: short(millivolts), unit: 'mV' });
export const sayAmps = (amps: number): SaidLength => ({ value: short(amps), unit: 'A' });

/** A figure and its unit in one piece of text. */
export const figureText = ({ value, unit }: SaidLength): string => `${value} ${unit}`;

/** Up to five figures, nothing after them. */
const short = (value: number): string => String(Number(value.toPrecision(5)));
