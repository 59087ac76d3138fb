import { describe, expect, test } from 'vitest';
import { componentAt, type Evidence, layHypotheses, noneAt } from '#core/locate/hypotheses.ts';
import { faultFound, otherDamage, soundLook } from '#core/locate/look-evidence.ts';
import { logMoved, moveChance, moveEvidence } from '#core/locate/move-evidence.ts';
import { sharedRunsEvidence } from '#core/locate/shared-runs-evidence.ts';
import { unplugEvidence } from '#core/locate/unplug-evidence.ts';
import { weighEvidence } from '#core/locate/weigh-evidence.ts';
import type { FaultClass } from '#core/map/kinds.ts';
import { pulledAt, zone, zonePosterior, zones } from './small-line.ts';

const rounded = (values: readonly number[]) => values.map((value) => Number(value.toFixed(3)));

describe('looks', () => {
  test('one clean look of quality 0.8 at a place of chance 0.4 leaves 0.1176 there', () => {
    const [there] = zonePosterior([0.4, 0.6], [soundLook([zone(1)], 0.8)]);
    expect(there).toBeCloseTo((0.4 * 0.2) / (1 - 0.4 * 0.8), 12);
    expect(there).toBeCloseTo(0.1176, 4);
  });

  test('the ground not looked at rises in proportion', () => {
    const [, second = 0, third = 0] = zonePosterior([0.4, 0.4, 0.2], [soundLook([zone(1)], 0.8)]);
    expect(second / third).toBeCloseTo(2, 12);
    expect(second).toBeGreaterThan(0.4);
  });

  test('a look described twice in one entry counts once', () => {
    const once = zonePosterior([0.4, 0.6], [soundLook([zone(1)], 0.8)]);
    const twice = zonePosterior([0.4, 0.6], [soundLook([zone(1), zone(1)], 0.8)]);
    expect(twice).toEqual(once);
  });

  test('half a zone seen clears half of what a whole look clears', () => {
    const [there] = zonePosterior([0.4, 0.6], [soundLook([{ fromMm: 0, toMm: 500 }], 0.8)]);
    expect(there).toBeCloseTo((0.4 * 0.6) / (0.4 * 0.6 + 0.6), 12);
  });

  test('even a perfect look leaves a trace, so that a contradiction can still be seen', () => {
    const [there = 0] = zonePosterior([0.4, 0.6], [soundLook([zone(1)], 1)]);
    expect(there).toBeGreaterThan(0);
    expect(there).toBeLessThan(0.001);
  });

  test('damage that is not the cause clears its stretch and raises the ground next to it a little', () => {
    const sound = zonePosterior([0.25, 0.25, 0.25, 0.25], [soundLook([zone(2)], 0.9)]);
    const damaged = zonePosterior([0.25, 0.25, 0.25, 0.25], [otherDamage([zone(2)], 0.9)]);
    const [near, own, , far] = [0, 1, 2, 3].map((i) => (damaged[i] as number) / (sound[i] as number));
    expect(own).toBeLessThanOrEqual(1);
    expect(near).toBeGreaterThan(far as number);
    expect((near as number) / (far as number)).toBeLessThan(1.5);
  });

  test('a proved cause holds all of the chance; two of them share it', () => {
    expect(zonePosterior([0.3, 0.3, 0.4], [faultFound([zone(2)])])).toEqual([0, 1, 0]);
    const both = zonePosterior([0.3, 0.3, 0.4], [faultFound([zone(1), zone(2)])]);
    expect(rounded(both)).toEqual([0.5, 0.5, 0]);
  });

  test('evidence that leaves nothing possible gives the prior back rather than nonsense', () => {
    const never = () => new Float64Array(zones(2).size).fill(Number.NEGATIVE_INFINITY);
    expect(rounded(zonePosterior([0.4, 0.6], [never]))).toEqual([0.4, 0.6]);
  });
});

