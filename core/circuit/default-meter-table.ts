import type { Meter, MeterScale } from './meter.ts';

/**
 * Meters to start from until the user enters their own from its data sheet. Every figure is typical or
 * judgement: ohms +-(0.8 % + 2) with 0.1 ohm and a beep somewhere about 50 ohm as small hand meters'
 * manuals state; 0.1 mV and 1 milliohm ranges from memory.
 */
const volts: MeterScale = { percent: 0.5, counts: 2, finestStep: 0.001, lowestTop: 6, highest: 1_000 };
const millivolts: MeterScale = { percent: 0.5, counts: 2, finestStep: 0.1, lowestTop: 600, highest: 600 };
/** +-10 pF on 240 pF; small meters say nothing below 100 pF. */
const capacitance: MeterScale = { percent: 3, counts: 10, finestStep: 1, lowestTop: 10_000, highest: 1e8 };

export const handMeter: Meter = {
  name: 'Hand meter, 0.1 ohm',
  ohms: {
    percent: 0.8,
    counts: 2,
    finestStep: 0.1,
    lowestTop: 600,
    highest: 6e6,
    fourWire: false,
    leadOhms: 0,
  },
  volts,
  millivolts,
  capacitance,
  beepOhms: null,
};

export const fineHandMeter: Meter = {
  name: 'Hand meter, 0.01 ohm',
  ohms: { ...handMeter.ohms, percent: 0.5, finestStep: 0.01, lowestTop: 60 },
  volts: { ...volts, percent: 0.1 },
  millivolts: { ...millivolts, percent: 0.1, finestStep: 0.01, lowestTop: 60 },
  capacitance: { ...capacitance, percent: 2, counts: 5 },
  beepOhms: null,
};

export const fourWireMeter: Meter = {
  name: 'Four-lead milliohm meter',
  ohms: {
    percent: 0.2,
    counts: 2,
    finestStep: 0.001,
    lowestTop: 2,
    highest: 2_000,
    fourWire: true,
    leadOhms: 0,
  },
  volts,
  millivolts,
  capacitance: null,
  beepOhms: null,
};

export const defaultMeters: readonly Meter[] = [handMeter, fineHandMeter, fourWireMeter];
