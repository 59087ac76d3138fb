import type { PanelId } from '../quantity/id.ts';

/** One place to look at once it is open. */
export interface Look {
  readonly id: string;
  /** Panels that hide it; what those need off first follows from the panels themselves. */
  readonly panelIds: readonly PanelId[];
  /** Other ways in: with the panels of any one of these off, the place is open just as well. */
  readonly otherAccess?: readonly (readonly PanelId[])[];
  /** What can be seen of the place with fewer panels off. */
  readonly halfView?: HalfView;
  /** Chance that the fault is there, 0 to 1. */
  readonly probability: number;
  /** Chance that a fault there is noticed, 0 to 1. */
  readonly quality: number;
  readonly minutes: number;
  /** Not worth coming back to: what a look there may miss is too little. */
  readonly once?: boolean;
}

/** A look past a panel that stays on; it shows nothing the full look would not show as well. */
export interface HalfView {
  readonly panelIds: readonly PanelId[];
  /** Chance that a fault there is noticed this way, 0 to 1; below the full look's. */
  readonly quality: number;
  readonly minutes: number;
}

/** Fixed part of a look: bringing lamp, mirror and hand to the place (judgement). */
export const lookBaseMinutes = 0.5;

/** Going along the loom with eyes and fingers, turning it as far as it lets (judgement). */
export const lookMinutesPerMetre = 2;

/** Parting one plug and looking at its pins (judgement). */
export const plugLookMinutes = 1.5;

/** Chance that damage on an opened stretch is noticed (judgement). */
export const usualLookQuality = 0.9;

/** Chance that a bad pin is noticed by eye in a parted plug (judgement). */
export const plugLookQuality = 0.7;

/** A return that would find the fault less often than this is not planned (judgement: 1 in 500). */
export const leastReturn = 0.002;

/**
 * Minutes for looking along a stretch of loom.
 * @example
 * lookMinutes(750) // => 2
 */
export function lookMinutes(lengthMm: number): number {
  return lookBaseMinutes + (lookMinutesPerMetre * lengthMm) / 1000;
}