describe('move tests', () => {
  test('a change on moving zone 1: worked example of six zones, [.849 .094 .019 .014 .014 .009]', () => {
    // Zones this long lie farther than the reach of a moved place, so the neighbour is given its own part.
    const prior = [0.3, 0.1, 0.2, 0.15, 0.15, 0.1];
    const chances = [moveChance.there, moveChance.beside, ...Array(4).fill(moveChance.elsewhere)];
    const joint = prior.map((p, i) => p * Math.exp(logMoved(1, 1, chances[i] as number)));
    const sum = joint.reduce((a, b) => a + b, 0);
    expect(rounded(joint.map((each) => each / sum))).toEqual([0.849, 0.094, 0.019, 0.014, 0.014, 0.009]);
    const still = prior.map((p, i) => p * Math.exp(logMoved(0, 1, chances[i] as number)));
    const stillSum = still.reduce((a, b) => a + b, 0);
    expect(rounded(still.map((each) => each / stillSum))).toEqual([0.152, 0.102, 0.249, 0.187, 0.187, 0.124]);
  });

  test('more changes out of the same tries never lower the moved place', () => {
    let before = 0;
    for (let changed = 0; changed <= 10; changed++) {
      const [there = 0] = zonePosterior([0.2, 0.2, 0.6], [moveEvidence([zone(1)], changed, 10)]);
      expect(there).toBeGreaterThanOrEqual(before);
      before = there;
    }
  });

  test('ten tries at one place weigh less than ten separate tests', () => {
    const together = logMoved(10, 10, 0.6) - logMoved(10, 10, 0.02);
    const apart = 10 * (Math.log(0.6) - Math.log(0.02));
    expect(together).toBeLessThan(apart / 2);
    expect(together).toBeGreaterThan(Math.log(0.6) - Math.log(0.02));
  });

  test('no change is only weak evidence against the place', () => {
    const [there = 0] = zonePosterior([0.5, 0.5], [moveEvidence([zone(1)], 0, 1)]);
    expect(there).toBeCloseTo((0.5 * 0.4) / (0.5 * 0.4 + 0.5 * 0.98), 2);
  });
});

describe('other circuits', () => {
  const beside = (...numbers: number[]) => ({
    ranges: numbers.map((number) => ({ ...zone(number), circuits: 1 })),
    nodeIds: new Set<string>(),
  });

  test('two healthy circuits beside a damaged bundle: worked example, [.274 .091 .055 .137 .137 .305]', () => {
    const prior = [0.3, 0.1, 0.2, 0.15, 0.15, 0.1];
    const after = zonePosterior(prior, [sharedRunsEvidence([], [beside(1, 2, 3), beside(3, 4, 5)], 1)]);
    expect(rounded(after)).toEqual([0.274, 0.091, 0.055, 0.137, 0.137, 0.305]);
  });

  test('circuits that fail together raise the stretch they share', () => {
    const after = zonePosterior([0.25, 0.25, 0.25, 0.25], [sharedRunsEvidence([beside(2)], [])]);
    expect(after[1]).toBeGreaterThan(0.5);
  });

  test('a second circuit failing on the same stretch raises it further', () => {
    const one = zonePosterior([0.25, 0.25, 0.25, 0.25], [sharedRunsEvidence([beside(2, 3)], [])]);
    const two = zonePosterior([0.25, 0.25, 0.25, 0.25], [sharedRunsEvidence([beside(2, 3), beside(3)], [])]);
    expect(two[2]).toBeGreaterThan(one[2] as number);
  });

  const touching = (evidence: Evidence): { here: number; there: number; toBody: number } => {
    const hypotheses = layHypotheses(new Float64Array([0, 1000, 2000]), []);
    const after = weighEvidence(hypotheses, new Float64Array(hypotheses.size), [evidence]);
    const at = (kind: FaultClass, cell: number): number =>
      after[hypotheses.classes.indexOf(kind) * 2 + cell] as number;
    return {
      here: at('wire-to-wire', 0),
      there: at('wire-to-wire', 1),
      toBody: at('short-to-ground', 0),
    };
  };
  const inFirst = (circuits: number) => ({
    ranges: [{ fromMm: 0, toMm: 1000, circuits }],
    nodeIds: new Set<string>(),
  });

  test('one failing beside it speaks for the two touching: more than for any other fault there', () => {
    const { here, there, toBody } = touching(sharedRunsEvidence([inFirst(1)], []));
    // Touching it: 0.3 x 0.7 + 0.7 x (0.2 x 0.02 + 0.8 x 0.9); only this wire damaged: 0.3 x 0.7 + 0.7 x 0.02.
    expect(here / toBody).toBeCloseTo(0.7168 / 0.224, 10);
    expect(here).toBeGreaterThan(there);
  });

  test('the more other wires pass there, the less one failing speaks for touching just it', () => {
    const few = touching(sharedRunsEvidence([inFirst(1)], []));
    const many = touching(sharedRunsEvidence([inFirst(8)], []));
    expect(many.here).toBeLessThan(few.here);
    expect(many.here / many.toBody).toBeGreaterThan(1);
  });

  test('one that works beside it speaks against the two touching', () => {
    const { here, there, toBody } = touching(sharedRunsEvidence([], [inFirst(1)]));
    expect(here).toBeLessThan(there);
    // 0.3 x 0.3 + 0.7 x (0.2 + 0.8 x 0.1) against 0.3 x 0.3 + 0.7.
    expect(here / toBody).toBeCloseTo(0.286 / 0.79, 10);
  });

  test('a working circuit clears its stretch only a little: a single wire may still be damaged', () => {
    const [there = 0] = zonePosterior([0.5, 0.5], [sharedRunsEvidence([], [beside(1)])]);
    expect(there).toBeLessThan(0.5);
    expect(there).toBeGreaterThan(0.4);
  });
});

