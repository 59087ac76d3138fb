import type { MachineSettings } from '../session/machine-settings.ts';

const mmPerInch = 25.4;

/** A drawn length in whole mm with the user's other unit after it. Input in mm. */
export function sayDrawnLength(
  mm: number,
  lengths: MachineSettings['lengths'],
): { readonly text: string; readonly unit: string } {
  const inMm = mm.toFixed(0);
  const inInches = (mm / mmPerInch).toFixed(1);
  return lengths === 'metric'
    ? { text: inMm, unit: `mm · ${inInches} in` }
    : { text: inInches, unit: `in · ${inMm} mm` };
}
