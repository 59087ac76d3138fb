/** Units a person measures the loom in. */
export const lengthSystems = ['metric', 'imperial'] as const;
export type LengthSystem = (typeof lengthSystems)[number];

export const mmPerInch = 25.4;
const inchesPerFoot = 12;
export const mmPerFoot = mmPerInch * inchesPerFoot;

/** A length as a figure and its unit. */
export interface SaidLength {
  readonly value: string;
  readonly unit: string;
}

/**
 * A distance along the loom for a person with a tape: metres to the centimetre, or feet and inches as
 * decimal inches under a yard and feet to two places above. Input in mm.
 */
export function sayDistance(mm: number, lengths: LengthSystem): SaidLength {
  if (lengths === 'metric') return { value: (mm / 1000).toFixed(2), unit: 'm' };
  const inches = mm / mmPerInch;
  if (Math.abs(inches) < 36) return { value: inches.toFixed(1), unit: 'in' };
  return { value: (inches / inchesPerFoot).toFixed(2), unit: 'ft' };
}

/** Two ends of a stretch in one unit, chosen by the farther one: "0.86 to 1.31 m". Input in mm. */
export function sayStretch(
  nearMm: number,
  farMm: number,
  lengths: LengthSystem,
): { readonly near: string; readonly far: string; readonly unit: string } {
  const far = sayDistance(farMm, lengths);
  if (far.unit === 'ft') {
    return { near: (nearMm / mmPerFoot).toFixed(2), far: far.value, unit: 'ft' };
  }
  return { near: sayDistance(nearMm, lengths).value, far: far.value, unit: far.unit };
}

/** A small size such as a gap or a clearance: whole mm, or inches to two places. Input in mm. */
export function saySmallLength(mm: number, lengths: LengthSystem): SaidLength {
  return lengths === 'metric'
    ? { value: mm.toFixed(0), unit: 'mm' }
    : { value: (mm / mmPerInch).toFixed(2), unit: 'in' };
}
