import type { Chance } from '#core/quantity/chance.ts';

/** Seeded draws of the plain kinds a random map or edit is made of. */
export interface Draw {
  readonly chance: Chance;
  /** A number in [from, to), to a hundredth of a millimetre. */
  readonly between: (from: number, to: number) => number;
  /** A whole number from `from` to `to`, both included. */
  readonly whole: (from: number, to: number) => number;
  readonly happens: (probability: number) => boolean;
  readonly pick: <T>(from: readonly T[]) => T;
}

export function drawFrom(chance: Chance): Draw {
  const whole = (from: number, to: number): number => from + Math.floor(chance() * (to - from + 1));
  return {
    chance,
    between: (from, to) => Math.round((from + chance() * (to - from)) * 100) / 100 + 0,
    whole,
    happens: (probability) => chance() < probability,
    pick: (from) => {
      if (from.length === 0) throw new Error('nothing to pick from');
      return from[whole(0, from.length - 1)] as (typeof from)[number];
    },
  };
}
