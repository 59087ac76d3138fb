/**
 * Wire ohms from end A to a short that was measured from both ends with the other end open:
 * (RA - RB + Rloop) / 2; the fault's own resistance cancels if it holds still. Plugs passed are part of
 * the answer. Follows from RA = r + Rf and RB = Rloop - r + Rf.
 * @example
 * twoEndedOhms({ fromA: 70.0624, fromB: 70.1456, endToEnd: 0.208 }) // => 0.0624
 */
export function twoEndedOhms(measured: {
  readonly fromA: number;
  readonly fromB: number;
  readonly endToEnd: number;
}): number {
  return (measured.fromA - measured.fromB + measured.endToEnd) / 2;
}
