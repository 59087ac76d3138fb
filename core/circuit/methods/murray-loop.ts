/**
 * Murray's loop: ohms from the test end to the fault along the bad wire, with a good wire joined at the
 * far end and the bridge balanced at arms A (next the fault) to B: Rloop A / (A + B). The fault's
 * resistance lies in the battery's branch and cancels. (Hawkins Electrical Guide vol. 3.)
 * @example
 * murrayLoop({ loop: 54.07, armA: 332, armB: 668 }) // => 17.9512
 */
export function murrayLoop(bridge: {
  readonly loop: number;
  readonly armA: number;
  readonly armB: number;
}): number {
  return (bridge.loop * bridge.armA) / (bridge.armA + bridge.armB);
}
