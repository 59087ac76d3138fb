import { defaultMeters, handMeter } from '#core/circuit/default-meter-table.ts';
import { type MeterRecord, meterOf } from '#core/job/meter-record.ts';
import { parseFigure, plainFigure } from './parse-figure.ts';

/** The figures of a meter that its owner writes down, with the least and the most that is believed of each. */
export const meterFigures = {
  ohmsStep: { least: 0.0001, most: 10 },
  ohmsPercent: { least: 0, most: 20 },
  ohmsCounts: { least: 0, most: 100 },
  millivoltStep: { least: 0.0001, most: 100 },
  millivoltPercent: { least: 0, most: 20 },
  millivoltCounts: { least: 0, most: 100 },
  leadOhms: { least: 0, most: 10 },
  beepOhms: { least: 0.1, most: 10_000 },
} as const;
export type MeterFigure = keyof typeof meterFigures;

/** A meter as its owner writes it down from the data sheet: figures as typed. */
export interface MeterDraft {
  readonly name: string;
  readonly figures: Readonly<Record<MeterFigure, string>>;
  readonly fourWire: boolean;
  readonly capacitance: boolean;
}

/** What keeps a draft from being a meter. */
export type MeterTrouble =
  | { readonly at: 'name'; readonly why: 'missing' | 'taken' }
  | { readonly at: MeterFigure; readonly why: 'not-a-figure' | 'out-of-bounds' };

export type MeterAnswer =
  | { readonly ok: true; readonly meter: MeterRecord }
  | { readonly ok: false; readonly troubles: readonly MeterTrouble[] };

/** Counts of an ordinary display, which set where the lowest range ends (common practice, no source). */
const displayCounts = 6_000;

/** A draft to start from: the meter given, or an ordinary hand meter without a name. */
export function meterDraft(record: MeterRecord | null): MeterDraft {
  const { ohms, millivolts, beepOhms, capacitance } = meterOf(record ?? undefined);
  return {
    name: record?.name ?? '',
    figures: {
      ohmsStep: plainFigure(ohms.finestStep),
      ohmsPercent: plainFigure(ohms.percent),
      ohmsCounts: plainFigure(ohms.counts),
      millivoltStep: plainFigure(millivolts.finestStep),
      millivoltPercent: plainFigure(millivolts.percent),
      millivoltCounts: plainFigure(millivolts.counts),
      leadOhms: plainFigure(ohms.leadOhms),
      beepOhms: beepOhms === null ? '' : plainFigure(beepOhms),
    },
    fourWire: ohms.fourWire,
    capacitance: capacitance !== null,
  };
}

/**
 * The record a draft stands for, or everything that keeps it from being one. What the owner is not asked
 * for stays as it was, or is as on an ordinary hand meter.
 */
export function meterOfDraft(
  draft: MeterDraft,
  before: MeterRecord | null,
  otherNames: readonly string[],
): MeterAnswer {
  const name = draft.name.trim();
  const troubles: MeterTrouble[] = [];
  if (name === '') troubles.push({ at: 'name', why: 'missing' });
  else if ([...otherNames, ...defaultMeters.map((meter) => meter.name)].includes(name))
    troubles.push({ at: 'name', why: 'taken' });
  const figure = (key: MeterFigure): number => {
    const typed = typedFigure(draft.figures[key]);
    const { least, most } = meterFigures[key];
    if (typed === null) troubles.push({ at: key, why: 'not-a-figure' });
    else if (typed < least || typed > most) troubles.push({ at: key, why: 'out-of-bounds' });
    return typed ?? least;
  };
  const ohmsStep = figure('ohmsStep');
  const millivoltStep = figure('millivoltStep');
  const was = meterOf(before ?? undefined);
  const meter: MeterRecord = {
    ...before,
    name,
    ohms: {
      ...was.ohms,
      percent: figure('ohmsPercent'),
      counts: figure('ohmsCounts'),
      finestStep: ohmsStep,
      lowestTop: lowestTop(ohmsStep, was.ohms),
      fourWire: draft.fourWire,
      // Four leads add nothing, whatever stands in the field that is then not shown.
      leadOhms: draft.fourWire ? 0 : figure('leadOhms'),
    },
    millivolts: {
      ...was.millivolts,
      percent: figure('millivoltPercent'),
      counts: figure('millivoltCounts'),
      finestStep: millivoltStep,
      lowestTop: lowestTop(millivoltStep, was.millivolts),
    },
    capacitance: draft.capacitance ? (was.capacitance ?? handMeter.capacitance) : null,
    beepOhms: draft.figures.beepOhms.trim() === '' ? null : figure('beepOhms'),
  };
  return troubles.length > 0 ? { ok: false, troubles } : { ok: true, meter };
}

/** The figure without a unit that was typed; null when it is none. */
function typedFigure(text: string): number | null {
  const plain = /^[\d.,\s+-]*$/.test(text) ? parseFigure(text, 'ohm') : null;
  return plain?.kind === 'figure' ? plain.value : null;
}

/** Where the lowest range ends: as before while its last digit is the same, never above what the meter reads at all. */
function lowestTop(
  step: number,
  was: { readonly finestStep: number; readonly lowestTop: number; readonly highest: number },
): number {
  if (step === was.finestStep) return was.lowestTop;
  return Math.min(was.highest, Number((step * displayCounts).toPrecision(6)));
}
