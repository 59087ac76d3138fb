import { accuracyLimit, type Meter, type MeterScale, stepAt } from '#core/circuit/meter.ts';
import type { Chance } from '#core/quantity/chance.ts';

/** A standard normal (Box and Muller 1958, from memory). */
export const bell = (chance: Chance): number =>
  Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());

/** One real meter: what it adds to every figure is its own and stays so for as long as it is used. */
export interface BenchMeter {
  /** What a scale shows of a true figure, its last digit rounded. */
  readonly show: (scale: MeterScale, value: number) => number;
  /** What the two leads add in ohm; may be less than nothing after nulling. */
  readonly leadsOhms: number;
}

/**
 * A meter off by a fixed share of what its maker allows, each function by its own (rectangular, +- the
 * whole allowance), with leads off by 0.05 ohm (normal) for good.
 */
export function drawBenchMeter(meter: Meter, chance: Chance): BenchMeter {
  const shares = new Map<MeterScale, number>();
  for (const scale of [meter.ohms, meter.volts, meter.millivolts, meter.capacitance])
    if (scale) shares.set(scale, 2 * chance() - 1);
  return {
    show: (scale, value) => shownFigure(scale, value, shares.get(scale) ?? 0),
    leadsOhms: meter.ohms.fourWire ? 0 : 0.05 * bell(chance),
  };
}

/** A figure off by a share (-1 to 1) of what the maker allows and rounded to the last digit. */
export function shownFigure(scale: MeterScale, value: number, share: number): number {
  const off = value + accuracyLimit(scale, value) * share;
  const step = stepAt(scale, off);
  return Math.round(off / step) * step;
}
