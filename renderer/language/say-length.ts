/** Units a person measures the loom in. */
export const lengthSystems = ['metric', 'imperial'] as const;
export type LengthSystem = (typeof lengthSystems)[number];

export const mmPerInch = 25.4;

/** What a tape along the loom counts in: one unit for every distance in sight, however far. */
export const tapeUnits = {
  metric: { mm: 1000, unit: 'm' },
  imperial: { mm: mmPerInch, unit: 'in' },
} as const satisfies Readonly<Record<LengthSystem, { readonly mm: number; readonly unit: string }>>;

/** A length as a figure and its unit. */
export interface SaidLength {
  readonly value: string;
  readonly unit: string;
}

/**
 * A distance along the loom for a person with a tape: metres to the centimetre, or inches to the tenth.
 * No tape is marked in decimal feet. Input in mm.
 */
export function sayDistance(mm: number, lengths: LengthSystem): SaidLength {
  const tape = tapeUnits[lengths];
  return { value: (mm / tape.mm).toFixed(lengths === 'metric' ? 2 : 1), unit: tape.unit };
}

/** Two ends of a stretch in one unit: "0.86 to 1.31 m". Input in mm. */
export function sayStretch(
  nearMm: number,
  farMm: number,
  lengths: LengthSystem,
): { readonly near: string; readonly far: string; readonly unit: string } {
  const far = sayDistance(farMm, lengths);
  return { near: sayDistance(nearMm, lengths).value, far: far.value, unit: far.unit };
}

/** A small size such as a gap or a clearance: whole mm, or inches to two places. Input in mm. */
export function saySmallLength(mm: number, lengths: LengthSystem): SaidLength {
  return lengths === 'metric'
    ? { value: mm.toFixed(0), unit: 'mm' }
    : { value: (mm / mmPerInch).toFixed(2), unit: 'in' };
}
