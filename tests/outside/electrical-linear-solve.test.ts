import { lusolve } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { faultResponse, isSeriesClass } from '#core/circuit/fault-response.ts';
import { invertMatrix } from '#core/circuit/invert-matrix.ts';
import { emptyNetwork, type Network } from '#core/circuit/network.ts';
import { networkMatrix } from '#core/circuit/network-matrix.ts';
import { solveNetwork } from '#core/circuit/solve-network.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { exactVolts } from '#tests/core/circuit/exact-volts.ts';
import { withFault } from '#tests/core/circuit/explicit-fault.ts';
import { generatedCases } from '#tests/core/circuit/generated-readings.ts';

/** A connected random network: a tree of resistors to the body, extra ones across, sources on top. */
function randomNetwork(chance: () => number): Network {
  const nodeCount = 3 + Math.floor(chance() * 18);
  const node = () => Math.floor(chance() * (nodeCount + 1));
  const ohms = () => 10 ** (-2 + 7 * chance());
  const tree = Array.from({ length: nodeCount }, (_, i) => ({
    a: i + 1,
    b: Math.floor(chance() * (i + 1)),
    ohms: ohms(),
  }));
  const across = Array.from({ length: nodeCount }, () => ({ a: node(), b: node(), ohms: ohms() })).filter(
    ({ a, b }) => a !== b,
  );
  return {
    ...emptyNetwork,
    nodeCount,
    resistors: [...tree.filter((_, i) => i % 2 === 0), ...across],
    branches: tree.filter((_, i) => i % 2 === 1),
    voltageSources: [{ plus: 1, minus: 0, volts: 24 * chance() - 12 }],
    currentSources: [{ from: node(), to: node(), amps: chance() }],
  };
}

describe('the linear solution against a general library', () => {
  test('200 random networks agree with LU decomposition (mathjs 15 lusolve) to a millionth', () => {
    const chance = seededChance(11);
    for (let i = 0; i < 200; i++) {
      const network = randomNetwork(chance);
      const { size, matrix, excitation } = networkMatrix(network);
      const rows = Array.from({ length: size }, (_, row) => [
        ...matrix.subarray(row * size, (row + 1) * size),
      ]);
      const reference = (lusolve(rows, [...excitation]) as number[][]).map(([value]) => value as number);
      const answer = solveNetwork(network);
      if (answer.outcome !== 'solved') throw new Error(answer.outcome);
      const largest = Math.max(...reference.slice(0, network.nodeCount).map(Math.abs));
      for (let node = 1; node <= network.nodeCount; node++) {
        const expected = reference[node - 1] as number;
        expect(Math.abs((answer.volts[node] as number) - expected)).toBeLessThan(
          1e-6 * Math.abs(expected) + 1e-10 * largest,
        );
      }
      expect(answer.residual).toBeLessThan(1e-9);
    }
  });

  test('60 generated readings agree with 60-digit arithmetic, small drops between high leads too', () => {
    let small = 0;
    for (const { metered, fault } of generatedCases(60, 12)) {
      const { faultClass, link, share, ohms } = fault;
      const places = { link: Int32Array.of(link), share: Float64Array.of(share) };
      const response = faultResponse(metered, faultClass, places);
      const theta = isSeriesClass(faultClass) ? 1 / ohms : ohms;
      const shown =
        response.sound - (response.numerator[0] as number) / (theta + (response.offset[0] as number));
      const { between, highest } = exactVolts(withFault(metered.network, fault), metered.plus, metered.minus);
      if (Math.abs(between) < 0.01 * highest) small++;
      const miss = Math.abs(shown / metered.unitsPerVolt - between);
      expect(miss).toBeLessThanOrEqual(1.5e-6 * Math.abs(between) + 4e-15 * highest + 1e-10);
    }
    expect(small).toBeGreaterThan(8);
  }, 60_000);

  test('one entry changed: the published large-change example gives 7/12, 1/6, -1/12', () => {
    // Lecture notes "Large Change Sensitivities" (studylib.net 5844966): T0 and its change at row 3, column 2.
    // Signs are lost in the scan and were restored by solving.
    const inverse = invertMatrix(Float64Array.of(2, -1, 0, -1, 3, -1, 0, 0, 2), 3) as Float64Array;
    const solved = [0, 1, 2].map((row) => inverse[row * 3] as number);
    const change = 1;
    const factor = (change * (solved[1] as number)) / (1 + change * (inverse[1 * 3 + 2] as number));
    const changed = [0, 1, 2].map(
      (row) => (solved[row] as number) - factor * (inverse[row * 3 + 2] as number),
    );
    const expected = [7 / 12, 1 / 6, -1 / 12];
    changed.forEach((value, i) => {
      expect(value).toBeCloseTo(expected[i] as number, 12);
    });
  });
});
