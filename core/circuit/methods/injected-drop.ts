/**
 * Wire ohms from the driven end to the fault: volts between driven and far end over the current. The
 * far end carries nothing and so is a lead at the fault's own potential; the fault's resistance cancels.
 * (Ohm's law; the fall-of-potential test of cable practice, from memory.)
 * @example
 * injectedDrop({ volts: 0.00866, amps: 0.1 }) // => 0.0866
 */
export function injectedDrop(measured: { readonly volts: number; readonly amps: number }): number {
  return measured.volts / measured.amps;
}

/**
 * Share of the wire's ohms that lies before the fault, from a drop at each end: wire size and
 * temperature cancel as well.
 * @example
 * injectedDropShare({ volts: 0.00866, amps: 0.1 }, { volts: 0.0141, amps: 0.1 }) // => 0.380492
 */
export function injectedDropShare(
  fromA: { readonly volts: number; readonly amps: number },
  fromB: { readonly volts: number; readonly amps: number },
): number {
  const a = injectedDrop(fromA);
  return a / (a + injectedDrop(fromB));
}
