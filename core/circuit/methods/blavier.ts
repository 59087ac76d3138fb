/** What a one-ended test of an earthed wire gives. */
export interface OneEndedFault {
  readonly ohmsToFault: number;
  readonly faultOhms: number;
}

/**
 * Blavier's one-ended test (from memory of telegraph practice): resistance to earth with the far end
 * open, then earthed, and the sound conductor's resistance. ohmsToFault = R2 - sqrt((R1 - R2)(L - R2)).
 * Null when the figures fit no fault on the wire.
 * @example
 * blavier({ farEndOpen: 5.5, farEndEarthed: 4.6666666667, conductor: 8 }).ohmsToFault.toFixed(6) // => '3.000000'
 */
export function blavier(measured: {
  readonly farEndOpen: number;
  readonly farEndEarthed: number;
  readonly conductor: number;
}): OneEndedFault | null {
  const { farEndOpen, farEndEarthed, conductor } = measured;
  const square = (farEndOpen - farEndEarthed) * (conductor - farEndEarthed);
  if (!(square >= 0)) return null;
  const ohmsToFault = farEndEarthed - Math.sqrt(square);
  const faultOhms = farEndOpen - ohmsToFault;
  return ohmsToFault >= 0 && faultOhms >= 0 ? { ohmsToFault, faultOhms } : null;
}

/**
 * The same place from one open-ended reading at each end and, at end A, one with the far end shorted to
 * the return: Rf = sqrt((RA - shorted) RB). (A worked cable-fault problem with loop resistances.)
 * @example
 * shortedFarEnd({ fromA: 4, fromB: 8, fromAShorted: 3.5 }) // => { ohmsToFault: 2, faultOhms: 2 }
 */
export function shortedFarEnd(measured: {
  readonly fromA: number;
  readonly fromB: number;
  readonly fromAShorted: number;
}): OneEndedFault | null {
  const square = (measured.fromA - measured.fromAShorted) * measured.fromB;
  if (!(square >= 0)) return null;
  const faultOhms = Math.sqrt(square);
  return { ohmsToFault: measured.fromA - faultOhms, faultOhms };
}
