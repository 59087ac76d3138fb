/**
 * Tests needed to single out one of N sections by halving: ceil(log2 N).
 * @example
 * halfSplitTests(6) // => 3
 */
export function halfSplitTests(sections: number): number {
  return sections <= 1 ? 0 : Math.ceil(Math.log2(sections));
}
