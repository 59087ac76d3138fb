import { describe, expect, test } from 'vitest';
import { seededChance } from '#core/quantity/chance.ts';
import { ways } from './read-fault.ts';
import { type Coverage, coverage } from './readings-coverage.ts';

/**
 * 1,000 invented faults, 200 for each way of going about it; each run of wire off its drawn length by
 * up to 5 percent either way. Half as many draws of the shared errors as in use, for time.
 */
const faultsEach = 200;
const options = { runLengthSpread: 0.05, draws: 32 };

const results = new Map<string, Coverage>();
const of = (way: string): Coverage => results.get(way) as Coverage;

describe('the region said to hold the fault with 80 percent', () => {
  test.each(ways)('%s: holds it about as often as said', { timeout: 300_000 }, (way) => {
    const result = coverage(way, faultsEach, seededChance(11), options);
    results.set(way, result);
    // 76 to 84 percent, and as much again either side for the scatter of 200 faults (2.8 percent, one
    // standard deviation).
    expect(result.held).toBeGreaterThan(0.72);
    expect(result.held).toBeLessThan(0.88);
  });

  test('over all 1,000 it holds the fault 76 to 84 percent of the time', () => {
    const held = ways.reduce((sum, way) => sum + of(way).held, 0) / ways.length;
    expect(held).toBeGreaterThanOrEqual(0.76);
    expect(held).toBeLessThanOrEqual(0.84);
  });

  test('a drop test narrows the wire to a tenth, a hand meter’s ohms leave most of it', () => {
    expect(of('drop from both ends').regionShare).toBeLessThan(0.1);
    expect(of('drop from one end').regionShare).toBeLessThan(0.12);
    expect(of('hand meter ohms').regionShare).toBeGreaterThan(0.5);
  });
});
