import { describe, expect, test } from 'vitest';
import { agedField } from '#core/chafe/aged-field.ts';
import { defaultAssumptions } from '#core/chafe/chafe-assumptions.ts';
import { classSplit } from '#core/chafe/class-split.ts';
import { contactShare, overshootPerCycle } from '#core/chafe/contact.ts';
import type { HazardField } from '#core/chafe/hazard-field.ts';
import { meanWearRate, protectionTable } from '#core/chafe/protection.ts';
import { rubWork } from '#core/chafe/rub-work.ts';
import { spanDrive } from '#core/chafe/span-drive.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { normalTail } from '#core/quantity/normal-tail.ts';

/** Ten wires of 0.5 mm2, the loom every worked figure here is for. */
const loom = { kgPerMetre: 0.0677362, stiffnessNMm2: 44_924.7 };
const drive = (spanMm: number, ride = defaultAssumptions.ride) => spanDrive(loom, spanMm, 0, ride, 0.05);
const work = (spanMm: number, clearanceMm: number) =>
  rubWork(drive(spanMm), { clearanceMm, shape: 1, tauMm: 4, forceN: 0 });
const expectWithin = (value: number, expected: number, share: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(Math.abs(expected) * share);

describe('rubbing work of a 300 mm span, computed beforehand by a separate program', () => {
  test.each([
    [0, 8.348],
    [2, 5.186],
    [6, 1.1537],
    [10, 0.11251],
  ])('at %i mm clearance it is %d N mm/s', (clearanceMm, expected) => {
    expectWithin(work(300, clearanceMm), expected, 0.005);
  });

  test('a pinned span drives 22.405 N mm/s, which is 4 sqrt(2 pi) k f sigma^2 with k 0.08104 N/mm', () => {
    const pinned = drive(300, { ...defaultAssumptions.ride, support: 'pinned' });
    expectWithin(pinned.work, 22.405, 0.001);
    // A half-sine beam's generalised mass is half its mass, and its work is spread over its length.
    const k = ((loom.kgPerMetre * 0.3) / 2) * (2 * Math.PI * pinned.hz) ** 2 * 1e-3;
    expectWithin(k, 0.08104, 0.001);
    expectWithin(4 * Math.sqrt(2 * Math.PI) * k * pinned.hz * pinned.sigmaMm ** 2, pinned.work, 0.001);
  });

  test('500 against 250 mm rubs 7.27 times as hard at 5 mm, and 600 against 300 mm 7.93 times', () => {
    expectWithin(work(500, 5) / work(250, 5), 7.27, 0.01);
    expectWithin(work(600, 5) / work(300, 5), 7.93, 0.01);
  });
});

describe('contact statistics', () => {
  test('motion of 1.343 mm passes a 2 mm gap by 0.22965 mm a cycle on average', () => {
    expectWithin(overshootPerCycle(2, 1.343), 0.22965, 0.002);
    expectWithin(Math.exp(-((2 / 1.343) ** 2) / 2), 0.3299, 0.002);
    const chance = seededChance(5);
    const draws = 400_000;
    let sum = 0;
    // Peaks of narrow-band motion are Rayleigh.
    for (let i = 0; i < draws; i++) sum += Math.max(0, 1.343 * Math.sqrt(-2 * Math.log(1 - chance())) - 2);
    expectWithin(sum / draws, overshootPerCycle(2, 1.343), 0.01);
  });

  test('a 6 mm gap known to 4 mm touches 0.07751 as much as no gap can', () => {
    expectWithin(contactShare(6, 1.343, 4), 0.07751, 0.002);
    // The same by averaging over the doubt in fine steps.
    let sum = 0;
    for (let t = -8; t < 8; t += 0.001) {
      sum += (Math.exp((-t * t) / 2) / Math.sqrt(2 * Math.PI)) * normalTail((6 + 4 * t) / 1.343) * 0.001;
    }
    expectWithin(sum, contactShare(6, 1.343, 4), 0.002);
  });

  test('contact never falls as the gap closes, also through zero', () => {
    let before = 0;
    for (let gap = 30; gap > -10; gap -= 0.05) {
      const share = contactShare(gap, 1.3, 4);
      expect(share).toBeGreaterThanOrEqual(before);
      before = share;
    }
  });
});

describe('protection', () => {
  test.each([
    ['bare', 1],
    ['pvc-tape', 0.68],
    ['fleece-tape', 0.433],
    ['pvc-tube', 0.242],
    ['cloth-tape', 0.143],
    ['convoluted-tube', 0.126],
    ['braided-sleeve', 0.059],
  ] as const)('%s leaves %d of the hazard of a bare thin wall', (covering, factor) => {
    expect(Math.abs(meanWearRate(150, protectionTable[covering]) * 150 - factor)).toBeLessThan(0.005);
  });

  test('the order of coverings is the same for every wall', () => {
    const order = [
      'bare',
      'pvc-tape',
      'fleece-tape',
      'pvc-tube',
      'cloth-tape',
      'convoluted-tube',
      'braided-sleeve',
    ] as const;
    for (const wall of [40, 121, 150, 440, 566, 1_500]) {
      for (let i = 1; i < order.length; i++) {
        const weak = meanWearRate(wall, protectionTable[order[i - 1] as (typeof order)[number]]);
        const strong = meanWearRate(wall, protectionTable[order[i] as (typeof order)[number]]);
        expect(strong).toBeLessThan(weak);
      }
    }
  });
});

describe('what a mechanism leads to', () => {
  test.each(Object.entries(classSplit))('%s: its classes make one', (_name, split) => {
    expect(Object.values(split).reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 12);
  });
});

describe('who fails first', () => {
  const none = () => new Float64Array(3);
  const field: HazardField = {
    cellEdgesMm: Float64Array.from([0, 10, 20, 30]),
    byClass: {
      'short-to-ground': Float64Array.from([1, 2, 3]),
      'short-to-supply': none(),
      'wire-to-wire': none(),
      open: none(),
      'high-resistance': none(),
    },
    causes: [],
  };

  test('with wear-out shape 2, rates 1, 2 and 3 fail first in shares 1, 4 and 9 of 14', () => {
    const aged = agedField(field, 2).byClass['short-to-ground'];
    const sum = aged.reduce((all, each) => all + each, 0);
    expect(sum).toBeCloseTo(6, 12);
    [0.07143, 0.28571, 0.64286].forEach((share, i) => {
      expect(Math.abs((aged[i] as number) / sum - share)).toBeLessThan(1e-5);
    });
  });

  test('lives drawn by chance agree', () => {
    const aged = agedField(field, 2).byClass['short-to-ground'];
    const chance = seededChance(11);
    const counts = [0, 0, 0];
    const draws = 200_000;
    for (let i = 0; i < draws; i++) {
      const lives = [1, 2, 3].map((rate) => Math.sqrt(-Math.log(1 - chance())) / rate);
      const first = lives.indexOf(Math.min(...lives));
      counts[first] = (counts[first] as number) + 1;
    }
    counts.forEach((count, i) => {
      expect(Math.abs(count / draws - (aged[i] as number) / 6)).toBeLessThan(0.004);
    });
  });
});
