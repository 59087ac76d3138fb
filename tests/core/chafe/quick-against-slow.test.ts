import { describe, expect, test } from 'vitest';
import { defaultAssumptions } from '#core/chafe/chafe-assumptions.ts';
import { contactShare } from '#core/chafe/contact.ts';
import { meanContact } from '#core/chafe/mean-contact.ts';
import { quickTail, tailsBeyond } from '#core/chafe/quick-tail.ts';
import { runContext } from '#core/chafe/run-context.ts';
import { runSurroundings } from '#core/chafe/run-surroundings.ts';
import { hazardAmid, type SegmentHazard } from '#core/chafe/segment-hazard.ts';
import { normalTail } from '#core/quantity/normal-tail.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { slowBodyRubbing, slowSpotRubbing } from './slow-hazard.ts';

describe('figures read from tables', () => {
  test('the normal tail is within a millionth of itself and never rises', () => {
    let before = 1;
    for (let z = -7.9; z < 7.9; z += 0.0007) {
      const tail = quickTail(z);
      expect(Math.abs(tail / normalTail(z) - 1)).toBeLessThan(1e-6);
      expect(tail).toBeLessThanOrEqual(before);
      before = tail;
    }
  });

  test('the fall of the sum of tails is the mean tail on the way', () => {
    const steps = 400;
    for (let z = -6; z < 7; z += 0.11) {
      let mean = 0;
      for (let k = 0; k < steps; k++) mean += normalTail(z + (0.6 * (k + 0.5)) / steps) / steps;
      expect(Math.abs((tailsBeyond(z) - tailsBeyond(z + 0.6)) / 0.6 / mean - 1)).toBeLessThan(2e-5);
    }
  });

  test('mean contact over a piece is the mean of the contact at its places, through zero too', () => {
    for (const [from, to] of [
      [-3, 5],
      [2, 7],
      [6, 6.05],
      [12, 8],
      [-9, -4],
    ] as const) {
      const steps = 20_000;
      let mean = 0;
      for (let k = 0; k < steps; k++) {
        mean += contactShare(from + ((to - from) * (k + 0.5)) / steps, 3, 4) / steps;
      }
      expect(Math.abs(meanContact(from, to, 5, 4) / mean - 1)).toBeLessThan(1e-5);
    }
  });
});

describe('the hazard against one worked out place by place in steps of under half a millimetre', () => {
  const { baseRates, edgeSeverity, severityFactor, surfaceSeverity } = defaultAssumptions;
  const rubbing = baseRates.vibration * 3600;
  const sum = (cells: ArrayLike<number>) => Array.from(cells).reduce((all, each) => all + each, 0);
  const massOf = (hazard: SegmentHazard, cause: string, thing: string) =>
    hazard.causes
      .filter((each) => each.cause === cause && each.thing === thing)
      .reduce((all, { perMm }) => all + sum(perMm), 0);
  /** Errors as shares of the whole hazard of their run. */
  const spotErrors: number[] = [];
  const bodyErrors: number[] = [];
  for (let seed = 1; seed <= 40; seed++) {
    const map = randomMap(seed, { rubSpots: 8 });
    for (const segment of map.segments.values()) {
      const around = runSurroundings(map, segment, defaultAssumptions);
      if (!around) continue;
      const run = runContext(segment, around, defaultAssumptions);
      const hazard = hazardAmid(segment, around, defaultAssumptions);
      const whole = sum(hazard.perMm);
      const body = sum(slowBodyRubbing(run)) * rubbing * surfaceSeverity.body;
      bodyErrors.push(Math.abs(massOf(hazard, 'bare-body', segment.id) / body - 1));
      around.near.forEach((near, i) => {
        const { spot } = near;
        // Those that move do more than rub.
        if (spot.kind === 'moving-part' || spot.kind === 'hinge') return;
        const severity = edgeSeverity[spot.kind] * severityFactor[spot.severity];
        const slow = sum(slowSpotRubbing(run, near, around.nearestMm[i] as number)) * rubbing * severity;
        spotErrors.push(Math.abs(massOf(hazard, 'rub-spot', spot.id) - slow) / whole);
      });
    }
  }
  spotErrors.sort((a, b) => a - b);

  test('the bare body of every run is within 1 percent', () => {
    expect(bodyErrors.length).toBeGreaterThan(300);
    expect(Math.max(...bodyErrors)).toBeLessThan(0.01);
  });

  test('every rub spot is within 3 percent of its run, 98 in 100 within half a percent', () => {
    expect(spotErrors.length).toBeGreaterThan(1_000);
    expect(spotErrors[spotErrors.length - 1]).toBeLessThan(0.03);
    expect(spotErrors[Math.floor(0.98 * spotErrors.length)]).toBeLessThan(0.005);
  });
});
