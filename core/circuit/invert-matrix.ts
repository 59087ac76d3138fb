/**
 * The inverse of a square matrix (row by row, n x n) by Gauss-Jordan elimination with row exchange;
 * null when a pivot is exactly zero. O(n^3), for n to about 60.
 * @example
 * invertMatrix(Float64Array.of(2, 1, 1, 1), 2) // => Float64Array.of(1, -1, -1, 2)
 */
export function invertMatrix(matrix: Float64Array, n: number): Float64Array | null {
  const left = Float64Array.from(matrix);
  const right = new Float64Array(n * n);
  for (let i = 0; i < n; i++) right[i * n + i] = 1;
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let row = column + 1; row < n; row++) {
      if (Math.abs(left[row * n + column] as number) > Math.abs(left[pivot * n + column] as number))
        pivot = row;
    }
    const size = left[pivot * n + column] as number;
    if (size === 0) return null;
    if (pivot !== column) {
      exchangeRows(left, n, pivot, column);
      exchangeRows(right, n, pivot, column);
    }
    const own = column * n;
    const scale = 1 / size;
    for (let k = 0; k < n; k++) {
      left[own + k] = (left[own + k] as number) * scale;
      right[own + k] = (right[own + k] as number) * scale;
    }
    for (let row = 0; row < n; row++) {
      const factor = left[row * n + column] as number;
      if (row === column || factor === 0) continue;
      const start = row * n;
      for (let k = column; k < n; k++)
        left[start + k] = (left[start + k] as number) - factor * (left[own + k] as number);
      for (let k = 0; k < n; k++)
        right[start + k] = (right[start + k] as number) - factor * (right[own + k] as number);
    }
  }
  return right;
}

function exchangeRows(matrix: Float64Array, n: number, first: number, second: number): void {
  for (let k = 0; k < n; k++) {
    const kept = matrix[first * n + k] as number;
    matrix[first * n + k] = matrix[second * n + k] as number;
    matrix[second * n + k] = kept;
  }
}
