import { z } from 'zod';
import { handMeter } from '../circuit/default-meter-table.ts';
import type { Meter } from '../circuit/meter.ts';

const scale = {
  percent: z.number().min(0).max(100),
  counts: z.number().min(0).max(1_000),
  finestStep: z.number().positive(),
  lowestTop: z.number().positive(),
  highest: z.number().positive(),
};

/** The meter of a reading, as far as it is known; a function left out is an ordinary hand meter's. */
export const meterSchema = z.strictObject({
  name: z.string().min(1).max(80),
  ohms: z
    .strictObject({
      ...scale,
      fourWire: z.boolean(),
      leadOhms: z.number().min(0).max(10),
      leadSpreadOhms: z.number().min(0).max(10).optional(),
    })
    .optional(),
  volts: z.strictObject(scale).optional(),
  millivolts: z.strictObject(scale).optional(),
  /** Null: has none. */
  capacitance: z.strictObject(scale).nullable().optional(),
  /** Null: nobody knows. */
  beepOhms: z.number().positive().nullable().optional(),
});
export type MeterRecord = z.infer<typeof meterSchema>;

/**
 * The whole meter behind a record.
 * @example
 * meterOf({ name: 'Bench', beepOhms: 30 }).beepOhms // => 30
 */
export function meterOf(record: MeterRecord | undefined): Meter {
  if (!record) return handMeter;
  return {
    name: record.name,
    ohms: record.ohms ?? handMeter.ohms,
    volts: record.volts ?? handMeter.volts,
    millivolts: record.millivolts ?? handMeter.millivolts,
    capacitance: record.capacitance === undefined ? handMeter.capacitance : record.capacitance,
    beepOhms: record.beepOhms ?? null,
  };
}
