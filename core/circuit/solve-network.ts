import { invertMatrix } from './invert-matrix.ts';
import type { NetNode, Network } from './network.ts';
import { floatingIslands } from './network-islands.ts';
import { networkMatrix } from './network-matrix.ts';
import { refinedSolution, rowTimes } from './refined-solution.ts';

/** What a network's direct-current solution can be. */
export type NetworkAnswer =
  | {
      readonly outcome: 'solved';
      /** Volts above the body, by node; entry 0 is the body. */
      readonly volts: Float64Array;
      /** Current through each branch from a to b, in ampere. */
      readonly branchAmps: Float64Array;
      /** Current into the plus pole of each voltage source, in ampere. */
      readonly sourceAmps: Float64Array;
      /** Largest left-over of any equation, against the largest term in it: rounding only, under 1e-9. */
      readonly residual: number;
    }
  | { readonly outcome: 'floating'; readonly islands: readonly (readonly NetNode[])[] }
  /** Two ideal sources contradict each other. */
  | { readonly outcome: 'contradiction' };

/**
 * Direct-current solution of a network by modified nodal analysis. Parts that nothing ties to the body
 * are found by graph search before any arithmetic and reported, never given a voltage. O(n^3).
 * @example
 * solveNetwork({ ...emptyNetwork, nodeCount: 2, resistors: [{ a: 1, b: 2, ohms: 1000 }, { a: 2, b: 0, ohms: 70 }], voltageSources: [{ plus: 1, minus: 0, volts: 5 }] }).volts[2] // => 0.327103
 */
export function solveNetwork(network: Network): NetworkAnswer {
  const islands = floatingIslands(network);
  if (islands.length > 0) return { outcome: 'floating', islands };
  const { size, matrix, excitation } = networkMatrix(network);
  const inverse = invertMatrix(matrix, size);
  if (!inverse) return { outcome: 'contradiction' };
  const solution = refinedSolution(matrix, inverse, excitation);
  const volts = new Float64Array(network.nodeCount + 1);
  volts.set(solution.subarray(0, network.nodeCount), 1);
  const firstSource = network.nodeCount + network.branches.length;
  return {
    outcome: 'solved',
    volts,
    branchAmps: solution.slice(network.nodeCount, firstSource),
    sourceAmps: solution.slice(firstSource),
    residual: relativeResidual(matrix, solution, excitation),
  };
}

function relativeResidual(matrix: Float64Array, solution: Float64Array, excitation: Float64Array): number {
  const size = solution.length;
  let worst = 0;
  for (let row = 0; row < size; row++) {
    let largest = Math.abs(excitation[row] as number);
    for (let k = 0; k < size; k++)
      largest = Math.max(largest, Math.abs((matrix[row * size + k] as number) * (solution[k] as number)));
    const left = Math.abs((excitation[row] as number) - rowTimes(matrix, row, solution));
    if (largest > 0) worst = Math.max(worst, left / largest);
  }
  return worst;
}
