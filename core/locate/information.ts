/**
 * Uncertainty of a list of probabilities, in bits: -sum p log2 p (Shannon 1948).
 * @example
 * entropyBits([0.5, 0.25, 0.25]) // => 1.5
 */
export function entropyBits(probability: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < probability.length; i++) {
    const p = probability[i] as number;
    if (p > 0) sum -= p * Math.log2(p);
  }
  return sum;
}

/**
 * What was learned by going from one belief to another, in bits: sum p log2(p / q) (Kullback and Leibler
 * 1951). Zero only when nothing changed.
 * @example
 * learnedBits([1, 0], [0.5, 0.5]) // => 1
 */
export function learnedBits(after: ArrayLike<number>, before: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < after.length; i++) {
    const p = after[i] as number;
    const q = before[i] as number;
    if (p > 0 && q > 0) sum += p * Math.log2(p / q);
  }
  return Math.max(0, sum);
}

/**
 * Information that a test is expected to give about the hypotheses, in bits: H(Y) - sum p H(Y|x)
 * (Lindley 1956). `chances[y][x]` is the probability of outcome y under hypothesis x; per hypothesis
 * they sum to one.
 * @example
 * expectedBits([0.4, 0.6], [[0.95, 0.05], [0.05, 0.95]]) // => 0.690104
 */
export function expectedBits(probability: ArrayLike<number>, chances: readonly ArrayLike<number>[]): number {
  let given = 0;
  const outcomes = chances.map((chance) => {
    let sum = 0;
    for (let i = 0; i < probability.length; i++) {
      const p = probability[i] as number;
      const c = chance[i] as number;
      sum += p * c;
      if (p > 0 && c > 0) given -= p * c * Math.log2(c);
    }
    return sum;
  });
  return Math.max(0, entropyBits(outcomes) - given);
}
