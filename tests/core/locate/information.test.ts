import * as math from 'mathjs';
import { describe, expect, test } from 'vitest';
import { entropyBits, expectedBits, learnedBits } from '#core/locate/information.ts';
import { moveEvidence } from '#core/locate/move-evidence.ts';
import { classOutcomes, likelyPieces, placingOutcomes, twoOutcomes } from '#core/locate/outcome-chances.ts';
import { unplugEvidence } from '#core/locate/unplug-evidence.ts';
import { pulledAt, zone, zones } from './small-line.ts';

const sixZones = [0.3, 0.1, 0.2, 0.15, 0.15, 0.1];

/** The binary entropy by its textbook formula, for checks by hand. */
const binary = (p: number): number => -p * Math.log2(p) - (1 - p) * Math.log2(1 - p);

describe('uncertainty in bits', () => {
  test('the six zones of the worked example: 2.471 bit', () => {
    expect(entropyBits(sixZones)).toBeCloseTo(2.471, 3);
  });

  test('agrees with a library, and what is learned with its Kullback and Leibler divergence', () => {
    const after = [0.849, 0.094, 0.019, 0.014, 0.014, 0.01];
    const bits = math.sum(...sixZones.map((p) => math.multiply(-p, math.log(p, 2)) as number)) as number;
    expect(entropyBits(sixZones)).toBeCloseTo(bits, 12);
    expect(learnedBits(after, sixZones)).toBeCloseTo(
      (math.kldivergence(after, sixZones) as number) / Math.LN2,
      9,
    );
  });

  test('nothing is learned where nothing changed', () => {
    expect(learnedBits(sixZones, sixZones)).toBe(0);
  });
});

describe('what a test is expected to tell', () => {
  const perfect = [
    [1, 0],
    [0, 1],
  ];
  const erring = [
    [0.95, 0.05],
    [0.05, 0.95],
  ];

  test('pulling the plug with 40 percent before it: 0.971 bit, and 0.690 when 1 in 20 misleads', () => {
    expect(expectedBits([0.4, 0.6], perfect)).toBeCloseTo(0.971, 4);
    expect(expectedBits([0.4, 0.6], erring)).toBeCloseTo(0.6901, 4);
    expect(expectedBits([0.4, 0.6], erring)).toBeCloseTo(binary(0.05 + 0.9 * 0.4) - binary(0.05), 12);
  });

  test('pulling one with 75 percent before it: 0.811 and 0.562 bit', () => {
    expect(expectedBits([0.75, 0.25], perfect)).toBeCloseTo(0.811, 3);
    expect(expectedBits([0.75, 0.25], erring)).toBeCloseTo(0.562, 3);
  });

  test('moving the first zone, chance 0.6 there and 0.02 elsewhere: 0.3195 bit', () => {
    expect(
      expectedBits(
        [0.3, 0.7],
        [
          [0.6, 0.02],
          [0.4, 0.98],
        ],
      ),
    ).toBeCloseTo(0.3195, 4);
  });

  test('of plugs with equal ground either side the middle one tells most: halve it', () => {
    const hypotheses = zones(8);
    const probability = new Float64Array(hypotheses.size);
    probability.fill(1 / 8, 0, 8);
    const bits = [1, 2, 3, 4, 5, 6, 7].map((plug) => {
      const pulled = unplugEvidence(pulledAt(plug * 1000, true));
      return expectedBits(probability, twoOutcomes(hypotheses, pulled));
    });
    expect(bits.indexOf(Math.max(...bits))).toBe(3);
    expect(bits[0]).toBeCloseTo(bits[6] as number, 12);
  });

  test('it is halved by chance, not by length', () => {
    const hypotheses = zones(4);
    const probability = new Float64Array(hypotheses.size);
    probability.set([0.5, 0.3, 0.1, 0.1]);
    const bits = [1, 2, 3].map((plug) => {
      const pulled = unplugEvidence(pulledAt(plug * 1000, true));
      return expectedBits(probability, twoOutcomes(hypotheses, pulled));
    });
    expect(bits.indexOf(Math.max(...bits))).toBe(0);
  });

  test('a test whose outcome is the same everywhere tells nothing', () => {
    const chances = classOutcomes(
      zones(3),
      () => 0.7,
      () => 0.7,
    );
    const probability = new Float64Array(zones(3).size).fill(0);
    probability.fill(1 / 3, 0, 3);
    expect(expectedBits(probability, chances)).toBeCloseTo(0, 12);
  });
});

describe('outcomes of a test', () => {
  test('under every hypothesis they sum to one', () => {
    const hypotheses = zones(6);
    const placing = placingOutcomes(hypotheses, {
      figureShare: {
        'short-to-ground': 0.8,
        'short-to-supply': 0,
        'wire-to-wire': 0.2,
        open: 0,
        'high-resistance': 0,
      },
      spreadMm: (mm) => 60 + mm / 50,
      pieces: [zone(1), zone(2), { fromMm: 2000, toMm: 6000 }],
    });
    const moving = twoOutcomes(hypotheses, moveEvidence([zone(1)], 1, 1));
    for (const chances of [placing, moving])
      for (let i = 0; i < hypotheses.size; i++)
        expect(chances.reduce((sum, row) => sum + (row[i] as number), 0)).toBeCloseTo(1, 12);
  });

  test('a sharper meter is never expected to tell less', () => {
    const hypotheses = zones(6);
    const probability = new Float64Array(hypotheses.size);
    probability.fill(1 / 6, 0, 6);
    const pieces = likelyPieces(hypotheses.cellEdgesMm, Float64Array.from(sixZones), 6);
    const bits = [2000, 1000, 500, 200, 60].map((spread) =>
      expectedBits(
        probability,
        placingOutcomes(hypotheses, {
          figureShare: {
            'short-to-ground': 1,
            'short-to-supply': 0,
            'wire-to-wire': 0,
            open: 0,
            'high-resistance': 0,
          },
          spreadMm: () => spread,
          pieces,
        }),
      ),
    );
    for (let i = 1; i < bits.length; i++)
      expect(bits[i] as number).toBeGreaterThanOrEqual((bits[i - 1] as number) - 1e-12);
  });

  test('pieces to be told apart cover the wire and share the chance about evenly', () => {
    const edges = Float64Array.from({ length: 101 }, (_, i) => i * 50);
    const pieces = likelyPieces(edges, new Float64Array(100).fill(0.01), 4);
    expect(pieces).toEqual([
      { fromMm: 0, toMm: 1250 },
      { fromMm: 1250, toMm: 2500 },
      { fromMm: 2500, toMm: 3750 },
      { fromMm: 3750, toMm: 5000 },
    ]);
  });
});
