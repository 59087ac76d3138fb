import type { NetNode, Network } from './network.ts';

/**
 * Conductance from every node to the body, in siemens: keeps a node without a tie solvable. Larger
 * shifts high readings (1e-9 moves a 100 kilohm reading by 59 ohm), smaller drowns in rounding.
 */
export const leastConductanceS = 1e-12;

/** The nodal equations T x = w: x holds the volts of nodes 1 to n, then branch currents, then source currents. */
export interface NetworkMatrix {
  readonly size: number;
  readonly matrix: Float64Array;
  readonly excitation: Float64Array;
}

/**
 * Modified nodal equations of a network (Ho, Ruehli and Brennan 1975, from memory): conductances for
 * resistors, one extra row each for branches (v_a - v_b - R i = 0) and voltage sources (v_p - v_m = V).
 * @example
 * networkMatrix({ ...emptyNetwork, nodeCount: 1, branches: [{ a: 1, b: 0, ohms: 2 }] }).matrix // => Float64Array.of(1e-12, 1, 1, -2)
 */
export function networkMatrix(network: Network): NetworkMatrix {
  const { nodeCount, branches, voltageSources } = network;
  const size = nodeCount + branches.length + voltageSources.length;
  const matrix = new Float64Array(size * size);
  const excitation = new Float64Array(size);
  const add = (row: number, column: number, value: number): void => {
    if (row < 0 || column < 0) return;
    matrix[row * size + column] = (matrix[row * size + column] as number) + value;
  };
  for (let i = 0; i < nodeCount; i++) add(i, i, leastConductanceS);
  for (const { a, b, ohms } of network.resistors) {
    add(a - 1, a - 1, 1 / ohms);
    add(b - 1, b - 1, 1 / ohms);
    add(a - 1, b - 1, -1 / ohms);
    add(b - 1, a - 1, -1 / ohms);
  }
  const couple = (row: number, plus: NetNode, minus: NetNode): void => {
    add(row, plus - 1, 1);
    add(plus - 1, row, 1);
    add(row, minus - 1, -1);
    add(minus - 1, row, -1);
  };
  branches.forEach(({ a, b, ohms }, i) => {
    couple(nodeCount + i, a, b);
    add(nodeCount + i, nodeCount + i, -ohms);
  });
  voltageSources.forEach(({ plus, minus, volts }, i) => {
    const row = nodeCount + branches.length + i;
    couple(row, plus, minus);
    excitation[row] = volts;
  });
  for (const { from, to, amps } of network.currentSources) {
    if (from > 0) excitation[from - 1] = (excitation[from - 1] as number) - amps;
    if (to > 0) excitation[to - 1] = (excitation[to - 1] as number) + amps;
  }
  return { size, matrix, excitation };
}
