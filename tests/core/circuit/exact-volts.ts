import { all, type BigNumber, create } from 'mathjs';
import type { Network } from '#core/circuit/network.ts';
import { networkMatrix } from '#core/circuit/network-matrix.ts';

/** Left at its usual bound this arithmetic takes what is under 1e-15 for nothing: the currents through 1e-12 S are. */
const exact = create(all ?? {}, { number: 'BigNumber', precision: 60, relTol: 1e-55, absTol: 1e-55 });

/** Volts between two nodes of a network by LU decomposition in 60-digit arithmetic (mathjs BigNumber), and the highest of any node. */
export function exactVolts(
  network: Network,
  plus: number,
  minus: number,
): { readonly between: number; readonly highest: number } {
  const { size, matrix, excitation } = networkMatrix(network);
  const big = (values: Float64Array): BigNumber[] => Array.from(values, (value) => exact.bignumber(value));
  const rows = Array.from({ length: size }, (_, row) => big(matrix.subarray(row * size, (row + 1) * size)));
  const solved = exact.lusolve(rows, big(excitation)) as BigNumber[][];
  const volts = (node: number): BigNumber =>
    exact.bignumber(node === 0 ? 0 : (solved[node - 1]?.[0] as BigNumber));
  const heights = Array.from({ length: network.nodeCount }, (_, i) => Math.abs(Number(volts(i + 1))));
  return { between: Number(exact.subtract(volts(plus), volts(minus))), highest: Math.max(...heights) };
}
