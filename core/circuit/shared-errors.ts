import { type Chance, seededChance } from '../quantity/chance.ts';
import { normalQuantile } from './normal-tail.ts';
import { plugContactOhms } from './wire-ladder.ts';

/** What all readings of one circuit share and nobody knows exactly: one possible state of it. */
export interface SharedErrors {
  /** Wire ohms over the conductor table's maximum at the map's length. */
  readonly wireScale: number;
  /** Contact resistance of each plug, in the order of the ladder's `plugIds`. */
  readonly plugOhms: readonly number[];
  /** True over drawn length of each piece of the searched wire; empty where they are as drawn. */
  readonly pieceScales: readonly number[];
  /** Battery volts over the usual. */
  readonly supplyScale: number;
  readonly pullUpVoltsScale: number;
  readonly pullUpOhmsScale: number;
  /** Loads, sensors and idle pins over their usual ohms. */
  readonly loadScale: number;
  /** Tie of an unnamed neighbour wire over the usual. */
  readonly neighbourScale: number;
}

/** Spread of the logarithm of a plug's contact resistance about the usual (judgement). */
const plugSpread = 0.8;

/** Least share of the table's maximum that real wire has: solid copper of the nominal area, 0.35 mm2. */
const leastOfMaximum = 0.906;

/** The whole drawing's length over the true, one standard deviation (judgement). */
const lengthSpread = 0.01;

/** Spread when the ohms per metre were measured on the car. */
const measuredSpread = 0.01;

const supplySpread = 0.03;
const pullUpVoltsSpread = 0.04;
const pullUpOhmsSpread = 0.5;
const loadSpread = 0.7;
const neighbourSpread = 2.5;

/** What the shared errors do to a figure where they are not drawn: wire by this share, each plug by these ohms (judgement). */
export const undrawnErrors = { wireShare: 0.03, plugOhms: 0.004 } as const;

const primes = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53] as const;

/**
 * The middle of every shared error: what a single best guess would use.
 * @example
 * usualErrors(1, false).wireScale // => 0.953
 */
export function usualErrors(plugCount: number, wireMeasured: boolean): SharedErrors {
  return {
    wireScale: wireMeasured ? 1 : (leastOfMaximum + 1) / 2,
    plugOhms: Array.from({ length: plugCount }, () => plugContactOhms),
    pieceScales: [],
    supplyScale: 1,
    pullUpVoltsScale: 1,
    pullUpOhmsScale: 1,
    loadScale: 1,
    neighbourScale: 1,
  };
}

/**
 * Evenly spread draws of the shared errors (Halton's sequence with one random shift per dimension,
 * from memory); the lengths of pieces, too many for that, by chance in pairs off as much either way. The
 * same seed gives the same draws.
 * @example
 * drawSharedErrors(64, 1, false, 1).every((draw) => draw.wireScale > 0.8 && draw.wireScale < 1.1) // => true
 */
export function drawSharedErrors(
  count: number,
  plugCount: number,
  wireMeasured: boolean,
  seed: number,
  pieceSpread: ArrayLike<number> = [],
): readonly SharedErrors[] {
  const chance = seededChance(seed);
  const shifts = Array.from({ length: 7 + plugCount }, chance);
  const lengths = pairedBells(count, wireMeasured ? 0 : pieceSpread.length, chance);
  return Array.from({ length: count }, (_, draw) => {
    const even = (dimension: number): number => {
      const base = primes[dimension % primes.length] as number;
      const value = (halton(draw + 1, base) + (shifts[dimension] as number)) % 1;
      return Math.min(1 - 1e-9, Math.max(1e-9, value));
    };
    const bell = (dimension: number): number => normalQuantile(even(dimension));
    // Wire and plugs decide positions, so they get the lowest, evenest bases.
    const after = 1 + plugCount;
    return {
      wireScale: wireMeasured
        ? 1 + measuredSpread * bell(0)
        : (leastOfMaximum + (1 - leastOfMaximum) * even(0)) * (1 + lengthSpread * bell(after)),
      plugOhms: Array.from(
        { length: plugCount },
        (__, plug) => plugContactOhms * Math.exp(plugSpread * bell(1 + plug)),
      ),
      pieceScales: (lengths[draw] as readonly number[]).map(
        (bellOff, piece) => 1 + (pieceSpread[piece] as number) * bellOff,
      ),
      supplyScale: 1 + supplySpread * bell(after + 1),
      pullUpVoltsScale: 1 + pullUpVoltsSpread * bell(after + 2),
      pullUpOhmsScale: Math.exp(pullUpOhmsSpread * bell(after + 3)),
      loadScale: Math.exp(loadSpread * bell(after + 4)),
      neighbourScale: Math.exp(neighbourSpread * bell(after + 5)),
    };
  });
}

/** Rows of standard normal numbers; every second row is the one before with the other sign. */
function pairedBells(rows: number, length: number, chance: Chance): readonly (readonly number[])[] {
  let last: readonly number[] = [];
  return Array.from({ length: rows }, (_, row) => {
    last =
      row % 2 === 1
        ? last.map((value) => -value)
        : Array.from({ length }, () => normalQuantile(Math.min(1 - 1e-9, Math.max(1e-9, chance()))));
    return last;
  });
}

/** The index written in the base, mirrored behind the point. */
function halton(index: number, base: number): number {
  let value = 0;
  let share = 1 / base;
  for (let left = index; left > 0; left = Math.floor(left / base)) {
    value += (left % base) * share;
    share /= base;
  }
  return value;
}
