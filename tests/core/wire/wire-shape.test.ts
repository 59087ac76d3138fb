import { describe, expect, test } from 'vitest';
import { conductorOhmsPerMetre } from '#core/wire/conductor-resistance.ts';
import { wallStrokes } from '#core/wire/wall-strokes.ts';
import { wireShape } from '#core/wire/wire-shape.ts';

const sizes = [0.22, 0.35, 0.4, 0.5, 0.75, 0.9, 1, 1.5, 2, 2.5, 4, 6, 10, 16];

describe('wires of every size', () => {
  test('a bigger wire is thicker, heavier, stands more strokes and resists less', () => {
    for (const insulation of ['thin-wall', 'thick-wall'] as const) {
      for (let i = 1; i < sizes.length; i++) {
        const small = { conductorMm2: sizes[i - 1] as number, insulation };
        const big = { conductorMm2: sizes[i] as number, insulation };
        expect(wireShape(big).outerMm).toBeGreaterThanOrEqual(wireShape(small).outerMm);
        expect(wireShape(big).kgPerMetre).toBeGreaterThan(wireShape(small).kgPerMetre);
        expect(wallStrokes(big)).toBeGreaterThanOrEqual(wallStrokes(small));
        expect(conductorOhmsPerMetre(big.conductorMm2)).toBeLessThan(
          conductorOhmsPerMetre(small.conductorMm2),
        );
      }
    }
  });

  test('thick wall outlasts thin wall, and thin outlasts ultra-thin, at every size they share', () => {
    for (const conductorMm2 of sizes) {
      const thick = wallStrokes({ conductorMm2, insulation: 'thick-wall' });
      const thin = wallStrokes({ conductorMm2, insulation: 'thin-wall' });
      expect(thick).toBeGreaterThan(thin);
      if (conductorMm2 <= 0.5) {
        expect(thin).toBeGreaterThan(wallStrokes({ conductorMm2, insulation: 'ultra-thin-wall' }));
      }
    }
  });

  test.each([
    [0.35, 121.4],
    [0.5, 150],
    [6, 440],
  ])('thin-wall %d mm2 stands %d needle strokes', (conductorMm2, strokes) => {
    expect(Math.abs(wallStrokes({ conductorMm2, insulation: 'thin-wall' }) / strokes - 1)).toBeLessThan(
      0.002,
    );
  });
});
