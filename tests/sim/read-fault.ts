import { bareState, standingWire, typicalSupply, withEndsApart } from '#core/circuit/circuit-network.ts';
import { fourWireMeter, handMeter } from '#core/circuit/default-meter-table.ts';
import { faultStrengths } from '#core/circuit/fault-strength.ts';
import type { Meter, MeterScale } from '#core/circuit/meter.ts';
import { meterConnected, type TwoLeadReading } from '#core/circuit/metered-circuit.ts';
import { predictReading } from '#core/circuit/predict-reading.ts';
import type { TakenReading } from '#core/circuit/usable-readings.ts';
import { layLadder, placesOnLadder, type WireKnowledge } from '#core/circuit/wire-ladder.ts';
import type { Chance } from '#core/quantity/chance.ts';
import { conductorOhmsPerMetre } from '#core/wire/conductor-resistance.ts';
import { straightWire } from '#tests/core/circuit/four-metre-wire.ts';
import { bell, shownFigure } from './bench-meter.ts';

/** One fault that really is somewhere, and what the meter showed of it. */
export interface ReadFault {
  readonly map: ReturnType<typeof straightWire>['map'];
  readonly line: ReturnType<typeof straightWire>['line'];
  readonly trueMm: number;
  readonly taken: readonly TakenReading[];
  /** What was measured of the wire beforehand. */
  readonly knowledge: WireKnowledge;
}

/** Ways of going about it that a technician has. */
export const ways = [
  'drop from both ends, wire and plugs measured',
  'drop from both ends',
  'drop from one end',
  'four-lead ohms',
  'hand meter ohms',
] as const;
export type Way = (typeof ways)[number];

/**
 * What the car really has, drawn apart from the program's own draws: copper between its least and the
 * table's most, each run off its drawn length by as much as `runLengthSpread` (rectangular, +-), plug contacts
 * lognormal about 5 milliohm, the fault's resistance as faults are.
 */
export function readFault(way: Way, chance: Chance, runLengthSpread: number): ReadFault {
  const lengthMm = 2_000 + 6_000 * chance();
  const plugCount = Math.floor(chance() * 3);
  const plugsMm = Array.from({ length: plugCount }, () => lengthMm * (0.1 + 0.8 * chance())).sort(
    (a, b) => a - b,
  );
  // A loom branches every metre or so, and each run between is drawn by itself.
  const runs = Math.max(1, Math.round(lengthMm / (600 + 800 * chance())));
  const branchesMm = Array.from({ length: runs - 1 }, (_, i) => ((i + 1) * lengthMm) / runs).filter((mm) =>
    plugsMm.every((plugMm) => Math.abs(plugMm - mm) > 20),
  );
  const { map, line } = straightWire({ lengthMm, plugsMm, branchesMm, mm2: chance() < 0.5 ? 0.35 : 0.75 });
  // Every node a rung of its own, so that each run has its own true length.
  const ladder = layLadder(
    map,
    line,
    line.nodes.map(({ nodeId }) => nodeId),
  );
  const isMeasured = way.endsWith('measured');
  const perMetre = conductorOhmsPerMetre(line.circuit.conductorMm2);
  // Measured: known to 1 percent instead of to what the table allows.
  const copper = isMeasured ? 0.953 * (1 + 0.01 * bell(chance)) : 0.906 + 0.094 * chance();
  const off = isMeasured ? 0 : runLengthSpread;
  const wire = standingWire(ladder, line.circuit);
  const linkOhms = Float64Array.from(ladder.links, (link) =>
    link.kind === 'plug'
      ? 0.005 * Math.exp(0.8 * bell(chance))
      : link.ohms * copper * (1 + off * (2 * chance() - 1)),
  );
  const wires = { mainId: line.circuit.id, main: { ...wire, linkOhms }, other: null };
  const trueMm = lengthMm * chance();
  const faultOhms = drawStrength(way, chance);
  const state = withEndsApart(bareState, line.circuit.ends);
  const places = placesOnLadder(ladder, [trueMm]);
  const meter = way === 'four-lead ohms' ? fourWireMeter : handMeter;
  const show = (reading: TwoLeadReading, scale: MeterScale, leads: number): number => {
    const metered = meterConnected(wires, reading, state, typicalSupply);
    if (!metered) throw new Error('the leads sit on the wire');
    const true_ = predictReading(metered, 'short-to-ground', places, faultOhms)[0] as number;
    return shownFigure(scale, true_ + leads * bell(chance), 2 * chance() - 1);
  };
  const module = { on: 'wire', nodeId: 'node:module' } as const;
  const far = { on: 'wire', nodeId: 'node:switch' } as const;
  const drop = (driven: typeof module | typeof far, sensed: typeof module | typeof far): TakenReading => {
    const reading = { test: 'drop', driven, sensed, currentA: 0.1, millivolts: 1 } as const;
    return taken({ ...reading, millivolts: show(reading, meter.millivolts, 0) }, meter);
  };
  const ohms = (from: typeof module | typeof far): TakenReading => {
    const reading = { test: 'ohms', from, to: { on: 'body' }, ohms: 1 } as const;
    const leads = meter.ohms.fourWire ? 0 : 0.05;
    return taken({ ...reading, ohms: Math.max(0, show(reading, meter.ohms, leads)) }, meter);
  };
  const taken = (reading: TwoLeadReading, by: Meter): TakenReading => ({ reading, state, meter: by });
  const all = {
    'drop from both ends, wire and plugs measured': () => [drop(module, far), drop(far, module)],
    'drop from both ends': () => [drop(module, far), drop(far, module)],
    'drop from one end': () => [drop(module, far)],
    'four-lead ohms': () => [ohms(module), ohms(far)],
    'hand meter ohms': () => [ohms(module), ohms(far)],
  }[way]();
  const plugOhms = ladder.links.flatMap(({ nodeId }, i) =>
    nodeId === null ? [] : [[nodeId, linkOhms[i] as number] as const],
  );
  const knowledge = isMeasured ? { ohmsPerMetre: 0.953 * perMetre, measuredPlugs: new Map(plugOhms) } : {};
  return { map, line, trueMm, taken: all, knowledge };
}

/** A fault's resistance as its kind is spread; with a current of 0.1 A it must let that flow. */
function drawStrength(way: Way, chance: Chance): number {
  const { leastOhms, mostOhms, density } = faultStrengths['short-to-ground'];
  for (;;) {
    const ln = Math.log(leastOhms) + chance() * Math.log(mostOhms / leastOhms);
    if (chance() * 0.2 > density(ln)) continue;
    if (way.startsWith('drop') && Math.exp(ln) > 100) continue;
    return Math.exp(ln);
  }
}
