import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { emptyNetwork, type Network } from '#core/circuit/network.ts';
import { floatingIslands } from '#core/circuit/network-islands.ts';
import { solveNetwork } from '#core/circuit/solve-network.ts';

const divider: Network = {
  ...emptyNetwork,
  nodeCount: 2,
  resistors: [
    { a: 1, b: 2, ohms: 1000 },
    { a: 2, b: 0, ohms: 70 },
  ],
  voltageSources: [{ plus: 1, minus: 0, volts: 5 }],
};

describe('a direct-current network', () => {
  test('70 ohm against a 1 kilohm pull-up leaves a third of a volt', () => {
    const answer = solveNetwork(divider);
    expect(answer.outcome === 'solved' && answer.volts[2]).toBeCloseTo((5 * 70) / 1070, 9);
    expect(answer.outcome === 'solved' && answer.residual).toBeLessThan(1e-12);
    expect(answer.outcome === 'solved' && answer.sourceAmps[0]).toBeCloseTo(-5 / 1070, 9);
  });

  test('a part that nothing ties to the body is named, not given a voltage', () => {
    const loose = { ...divider, nodeCount: 4, branches: [{ a: 3, b: 4, ohms: 1 }] };
    expect(solveNetwork(loose)).toEqual({ outcome: 'floating', islands: [[3, 4]] });
  });

  test('a current source ties nothing', () => {
    const pushed: Network = { ...emptyNetwork, nodeCount: 1, currentSources: [{ from: 0, to: 1, amps: 1 }] };
    expect(floatingIslands(pushed)).toEqual([[1]]);
  });

  test('two ideal sources that disagree are a contradiction', () => {
    const fight: Network = {
      ...emptyNetwork,
      nodeCount: 1,
      voltageSources: [
        { plus: 1, minus: 0, volts: 5 },
        { plus: 1, minus: 0, volts: 12 },
      ],
    };
    expect(solveNetwork(fight).outcome).toBe('contradiction');
  });

  test('current into every node balances, whatever the resistors', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.001, max: 1e6, noNaN: true }), { minLength: 4, maxLength: 12 }),
        fc.integer({ min: -24, max: 24 }),
        (ohms, volts) => {
          const ladder: Network = {
            ...emptyNetwork,
            nodeCount: ohms.length + 1,
            branches: ohms.map((each, i) => ({ a: i + 1, b: i + 2, ohms: each })),
            resistors: [{ a: ohms.length + 1, b: 0, ohms: 10 }],
            voltageSources: [{ plus: 1, minus: 0, volts }],
          };
          const answer = solveNetwork(ladder);
          if (answer.outcome !== 'solved') throw new Error(answer.outcome);
          const expected = volts / (ohms.reduce((sum, each) => sum + each, 0) + 10);
          for (const amps of answer.branchAmps)
            expect(Math.abs(amps - expected)).toBeLessThan(1e-7 * Math.abs(expected) + 1e-9);
          expect(answer.residual).toBeLessThan(1e-9);
        },
      ),
      { seed: 7, numRuns: 200 },
    );
  });
});
