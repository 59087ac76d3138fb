import { type AccentRamp, accentStep } from '../../theme/tokens.ts';

/** Tone of a likelihood, from its share of the largest one on screen: the first of its three signs. */
export function levelTone(ramp: AccentRamp, level: number): string {
  return ramp[accentStep(level)] as string;
}

/** Stroke width of a likelihood: the second sign. It rises with the tone. */
export function levelWidthPx(level: number): number {
  return 3 + accentStep(level) * 1.6;
}
