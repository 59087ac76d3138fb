/**
 * Varley's loop: ohms to the fault from two balances with arms P, Q and a set resistance, first against
 * the loop (Rloop = P/Q S2), then against earth: (Q Rloop - P S1) / (P + Q). (Classical loop test; Bell
 * Laboratories, Bridge Methods for Locating Resistance Faults, 1931.)
 * @example
 * varleyLoop({ armP: 15, armQ: 40, setForLoop: 20, setForEarth: 10 }) // => { loop: 7.5, ohmsToFault: 2.72727 }
 */
export function varleyLoop(bridge: {
  readonly armP: number;
  readonly armQ: number;
  readonly setForLoop: number;
  readonly setForEarth: number;
}): { readonly loop: number; readonly ohmsToFault: number } {
  const { armP, armQ } = bridge;
  const loop = (armP / armQ) * bridge.setForLoop;
  return { loop, ohmsToFault: (armQ * loop - armP * bridge.setForEarth) / (armP + armQ) };
}
