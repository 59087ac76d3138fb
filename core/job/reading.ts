import { z } from 'zod';
import { idSchema } from '../quantity/id.ts';

/** Where a meter lead sat: on the searched wire at a node, on the body, on battery positive, or on another circuit's wire. */
export const probeSchema = z.discriminatedUnion('on', [
  z.strictObject({
    on: z.literal('wire'),
    nodeId: idSchema('node'),
    circuitId: idSchema('circuit').optional(),
    /** Which half of a parted plug, seen along the circuit. Absent: the half that leads to the other lead. */
    side: z.enum(['first-end', 'second-end']).optional(),
  }),
  z.strictObject({ on: z.literal('body') }),
  z.strictObject({ on: z.literal('battery-positive') }),
]);
export type Probe = z.infer<typeof probeSchema>;

/** How the car stood while the reading was taken. */
export const carStateSchema = z.strictObject({
  /** Inline plugs apart and components unplugged. */
  apartNodeIds: z.array(idSchema('node')).max(50),
  switchClosed: z.boolean().nullable(),
  ignitionOn: z.boolean(),
  batteryConnected: z.boolean(),
});
export type CarState = z.infer<typeof carStateSchema>;

/** A stretch of one run, by drawn stations from the run's `fromNodeId` end. */
export const stretchSchema = z.strictObject({
  segmentId: idSchema('segment'),
  fromMm: z.number().min(0),
  toMm: z.number().min(0),
});
export type Stretch = z.infer<typeof stretchSchema>;

/** A number, or what the meter showed instead of one. */
const measured = (unit: z.ZodNumber) => z.union([unit, z.literal('open-line'), z.literal('over-range')]);

/** One test and what it showed. */
export const readingSchema = z.discriminatedUnion('test', [
  z.strictObject({
    test: z.literal('ohms'),
    from: probeSchema,
    to: probeSchema,
    ohms: measured(z.number().min(0)),
  }),
  z.strictObject({
    test: z.literal('beep'),
    from: probeSchema,
    to: probeSchema,
    beeps: z.boolean(),
  }),
  z.strictObject({
    test: z.literal('volts'),
    from: probeSchema,
    to: probeSchema,
    volts: z.number(),
  }),
  z.strictObject({
    test: z.literal('drop'),
    /** Current went in here, and left through the fault. */
    driven: probeSchema,
    sensed: probeSchema,
    currentA: z.number().positive().max(20),
    millivolts: z.number(),
  }),
  z.strictObject({
    test: z.literal('capacitance'),
    at: probeSchema,
    picofarads: z.number().min(0),
  }),
  z.strictObject({
    test: z.literal('symptom'),
    /** With the stated plugs apart, is the fault still there (lamp lit, fuse blows, code set)? */
    stays: z.boolean(),
  }),
  z.strictObject({
    test: z.literal('move'),
    stretches: z.array(stretchSchema).min(1).max(50),
    changed: z.number().int().min(0).max(10_000),
    tried: z.number().int().min(1).max(10_000),
  }),
  z.strictObject({
    test: z.literal('function'),
    works: z.boolean(),
    stretches: z.array(stretchSchema).max(50),
  }),
]);
export type Reading = z.infer<typeof readingSchema>;
