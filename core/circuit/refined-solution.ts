/**
 * Solution of A x = w from the inverse of A, with one step of refinement: the residual is solved for once
 * more, which takes rounding out of stiff equations (Golub and Van Loan, Matrix Computations, from memory).
 * O(n^2).
 * @example
 * refinedSolution(Float64Array.of(2, 0, 0, 4), Float64Array.of(0.5, 0, 0, 0.25), Float64Array.of(1, 2)) // => Float64Array.of(0.5, 0.5)
 */
export function refinedSolution(
  matrix: Float64Array,
  inverse: Float64Array,
  excitation: Float64Array,
): Float64Array {
  const solution = excitation.map((_, row) => rowTimes(inverse, row, excitation));
  const left = excitation.map((value, row) => value - rowTimes(matrix, row, solution));
  return solution.map((value, row) => value + rowTimes(inverse, row, left));
}

/**
 * One row of a square matrix times a vector.
 * @example
 * rowTimes(Float64Array.of(1, 2, 3, 4), 1, Float64Array.of(10, 1)) // => 34
 */
export function rowTimes(matrix: Float64Array, row: number, vector: Float64Array): number {
  const size = vector.length;
  let sum = 0;
  for (let k = 0; k < size; k++) sum += (matrix[row * size + k] as number) * (vector[k] as number);
  return sum;
}
