import { erf } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { touchesPerSecond } from '#core/chafe/contact.ts';
import { beamSagMm, firstModeHz, slackBowMm } from '#core/chafe/span-mechanics.ts';
import { bodyDensity, milesAcceleration, milesDisplacement, profileRms } from '#core/chafe/vibration.ts';
import { type Chance, seededChance } from '#core/quantity/chance.ts';
import { normalTail } from '#core/quantity/normal-tail.ts';

/** Relative closeness: `share` 0.001 means within a tenth of a percent. */
const expectWithin = (value: number, expected: number, share: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(Math.abs(expected) * share);

describe('vibration of the body, ISO 16750-3 (profile from memory)', () => {
  test('the profile integrates to the rms the standard states, 27.8 m/s2', () => {
    expect(Math.abs(profileRms() - 27.78)).toBeLessThan(0.05);
  });

  test('summing the profile in fine steps gives the same rms', () => {
    const steps = 200_000;
    let square = 0;
    for (let i = 0; i < steps; i++) square += bodyDensity(10 + ((i + 0.5) * 990) / steps) * (990 / steps);
    expectWithin(Math.sqrt(square), profileRms(), 1e-5);
  });
});

describe("Miles' equation, NASA GSFC FEMCI", () => {
  test('200 Hz, Q 20, 0.01 g2/Hz gives 7.927 g rms and 0.04923 mm', () => {
    const g = 9.80665;
    expectWithin(milesAcceleration(200, 20, 0.01), 7.927, 0.001);
    expectWithin(milesDisplacement(200, 20, 0.01 * g * g) * 1000, 0.04923, 0.001);
  });

  test('30 Hz, Q 5, 9.6932 (m/s2)2/Hz gives 47.79 m/s2 rms and 1.345 mm', () => {
    expectWithin(milesAcceleration(30, 5, 9.6932), 47.79, 0.001);
    expectWithin(milesDisplacement(30, 5, 9.6932) * 1000, 1.345, 0.001);
  });
});

describe('beams: Blevins, natural frequencies; Roark, deflections (both from memory)', () => {
  // Steel bar of 10 mm diameter, 1 m long, E 207 GPa, 7850 kg/m3.
  const bar = {
    kgPerMetre: 7850 * Math.PI * 0.005 ** 2,
    stiffnessNMm2: (207_000 * Math.PI * 10 ** 4) / 64,
  };
  const loom = { kgPerMetre: 0.0677362, stiffnessNMm2: 44_924.7 };

  test('a pinned bar sings at 20.166 Hz and a built-in one at 45.713 Hz', () => {
    expectWithin(firstModeHz(bar, 1000, 'pinned'), 20.166, 0.001);
    expectWithin(firstModeHz(bar, 1000, 'fixed'), 45.713, 0.001);
  });

  test.each([
    ['pinned', 14.214, 1.56],
    ['fixed-pinned', 22.205, 0.648],
    ['fixed', 32.221, 0.312],
  ] as const)('a 300 mm %s loom sings at %d Hz and sags %d mm', (support, hz, sagMm) => {
    expectWithin(firstModeHz(loom, 300, support), hz, 0.002);
    expectWithin(beamSagMm(loom, 300, support), sagMm, 0.002);
  });

  test('a 12.7 mm bow over 609.6 mm (AC 43.13-1B 11-96a, 11-118) takes 0.7056 mm of spare loom', () => {
    expectWithin(slackBowMm(609.6, 0.7056), 12.7, 0.005);
    // The exact arc of a parabola takes 0.7048 mm.
    let arc = 0;
    const steps = 20_000;
    for (let i = 0; i < steps; i++) {
      const x = -1 + (2 * (i + 0.5)) / steps;
      arc += Math.hypot(1, (2 * 2 * 12.7 * x) / 609.6) * (609.6 / steps);
    }
    expectWithin(arc - 609.6, 0.7048, 0.005);
    expectWithin(slackBowMm(609.6, arc - 609.6), 12.7, 0.005);
  });
});

describe('touching a surface', () => {
  test("Rice's formula: 14.214 Hz at three sigmas gives 0.15790 touches a second", () => {
    expectWithin(touchesPerSecond(14.214, 3, 1), 0.1579, 0.001);
  });

  test('the normal tail agrees with a mathematics library', () => {
    for (let z = -5; z <= 5; z += 0.05) {
      const byLibrary = 0.5 * (1 - erf(z / Math.SQRT2));
      expect(Math.abs(normalTail(z) - byLibrary)).toBeLessThan(2e-15);
    }
  });

  test('far tails keep their digits', () => {
    // Abramowitz and Stegun, table 26.2: Q(7) and Q(10) as powers of ten (from memory).
    expectWithin(normalTail(7), 1.279812543886e-12, 1e-8);
    expectWithin(normalTail(10), 7.619853024161e-24, 1e-8);
  });
});

/** A sample of a normal variable (Box and Muller). */
function normal(chance: Chance): number {
  return Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());
}

/** An oscillator on a base shaken with white noise: its motion, step by step, solved exactly between steps. */
function shaken(hz: number, quality: number, density: number, seconds: number, chance: Chance) {
  const stepS = 1 / (hz * 60);
  const w = 2 * Math.PI * hz;
  const zeta = 1 / (2 * quality);
  const wd = w * Math.sqrt(1 - zeta * zeta);
  const decay = Math.exp(-zeta * w * stepS);
  const c = Math.cos(wd * stepS) * decay;
  const s = Math.sin(wd * stepS) * decay;
  // Free motion over one step, and the answer to a force held through it.
  const a11 = c + (zeta * w * s) / wd;
  const a12 = s / wd;
  const a21 = (-w * w * s) / wd;
  const a22 = c - (zeta * w * s) / wd;
  const b1 = (1 - a11) / (w * w);
  const b2 = s / wd;
  // White noise of one-sided density W held for a step has variance W / (2 step).
  const force = Math.sqrt(density / (2 * stepS));
  const steps = Math.round(seconds / stepS);
  const places = new Float64Array(steps);
  let y = 0;
  let v = 0;
  for (let i = 0; i < steps; i++) {
    const push = force * normal(chance);
    const nextY = a11 * y + a12 * v + b1 * push;
    v = a21 * y + a22 * v + b2 * push;
    y = nextY;
    places[i] = y;
  }
  return { places, stepS };
}

describe('Miles and Rice against a shaken oscillator, followed step by step', () => {
  const hz = 25;
  const quality = 10;
  const density = 8;
  const seconds = 1_000;
  const { places } = shaken(hz, quality, density, seconds, seededChance(20_260));
  const rms = Math.sqrt(places.reduce((sum, y) => sum + y * y, 0) / places.length);

  test('its rms motion is what Miles says, within 2 percent', () => {
    expectWithin(rms, milesDisplacement(hz, quality, density), 0.02);
  });

  test.each([0, 1, 2])('it crosses %i sigmas upward as often as Rice says, within 5 percent', (sigmas) => {
    const level = sigmas * rms;
    let crossings = 0;
    for (let i = 1; i < places.length; i++) {
      if ((places[i - 1] as number) <= level && (places[i] as number) > level) crossings++;
    }
    expectWithin(crossings / seconds, touchesPerSecond(hz, level, rms), 0.05);
  });
});
