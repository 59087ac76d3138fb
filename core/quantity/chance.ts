/** A source of numbers in [0, 1), always passed in so that the same seed gives the same answer. */
export type Chance = () => number;

/**
 * A small seeded generator (mulberry32, Tommy Ettinger, public domain) for tests, draws and new ids.
 * Not for secrets.
 * @example
 * seededChance(1)() // => 0.6270739405881613
 */
export function seededChance(seed: number): Chance {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
