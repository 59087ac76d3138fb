import { handMeter } from '#core/circuit/default-meter-table.ts';
import { type MeterRecord, meterOf } from '#core/job/meter-record.ts';

/** A meter as its owner writes it down from the data sheet. */
export interface MeterDraft {
  readonly name: string;
  readonly ohmsStep: number;
  readonly ohmsPercent: number;
  readonly ohmsCounts: number;
  readonly fourWire: boolean;
  readonly leadOhms: number;
  readonly millivoltStep: number;
  readonly millivoltPercent: number;
  readonly millivoltCounts: number;
  readonly beepOhms: number | null;
  readonly capacitance: boolean;
}

/** Counts of an ordinary display, which set where the lowest range ends (common practice, no source). */
const displayCounts = 6_000;

/** A draft to start from: the meter given, or an ordinary hand meter without a name. */
export function meterDraft(record: MeterRecord | null): MeterDraft {
  const { ohms, millivolts, beepOhms, capacitance } = meterOf(record ?? undefined);
  return {
    name: record?.name ?? '',
    ohmsStep: ohms.finestStep,
    ohmsPercent: ohms.percent,
    ohmsCounts: ohms.counts,
    fourWire: ohms.fourWire,
    leadOhms: ohms.leadOhms,
    millivoltStep: millivolts.finestStep,
    millivoltPercent: millivolts.percent,
    millivoltCounts: millivolts.counts,
    beepOhms,
    capacitance: capacitance !== null,
  };
}

/** The record a draft stands for; what the owner is not asked for is as on an ordinary hand meter. */
export function meterOfDraft(draft: MeterDraft): MeterRecord {
  return {
    name: draft.name.trim(),
    ohms: {
      ...handMeter.ohms,
      percent: draft.ohmsPercent,
      counts: draft.ohmsCounts,
      finestStep: draft.ohmsStep,
      lowestTop: lowestTop(draft.ohmsStep),
      fourWire: draft.fourWire,
      leadOhms: draft.fourWire ? 0 : draft.leadOhms,
    },
    millivolts: {
      percent: draft.millivoltPercent,
      counts: draft.millivoltCounts,
      finestStep: draft.millivoltStep,
      lowestTop: lowestTop(draft.millivoltStep),
      highest: handMeter.millivolts.highest,
    },
    capacitance: draft.capacitance ? handMeter.capacitance : null,
    beepOhms: draft.beepOhms,
  };
}

const lowestTop = (step: number): number => Number((step * displayCounts).toPrecision(6));
