import { seededChance } from '#core/quantity/chance.ts';
import { type Draw, drawFrom } from '#tests/generated/draw.ts';

/** One reader under test: makes a case by drawing, reads it, and says how that came out. */
export interface FuzzTarget {
  readonly name: string;
  /** How many of every hundred cases are this reader's. */
  readonly share: number;
  /** The code of the problem it was refused with, or `taken`; throws when anything is not as promised. */
  readonly read: (draw: Draw) => string;
}

/** What a run showed. */
export interface FuzzReport {
  readonly cases: number;
  /** By reader, how often each outcome came. */
  readonly outcomes: ReadonlyMap<string, ReadonlyMap<string, number>>;
  readonly slowest: { readonly name: string; readonly seed: number; readonly cpuMs: number };
  /** The most memory seen, in megabytes. */
  readonly heldMb: number;
}

/** Most memory the whole run may hold. */
const mostHeldMb = 1_500;

/**
 * Runs so many cases, each from a seed of its own, so that the one that fails can be run again alone. Throws
 * at the first that crashes, keeps the processor too long, holds too much memory or changes what every
 * object inherits.
 */
export function fuzz(
  targets: readonly FuzzTarget[],
  cases: number,
  seed: number,
  /** Longest a single case may keep the processor: not the clock, which runs on while others work. */
  mostCpuMs = 1_000,
): FuzzReport {
  const outcomes = new Map(targets.map(({ name }) => [name, new Map<string, number>()]));
  const line = targets.flatMap((target) => Array<FuzzTarget>(target.share).fill(target));
  const inherited = Object.getOwnPropertyNames(Object.prototype).length;
  let slowest = { name: '', seed: 0, cpuMs: 0 };
  let heldMb = 0;
  for (let index = 0; index < cases; index++) {
    const target = line[index % line.length] as FuzzTarget;
    const own = (seed * 1_000_003 + index) >>> 0;
    const where = `${target.name}, seed ${own}`;
    const before = process.cpuUsage();
    let outcome: string;
    try {
      outcome = target.read(drawFrom(seededChance(own)));
    } catch (error) {
      throw new Error(`${where}: ${error instanceof Error ? error.stack : String(error)}`);
    }
    const { user, system } = process.cpuUsage(before);
    const cpuMs = (user + system) / 1_000;
    if (cpuMs > slowest.cpuMs) slowest = { name: target.name, seed: own, cpuMs };
    if (cpuMs > mostCpuMs) throw new Error(`${where}: kept the processor for ${cpuMs.toFixed(0)} ms`);
    if (Object.getOwnPropertyNames(Object.prototype).length !== inherited) {
      throw new Error(`${where}: changed what every object inherits`);
    }
    if (index % 200 === 0) heldMb = Math.max(heldMb, process.memoryUsage().rss / 1e6);
    if (heldMb > mostHeldMb) throw new Error(`${where}: ${heldMb.toFixed(0)} MB are held`);
    const counted = outcomes.get(target.name);
    counted?.set(outcome, (counted.get(outcome) ?? 0) + 1);
  }
  return { cases, outcomes, slowest, heldMb };
}
