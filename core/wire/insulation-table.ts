/** Thickness class of a wire's insulation. */
export type WallClass = 'thin-wall' | 'thick-wall' | 'ultra-thin-wall';

/** Insulation of one conductor size in one class. */
export interface InsulationRow {
  readonly mm2: number;
  readonly nominalWallMm: number;
  readonly minimumWallMm: number;
  /** Largest outer diameter allowed. */
  readonly outerMm: number;
}

/** Rows rise by size. Minimum wall is 0.8 of nominal throughout. */
export const insulationTable: Readonly<Record<WallClass, readonly InsulationRow[]>> = {
  // A wire maker's published page for thin-wall ISO 6722 wire.
  'thin-wall': [
    { mm2: 0.22, nominalWallMm: 0.25, minimumWallMm: 0.2, outerMm: 1.2 },
    { mm2: 0.35, nominalWallMm: 0.25, minimumWallMm: 0.2, outerMm: 1.4 },
    { mm2: 0.5, nominalWallMm: 0.28, minimumWallMm: 0.22, outerMm: 1.6 },
    { mm2: 0.75, nominalWallMm: 0.3, minimumWallMm: 0.24, outerMm: 1.9 },
    { mm2: 1, nominalWallMm: 0.3, minimumWallMm: 0.24, outerMm: 2.1 },
    { mm2: 1.5, nominalWallMm: 0.3, minimumWallMm: 0.24, outerMm: 2.4 },
    { mm2: 2.5, nominalWallMm: 0.35, minimumWallMm: 0.28, outerMm: 3 },
    { mm2: 4, nominalWallMm: 0.4, minimumWallMm: 0.32, outerMm: 3.7 },
    { mm2: 6, nominalWallMm: 0.4, minimumWallMm: 0.32, outerMm: 4.3 },
  ],
  // The same maker's published page for thick-wall wire.
  'thick-wall': [
    { mm2: 0.5, nominalWallMm: 0.6, minimumWallMm: 0.48, outerMm: 2.3 },
    { mm2: 0.75, nominalWallMm: 0.6, minimumWallMm: 0.48, outerMm: 2.5 },
    { mm2: 1, nominalWallMm: 0.6, minimumWallMm: 0.48, outerMm: 2.7 },
    { mm2: 1.5, nominalWallMm: 0.6, minimumWallMm: 0.48, outerMm: 3 },
    { mm2: 2, nominalWallMm: 0.6, minimumWallMm: 0.48, outerMm: 3.3 },
    { mm2: 2.5, nominalWallMm: 0.7, minimumWallMm: 0.56, outerMm: 3.6 },
    { mm2: 3, nominalWallMm: 0.7, minimumWallMm: 0.56, outerMm: 4.1 },
    { mm2: 4, nominalWallMm: 0.8, minimumWallMm: 0.64, outerMm: 4.4 },
    { mm2: 6, nominalWallMm: 0.8, minimumWallMm: 0.64, outerMm: 5 },
    { mm2: 10, nominalWallMm: 1, minimumWallMm: 0.8, outerMm: 6.5 },
  ],
  // ISO 6722-1 ultra-thin wall, from memory: one wall for 0.13 to 0.5 mm2.
  'ultra-thin-wall': [
    { mm2: 0.13, nominalWallMm: 0.2, minimumWallMm: 0.16, outerMm: 1.05 },
    { mm2: 0.22, nominalWallMm: 0.2, minimumWallMm: 0.16, outerMm: 1.1 },
    { mm2: 0.35, nominalWallMm: 0.2, minimumWallMm: 0.16, outerMm: 1.2 },
    { mm2: 0.5, nominalWallMm: 0.2, minimumWallMm: 0.16, outerMm: 1.4 },
  ],
};