describe('unplugging', () => {
  const plugAt = 2000;
  const parts = [
    { nodeId: 'node:supply', stationMm: 0, place: 'first-end' },
    { nodeId: 'node:plug', stationMm: plugAt, place: 'plug' },
    { nodeId: 'node:load', stationMm: 4000, place: 'second-end' },
  ] as const;
  const hypotheses = layHypotheses(new Float64Array([0, 1000, 2000, 3000, 4000]), parts);
  const even = new Float64Array(hypotheses.size);
  const posteriorAfter = (stationMm: number, stays: boolean, watchedFromSecondEnd = false) =>
    weighEvidence(hypotheses, even, [unplugEvidence(pulledAt(stationMm, stays, watchedFromSecondEnd, 4000))]);

  test('a short that stays lies on the supply side: 19 to 1', () => {
    const probability = posteriorAfter(plugAt, true);
    expect((probability[1] as number) / (probability[2] as number)).toBeCloseTo(19, 9);
  });

  test('a short that goes lies beyond; the plug itself stays open', () => {
    const probability = posteriorAfter(plugAt, false);
    expect((probability[2] as number) / (probability[1] as number)).toBeCloseTo(19, 9);
    const plug = probability[componentAt(hypotheses, 1)] as number;
    expect(plug).toBeGreaterThan(probability[1] as number);
    expect(plug).toBeLessThan(probability[2] as number);
  });

  test('a short that stays with the load unplugged clears the load and not the wire', () => {
    const probability = posteriorAfter(4000, true);
    const load = probability[componentAt(hypotheses, 2)] as number;
    expect((probability[3] as number) / load).toBeCloseTo(19, 9);
  });

  test('watched from the other end the sides change places', () => {
    const probability = posteriorAfter(plugAt, true, true);
    expect((probability[2] as number) / (probability[1] as number)).toBeCloseTo(19, 9);
  });

  test('it says nothing about where an open is, nor about none of these', () => {
    const probability = posteriorAfter(plugAt, true);
    const open = hypotheses.classes.indexOf('open') * hypotheses.cellCount;
    const cells = [0, 1, 2, 3].map((cell) => probability[open + cell]);
    expect(new Set(cells).size).toBe(1);
    expect(probability[noneAt(hypotheses)]).toBe(cells[0]);
  });
});
