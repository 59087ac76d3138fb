/**
 * The sum of many numbers with the running error carried along (Neumaier's form of Kahan summation),
 * so that a long list of small cells adds up to one and not to 0.9999999.
 * @example
 * compensatedSum([1, 1e100, 1, -1e100]) // => 2
 */
export function compensatedSum(values: Iterable<number>): number {
  let sum = 0;
  let lost = 0;
  // By place: going through a long typed list with an iterator takes several times as long.
  const list = values instanceof Float64Array ? values : Array.from(values);
  for (let i = 0; i < list.length; i++) {
    const value = list[i] as number;
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return sum + lost;
}

/**
 * log(sum(exp(values))) without overflow; minus infinity for an empty list or only impossible terms.
 * @example
 * logSumExp([Math.log(0.25), Math.log(0.75)]) // => 0
 */
export function logSumExp(values: ArrayLike<number>): number {
  let largest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i++) largest = Math.max(largest, values[i] as number);
  if (largest === Number.NEGATIVE_INFINITY) return largest;
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += Math.exp((values[i] as number) - largest);
  return largest + Math.log(sum);
}
