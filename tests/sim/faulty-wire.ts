import type { CircuitState, ProbePlace } from '#core/circuit/car-state.ts';
import { standingWire, typicalSupply } from '#core/circuit/circuit-network.ts';
import { handMeter } from '#core/circuit/default-meter-table.ts';
import { faultStrengths } from '#core/circuit/fault-strength.ts';
import { meterConnected, type TwoLeadReading } from '#core/circuit/metered-circuit.ts';
import { predictReading } from '#core/circuit/predict-reading.ts';
import { wireSeen } from '#core/circuit/usable-readings.ts';
import { layLadder, placesOnLadder } from '#core/circuit/wire-ladder.ts';
import type { FaultClass } from '#core/map/kinds.ts';
import type { Chance } from '#core/quantity/chance.ts';
import type { NodeId } from '#core/quantity/id.ts';
import { type BenchMeter, bell, drawBenchMeter } from './bench-meter.ts';
import { type DrawnCar, misreadShare, shorts } from './drawn-car.ts';
import { truthFigures } from './true-fault.ts';

/** What a wire with its fault really does; all figures judgement, no source, and not the program's own draws. */
const figures = {
  /** Faults that answer to a press or a tug, how often each try shows it, and how often anything else does. */
  looseShare: 0.45,
  looseShows: 0.75,
  /** Wire this near moves along: shows it so often. */
  besideMm: 150,
  besideShows: 0.25,
  elsewhereShows: 0.01,
  /** Loom against what is around it, picofarad per metre: median and spread (natural log), two parts of one run apart. */
  picofaradsPerMetre: 50,
  perMetreSpread: 0.35,
  unevenness: 0.1,
  /** Below this a meter beeps, least and most. */
  beepOhms: [20, 80],
} as const;

/** The searched wire as it really is, and every test that may be asked of it. */
export interface FaultyWire {
  readonly trueMm: number;
  /** Ohms the meter shows, or that it shows none. */
  readonly ohms: (reading: TwoLeadReading, state: CircuitState) => number | 'open-line';
  /** Millivolts at a current in; null where the fault does not let so much flow. */
  readonly millivolts: (reading: TwoLeadReading, state: CircuitState, amps: number) => number | null;
  readonly beeps: (reading: TwoLeadReading, state: CircuitState) => boolean;
  /** Picofarad at a lead; null where no figure holds still. */
  readonly picofarads: (at: ProbePlace, state: CircuitState) => number | null;
  readonly symptomStays: (apartNodeIds: readonly NodeId[]) => boolean;
  /** Whether pressing a stretch once changes what is watched. */
  readonly moves: (fromMm: number, toMm: number) => boolean;
}

/** Most a current-limited supply gives, in volt. */
const mostVolts = 12;

/**
 * Draws the place, the strength and the wire: copper between its least and the table's most, each run off
 * its drawn length as the car's runs are, plug contacts lognormal about 5 milliohm. One meter, wrong in
 * its own way, takes all readings.
 */
export function faultyWire(car: DrawnCar, chance: Chance): FaultyWire {
  const { map, line, circuit, kind } = car;
  const trueMm = drawStation(car, chance);
  const nodeIds = line.nodes.map(({ nodeId }) => nodeId);
  const ladder = layLadder(map, line, nodeIds);
  const copper = 0.906 + 0.094 * chance();
  const linkOhms = Float64Array.from(ladder.links, (link) =>
    link.kind === 'plug'
      ? 0.005 * Math.exp(0.8 * bell(chance))
      : link.ohms * copper * Math.max(0.7, 1 + truthFigures.lengthError * bell(chance)),
  );
  const wires = {
    mainId: circuit.id,
    main: { ...standingWire(ladder, circuit), linkOhms },
    other: null,
  };
  const faultOhms = drawOhms(kind, chance);
  const meter: BenchMeter = drawBenchMeter(handMeter, chance);
  const places = placesOnLadder(ladder, [trueMm]);
  const figure = (reading: TwoLeadReading, state: CircuitState): number => {
    const metered = meterConnected(wires, reading, state, typicalSupply);
    if (!metered) throw new Error('the leads sit on the wire');
    return predictReading(metered, kind, places, faultOhms)[0] as number;
  };
  const perMetre = figures.picofaradsPerMetre * Math.exp(figures.perMetreSpread * bell(chance));
  const isLoose = chance() < figures.looseShare;
  const watcherIsFirst = circuit.ends[0].kind === 'module-input-pull-up';
  return {
    trueMm,
    ohms: (reading, state) => {
      const shown = meter.show(handMeter.ohms, figure(reading, state) + meter.leadsOhms);
      return shown > handMeter.ohms.highest ? 'open-line' : Math.max(0, shown);
    },
    millivolts: (reading, state, amps) => {
      const flows = kind === 'short-to-ground' && (faultOhms + 1) * amps <= mostVolts;
      return flows ? meter.show(handMeter.millivolts, figure(reading, state)) : null;
    },
    beeps: (reading, state) => {
      const [least, most] = figures.beepOhms;
      return figure(reading, state) < least + (most - least) * chance();
    },
    picofarads: (at, state) => {
      const { seenMm: seenWith } = wireSeen(line, at, state);
      if (!seenWith || (shorts.includes(kind) && seenWith(trueMm) !== seenWith(null))) return null;
      const seenMm = seenWith(kind === 'open' ? trueMm : null);
      const value = (perMetre * (1 + figures.unevenness * bell(chance)) * seenMm) / 1000 + 3 * bell(chance);
      const scale = handMeter.capacitance;
      return scale ? Math.max(0, meter.show(scale, value)) : null;
    },
    symptomStays: (apartNodeIds) => {
      if (!shorts.includes(kind)) return true;
      const apartMm = line.nodes.flatMap((node) =>
        apartNodeIds.includes(node.nodeId) ? [node.stationMm] : [],
      );
      const cutMm = watcherIsFirst ? Math.min(...apartMm) : Math.max(...apartMm);
      const isWatched = watcherIsFirst ? trueMm < cutMm : trueMm > cutMm;
      return isWatched !== chance() < misreadShare;
    },
    moves: (fromMm, toMm) => {
      const awayMm = Math.max(0, fromMm - trueMm, trueMm - toMm);
      const { looseShows, besideShows, elsewhereShows, besideMm } = figures;
      const shows = !isLoose || awayMm > besideMm ? elsewhereShows : awayMm > 0 ? besideShows : looseShows;
      return chance() < shows;
    },
  };
}

function drawStation({ truth, field }: DrawnCar, chance: Chance): number {
  let left = chance();
  let cell = 0;
  while (cell < truth.length - 1 && left >= (truth[cell] as number)) left -= truth[cell++] as number;
  const [from, to] = [field.cellEdgesMm[cell] as number, field.cellEdgesMm[cell + 1] as number];
  return from + (to - from) * chance();
}

/** Resistance of a fault: as its kind is spread four times in five, else anything its kind can be. */
function drawOhms(kind: FaultClass, chance: Chance): number {
  const { leastOhms, mostOhms, density } = faultStrengths[kind];
  const isAny = chance() < 0.2;
  const top = 0.35;
  for (;;) {
    const ln = Math.log(leastOhms) + chance() * Math.log(mostOhms / leastOhms);
    if (isAny || chance() * top <= density(ln)) return Math.exp(ln);
  }
}
