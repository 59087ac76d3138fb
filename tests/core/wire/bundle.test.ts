import { describe, expect, test } from 'vitest';
import { bundleOf } from '#core/wire/bundle.ts';
import type { Wire } from '#core/wire/wire-shape.ts';

const half: Wire = { conductorMm2: 0.5, insulation: 'thin-wall' };
const ten = Array.from({ length: 10 }, () => half);

describe('a bundle of wires', () => {
  test('ten wires of 0.5 mm2 are 5.842 mm across, 67.7 g a metre, EI from 1,607 to 1.256e6 N mm2', () => {
    // Computed by hand from the wire table.
    const bundle = bundleOf(ten);
    expect(bundle.diameterMm).toBeCloseTo(5.842, 3);
    expect(bundle.kgPerMetre).toBeCloseTo(0.06774, 5);
    expect(Math.abs(bundle.stiffnessNMm2.slipping / 1606.6 - 1)).toBeLessThan(0.002);
    expect(Math.abs(bundle.stiffnessNMm2.stuck / 1.2562e6 - 1)).toBeLessThan(0.002);
    expect(Math.abs(bundle.stiffnessNMm2.mean / 44_925 - 1)).toBeLessThan(0.002);
  });

  test('one wire alone is as thick as itself', () => {
    expect(bundleOf([half]).diameterMm).toBe(1.6);
  });

  test('a diameter set by hand stands for more wires of the same mix', () => {
    const measured = bundleOf(ten, 2 * bundleOf(ten).diameterMm);
    expect(measured.wireCount).toBe(40);
    expect(measured.kgPerMetre).toBeCloseTo(4 * bundleOf(ten).kgPerMetre, 12);
    const forty = bundleOf(Array.from({ length: 40 }, () => half));
    expect(measured.stiffnessNMm2.stuck / forty.stiffnessNMm2.stuck).toBeCloseTo(1, 9);
  });

  test('more wires never make a thinner, lighter or softer loom', () => {
    let before = bundleOf([half]);
    for (let count = 2; count < 40; count++) {
      const next = bundleOf(Array.from({ length: count }, () => half));
      expect(next.diameterMm).toBeGreaterThan(before.diameterMm);
      expect(next.kgPerMetre).toBeGreaterThan(before.kgPerMetre);
      expect(next.stiffnessNMm2.mean).toBeGreaterThan(before.stiffnessNMm2.mean);
      before = next;
    }
  });
});
