import { describe, expect, test } from 'vitest';
import { advisedBendMm, aircraftGuidance } from '#core/chafe/aircraft-guidance.ts';
import { bendingStrain, bendsToBreak } from '#core/chafe/fatigue.ts';
import { linePressureRatio } from '#core/chafe/hertz.ts';
import { tapeAbrasionClass } from '#core/chafe/protection.ts';
import { bendFactor } from '#core/chafe/wear.ts';
import { awgAreaMm2, awgDiameterMm } from '#core/wire/awg.ts';
import { conductorOhmsPerMetre, copperWarmthFactor } from '#core/wire/conductor-resistance.ts';
import { conductorTable } from '#core/wire/conductor-table.ts';
import { insulationTable } from '#core/wire/insulation-table.ts';
import { wallStrokes, wearAreaMm2 } from '#core/wire/wall-strokes.ts';

const expectWithin = (value: number, expected: number, share: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(Math.abs(expected) * share);

describe('aircraft guidance, AC 43.13-1B chapter 11 and TM 1-1500-204-23-4', () => {
  test('24 in, 1/2 in and 3/8 in are 609.6, 12.7 and 9.525 mm', () => {
    expect(aircraftGuidance.spanMm).toBeCloseTo(609.6, 10);
    expect(aircraftGuidance.bowMm).toBeCloseTo(12.7, 10);
    expect(aircraftGuidance.holeGapMm).toBeCloseTo(9.525, 10);
  });

  test('12 in between supports without ties, and from a splice to its plug, is 304.8 mm', () => {
    expect(aircraftGuidance.untiedMm).toBeCloseTo(304.8, 10);
    expect(aircraftGuidance.spliceToEndMm).toBeCloseTo(304.8, 10);
    expect(aircraftGuidance.movingGapMm).toBeCloseTo(12.7, 10);
  });

  test('a 5.842 mm loom should bend no tighter than 58.42 mm, or 17.53 mm where supported', () => {
    expectWithin(advisedBendMm(5.842, false), 58.42, 0.001);
    expectWithin(advisedBendMm(5.842, true), 17.53, 0.001);
  });

  test('the bend factor is 2.921 at 20 mm and 1 at 80 mm', () => {
    expectWithin(bendFactor(5.842, 20), 2.921, 0.001);
    expect(bendFactor(5.842, 80)).toBe(1);
  });
});

describe("insulation: ISO 6722-1 scrape test geometry and a wire maker's published tables", () => {
  test('0.5 mm2 thin wall loses 0.16667 mm2 before copper shows, k 0.07937 mm3/(N m) at 150 strokes', () => {
    const area = wearAreaMm2(1.6, 0.22);
    expectWithin(area, 0.16667, 0.001);
    expectWithin((area * 1000) / (2 * 7 * 150), 0.07937, 0.001);
  });

  test('thick wall stands 3.77 times what thin wall stands at 0.5 mm2', () => {
    const thick = wallStrokes({ conductorMm2: 0.5, insulation: 'thick-wall' });
    const thin = wallStrokes({ conductorMm2: 0.5, insulation: 'thin-wall' });
    expectWithin(thick / thin, 3.77, 0.01);
    expectWithin(wearAreaMm2(2.3, 0.48), 0.6286, 0.01);
  });

  test.each([
    [0.22, 0.1239],
    [0.35, 0.1349],
    [0.5, 0.1667],
    [0.75, 0.2077],
    [1, 0.2192],
    [1.5, 0.2354],
    [2.5, 0.3324],
    [4, 0.452],
    [6, 0.4892],
  ])('thin-wall %d mm2 loses %d mm2 before copper shows', (mm2, area) => {
    const row = insulationTable['thin-wall'].find((each) => each.mm2 === mm2);
    expectWithin(wearAreaMm2(row?.outerMm ?? 0, row?.minimumWallMm ?? 0), area, 0.001);
  });

  test.each(insulationTable['thin-wall'])(
    'thin-wall $mm2 mm2: least wall is 0.8 of nominal and the wire fits',
    (row) => {
      expect(Math.abs(row.minimumWallMm - 0.8 * row.nominalWallMm)).toBeLessThanOrEqual(0.005);
      const conductor = conductorTable.find(({ mm2 }) => mm2 === row.mm2);
      expect((conductor?.diameterMm ?? 9) + 2 * row.nominalWallMm).toBeLessThanOrEqual(row.outerMm + 1e-9);
    },
  );

  test.each(insulationTable['thick-wall'])('thick-wall $mm2 mm2: least wall is 0.8 of nominal', (row) => {
    expect(Math.abs(row.minimumWallMm - 0.8 * row.nominalWallMm)).toBeLessThanOrEqual(0.005);
  });
});

describe('copper', () => {
  test.each([
    [0.22, 84.8],
    [0.35, 54.4],
    [0.5, 37.1],
    [0.75, 24.7],
    [1, 18.5],
    [1.5, 12.7],
    [2.5, 7.6],
    [4, 4.71],
    [6, 3.14],
    [10, 1.82],
  ])('%d mm2 is at most %d mohm a metre at 20 C (ISO 6722-1, from memory)', (mm2, milliohms) => {
    expect(conductorOhmsPerMetre(mm2) * 1000).toBeCloseTo(milliohms, 9);
  });

  test('sizes between rows lie between their neighbours', () => {
    expect(conductorOhmsPerMetre(0.6)).toBeLessThan(conductorOhmsPerMetre(0.5));
    expect(conductorOhmsPerMetre(0.6)).toBeGreaterThan(conductorOhmsPerMetre(0.75));
  });

  test('60 C costs a factor 1.157 (IEC 60028, from memory)', () => {
    expect(copperWarmthFactor(60)).toBeCloseTo(1.157, 3);
  });

  test('AWG 20 is 0.812 mm and 0.518 mm2 (ASTM B258, from memory)', () => {
    expect(awgDiameterMm(20)).toBeCloseTo(0.812, 3);
    expect(awgAreaMm2(20)).toBeCloseTo(0.518, 3);
  });

  test.each([
    [25, 0.004, 50_800],
    [10, 0.01, 6_330],
  ])(
    "a 0.2 mm strand at %i mm strains %d and stands %i bends (Manson's universal slopes, from memory)",
    (radius, strain, bends) => {
      expect(bendingStrain(0.2, radius)).toBeCloseTo(strain, 12);
      expectWithin(bendsToBreak(strain), bends, 0.02);
    },
  );
});

describe('contact and tape', () => {
  test('an edge radius from 2.5 to 0.1 mm presses five times as hard (Hertz, from memory)', () => {
    expect(linePressureRatio(2.5, 0.1)).toBeCloseTo(5, 6);
  });

  test.each([
    [99, 'A'],
    [100, 'B'],
    [500, 'C'],
    [999, 'C'],
    [1_000, 'D'],
    [5_000, 'E'],
    [15_000, 'F'],
  ])('%i strokes is LV 312 class %s (A, C, F published; B, D, E from memory)', (strokes, name) => {
    expect(tapeAbrasionClass(strokes)).toBe(name);
  });
});
