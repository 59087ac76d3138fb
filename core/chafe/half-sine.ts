/** Powers of (pi t)^2 in the series of the cosine: 1 / (2 n)!, n from 0 to 7. */
const [c0, c1, c2, c3, c4, c5, c6, c7] = [
  1,
  -1 / 2,
  1 / 24,
  -1 / 720,
  1 / 40_320,
  -1 / 3_628_800,
  1 / 479_001_600,
  -1 / 87_178_291_200,
] as const;

/**
 * Height of a half-sine at a share of its length: sin(pi share), 0 at and beyond its ends. By the series of the
 * cosine about the middle, within 1e-9: it is asked for at every place of every run.
 * @example
 * halfSine(0.5) // => 1
 */
export function halfSine(share: number): number {
  if (share <= 0 || share >= 1) return 0;
  const angle = Math.PI * (share - 0.5);
  const s = angle * angle;
  return c0 + s * (c1 + s * (c2 + s * (c3 + s * (c4 + s * (c5 + s * (c6 + s * c7))))));
}
