import { betweenRows } from './between-rows.ts';
import { type ConductorRow, conductorTable } from './conductor-table.ts';
import { copper } from './copper.ts';

const ohmMm2 = (row: ConductorRow) => row.maximumOhmsPerMetreAt20 * row.mm2;

/**
 * Resistance of a stranded copper conductor in ohm per metre: ISO 6722-1 maximum at 20 C (from memory),
 * between the table's sizes by area, times 1 + 0.00393 (t - 20) (IEC 60028, from memory).
 * @example
 * conductorOhmsPerMetre(0.35) // => 0.0544
 */
export function conductorOhmsPerMetre(mm2: number, celsius = 20): number {
  return (betweenRows(conductorTable, mm2, ohmMm2) / mm2) * copperWarmthFactor(celsius);
}

/**
 * Resistance of copper at a temperature over that at 20 C (IEC 60028, from memory).
 * @example
 * copperWarmthFactor(60) // => 1.1572
 */
export function copperWarmthFactor(celsius: number): number {
  return 1 + copper.perKelvinAt20 * (celsius - 20);
}
