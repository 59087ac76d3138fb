/** One size of stranded automotive conductor. */
export interface ConductorRow {
  readonly mm2: number;
  readonly strands: number;
  readonly strandMm: number;
  readonly diameterMm: number;
  readonly maximumOhmsPerMetreAt20: number;
}

/**
 * Strands and diameters to 6 mm2: a wire maker's published page for thin-wall ISO 6722 wire.
 * Resistance: ISO 6722-1 maximum at 20 C, from memory. 10 mm2 and up: strands from memory.
 */
export const conductorTable: readonly ConductorRow[] = [
  { mm2: 0.22, strands: 7, strandMm: 0.2, diameterMm: 0.7, maximumOhmsPerMetreAt20: 0.0848 },
  { mm2: 0.35, strands: 12, strandMm: 0.2, diameterMm: 0.8, maximumOhmsPerMetreAt20: 0.0544 },
  { mm2: 0.5, strands: 16, strandMm: 0.2, diameterMm: 1.0, maximumOhmsPerMetreAt20: 0.0371 },
  { mm2: 0.75, strands: 24, strandMm: 0.2, diameterMm: 1.2, maximumOhmsPerMetreAt20: 0.0247 },
  { mm2: 1, strands: 32, strandMm: 0.2, diameterMm: 1.3, maximumOhmsPerMetreAt20: 0.0185 },
  { mm2: 1.5, strands: 30, strandMm: 0.25, diameterMm: 1.6, maximumOhmsPerMetreAt20: 0.0127 },
  { mm2: 2.5, strands: 50, strandMm: 0.25, diameterMm: 2.1, maximumOhmsPerMetreAt20: 0.0076 },
  { mm2: 4, strands: 56, strandMm: 0.3, diameterMm: 2.6, maximumOhmsPerMetreAt20: 0.00471 },
  { mm2: 6, strands: 84, strandMm: 0.3, diameterMm: 3.2, maximumOhmsPerMetreAt20: 0.00314 },
  { mm2: 10, strands: 80, strandMm: 0.4, diameterMm: 4.5, maximumOhmsPerMetreAt20: 0.00182 },
];
