/**
 * Upper tail of the standard normal distribution, P(Z > z); the Chebyshev fit of erfc in Numerical
 * Recipes (from memory), relative error under 1.2e-7.
 * @example
 * normalTail(1.96).toFixed(5) // => '0.02500'
 */
export function normalTail(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.5 * x);
  const erfc = t * Math.exp(-x * x + erfcSeries(t));
  return z >= 0 ? erfc / 2 : 1 - erfc / 2;
}

/**
 * Natural logarithm of the same tail, without underflow far out.
 * @example
 * logNormalTail(0) // => Math.log(0.5)
 */
export function logNormalTail(z: number): number {
  if (z < 0) return Math.log(normalTail(z));
  const x = z / Math.SQRT2;
  const t = 1 / (1 + 0.5 * x);
  return Math.log(t / 2) - x * x + erfcSeries(t);
}

const coefficients = [
  -1.26551223, 1.00002368, 0.37409196, 0.09678418, -0.18628806, 0.27886807, -1.13520398, 1.48851587,
  -0.82215223, 0.17087277,
] as const;

function erfcSeries(t: number): number {
  let sum = 0;
  for (let k = coefficients.length - 1; k >= 0; k--) sum = sum * t + (coefficients[k] as number);
  return sum;
}

/**
 * The z below which a share of the standard normal distribution lies; Acklam's rational fit (from
 * memory), relative error under 1.2e-9. The share must lie strictly between 0 and 1.
 * @example
 * normalQuantile(0.975) // => 1.95996
 */
export function normalQuantile(share: number): number {
  if (share > 0.5) return -normalQuantile(1 - share);
  if (share < 0.02425) {
    const q = Math.sqrt(-2 * Math.log(share));
    const top =
      ((((-7.784894002430293e-3 * q - 0.3223964580411365) * q - 2.400758277161838) * q - 2.549732539343734) *
        q +
        4.374664141464968) *
        q +
      2.938163982698783;
    const bottom =
      (((7.784695709041462e-3 * q + 0.3224671290700398) * q + 2.445134137142996) * q + 3.754408661907416) *
        q +
      1;
    return top / bottom;
  }
  const q = share - 0.5;
  const r = q * q;
  const top =
    (((((-39.69683028665376 * r + 220.9460984245205) * r - 275.9285104469687) * r + 138.357751867269) * r -
      30.66479806614716) *
      r +
      2.506628277459239) *
    q;
  const bottom =
    ((((-54.47609879822406 * r + 161.5858368580409) * r - 155.6989798598866) * r + 66.80131188771972) * r -
      13.28068155288572) *
      r +
    1;
  return top / bottom;
}
