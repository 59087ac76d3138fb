import { describe, expect, test } from 'vitest';
import type { ElectricalReading } from '#core/circuit/car-state.ts';
import { layStraight } from '#core/circuit/circuit-line.ts';
import { bareState, withEndsApart } from '#core/circuit/circuit-network.ts';
import { fineHandMeter, fourWireMeter, handMeter } from '#core/circuit/default-meter-table.ts';
import type { Meter } from '#core/circuit/meter.ts';
import { readingsLogLikelihood } from '#core/circuit/reading-likelihood.ts';
import type { TakenReading } from '#core/circuit/usable-readings.ts';
import { faultClasses } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Circuit } from '#core/map/records.ts';
import { cellMiddles, fourMetreWire, placeOf, region80, straightWire } from './four-metre-wire.ts';

const { map, line } = fourMetreWire;
const stationsMm = cellMiddles(line.lengthMm, 400);
const unplugged = withEndsApart(bareState, line.circuit.ends);
const module = { on: 'wire', nodeId: 'node:module' } as const;
const switchEnd = { on: 'wire', nodeId: 'node:switch' } as const;
const body = { on: 'body' } as const;
const take = (reading: ElectricalReading, state = unplugged, meter?: Meter): TakenReading => ({
  reading,
  state,
  meter,
});

const nearDrop = take({ test: 'drop', driven: module, sensed: switchEnd, currentA: 0.1, millivolts: 8.3 });
const farDrop = take({ test: 'drop', driven: switchEnd, sensed: module, currentA: 0.1, millivolts: 13.4 });
const toBody = take({ test: 'ohms', from: module, to: body, ohms: 5.2 });
const beeps = take({ test: 'beep', from: switchEnd, to: body, beeps: true });

/** Likelihood of every class with the common constant taken out. */
const relative = (taken: readonly TakenReading[], options = {}) => {
  const { byClass } = readingsLogLikelihood(map, line, taken, { stationsMm, draws: 16, ...options });
  const rows = faultClasses.flatMap((kind) => [...byClass[kind]]);
  const top = Math.max(...rows);
  return rows.map((value) => Math.exp(value - top));
};
const expectSame = (a: readonly number[], b: readonly number[], within: number) => {
  expect(a.length).toBe(b.length);
  const worst = Math.max(...a.map((value, i) => Math.abs(value - (b[i] as number))));
  expect(worst).toBeLessThan(within);
};

describe('readings together', () => {
  test('no reading says nothing', () => {
    expect(new Set(relative([]))).toEqual(new Set([1]));
  });

  test('a reading that could not have come out otherwise changes nothing', () => {
    const empty = take({ test: 'volts', from: body, to: body, volts: 0 });
    expectSame(relative([nearDrop, farDrop]), relative([nearDrop, farDrop, empty]), 1e-9);
  });

  test('the order in which readings were taken does not matter', () => {
    expectSame(
      relative([nearDrop, toBody, beeps, farDrop]),
      relative([farDrop, beeps, nearDrop, toBody]),
      1e-9,
    );
  });

  test('the circuit traced from the other end gives the mirrored answer', () => {
    const turned = straightWire({ lengthMm: 4000, plugsMm: [1200, 2800], mm2: 0.35, reversed: true });
    const taken = [nearDrop, toBody];
    const options = { stationsMm, draws: 16 };
    const forward = readingsLogLikelihood(map, line, taken, options).byClass;
    const backward = readingsLogLikelihood(turned.map, turned.line, taken, options).byClass;
    for (const kind of faultClasses) {
      const mirrored = [...backward[kind]].reverse();
      expectSame([...forward[kind]].map(Math.exp), mirrored.map(Math.exp), 1e-5);
    }
  });

  test('a more accurate meter never widens the region that holds 80 percent', () => {
    const scaled = (factor: number): Meter => ({
      ...handMeter,
      millivolts: {
        ...handMeter.millivolts,
        percent: 0.5 * factor,
        finestStep: 0.1 * factor,
      },
    });
    for (const stationM of [0.6, 1.5, 2.0, 3.4]) {
      const plugs = (stationM > 1.2 ? 0.005 : 0) + (stationM > 2.8 ? 0.005 : 0);
      const millivolts = 100 * (stationM * 0.0544 * 0.953 + plugs);
      for (const draws of [0, 48]) {
        const regions = [8, 4, 2, 1, 0.5].map((factor) => {
          const reading = {
            test: 'drop',
            driven: module,
            sensed: switchEnd,
            currentA: 0.1,
            millivolts,
          } as const;
          const taken = [take(reading, unplugged, scaled(factor))];
          return region80(
            stationsMm,
            readingsLogLikelihood(map, line, taken, { stationsMm, draws }).byClass['short-to-ground'],
          );
        });
        for (let i = 1; i < regions.length; i++)
          expect(regions[i] as number).toBeLessThanOrEqual((regions[i - 1] as number) + 0.021);
      }
    }
  });

  test('one strength serves all readings: 5 ohm at one end and 500 at the other fit no short', () => {
    const fits = readingsLogLikelihood(
      map,
      line,
      [toBody, take({ test: 'ohms', from: switchEnd, to: body, ohms: 5.3 })],
      { stationsMm },
    );
    const fights = readingsLogLikelihood(
      map,
      line,
      [toBody, take({ test: 'ohms', from: switchEnd, to: body, ohms: 500 })],
      { stationsMm },
    );
    expect(fits.bestFit).toBeGreaterThan(-1);
    expect(Math.max(...fights.byClass['short-to-ground'])).toBeLessThan(-15);
  });

  test('the same seed gives the same answer', () => {
    expect(relative([nearDrop], { seed: 3 })).toEqual(relative([nearDrop], { seed: 3 }));
  });
});

describe('what an answer may and may not say', () => {
  test('an open between two plugs is flat: no direct-current reading can place it', () => {
    const taken = [take({ test: 'ohms', from: module, to: switchEnd, ohms: 'open-line' })];
    const { byClass, noFault } = readingsLogLikelihood(map, line, taken, { stationsMm });
    const between = [...byClass.open].filter(
      (_, i) => (stationsMm[i] as number) > 1200 && (stationsMm[i] as number) < 2800,
    );
    expect(Math.max(...between) - Math.min(...between)).toBeLessThan(1e-9);
    expect(Math.max(...byClass.open)).toBeGreaterThan(noFault + 10);
  });

  test('a parted plug tells which half an open is in', () => {
    const state = { ...unplugged, apartNodeIds: [...unplugged.apartNodeIds, 'node:c2'] as const };
    const taken = [
      take({ test: 'ohms', from: module, to: switchEnd, ohms: 'open-line' }),
      take({ test: 'ohms', from: module, to: { on: 'wire', nodeId: 'node:c2' }, ohms: 0.2 }, state),
    ];
    const { open } = readingsLogLikelihood(map, line, taken, { stationsMm }).byClass;
    expect((open[399] as number) - (open[0] as number)).toBeGreaterThan(10);
  });

  test('two capacitance readings place an open by their ratio, within a wide band', () => {
    const taken = [
      take({ test: 'capacitance', at: module, picofarads: 60 }),
      take({ test: 'capacitance', at: switchEnd, picofarads: 100 }),
    ];
    const place = placeOf(stationsMm, readingsLogLikelihood(map, line, taken, { stationsMm }).byClass.open);
    expect(place.mean).toBeGreaterThan(1.4);
    expect(place.mean).toBeLessThan(1.6);
    expect(place.sd).toBeGreaterThan(0.1);
  });

  test('a lamp for the fuse places a feed shorted to the body: 2.8 A and 0.206 V say about 3.98 m of 1 mm2', () => {
    const feed = straightWire({ lengthMm: 5650, plugsMm: [5050], mm2: 1, ends: ['fused-supply', 'load'] });
    const state = withEndsApart({ ...bareState, batteryConnected: true }, feed.line.circuit.ends);
    const wanted = cellMiddles(5650, 400);
    const reading = {
      test: 'drop',
      driven: module,
      sensed: switchEnd,
      currentA: 2.8,
      millivolts: 206,
    } as const;
    const { byClass, noFault } = readingsLogLikelihood(feed.map, feed.line, [take(reading, state)], {
      stationsMm: wanted,
    });
    const place = placeOf(wanted, byClass['short-to-ground']);
    // The wire's true ohms are 0.906 to 1 of the table's, so the place lies at or beyond 3.98.
    expect(place.mean).toBeGreaterThan(3.9);
    expect(place.mean).toBeLessThan(4.4);
    expect(place.sd).toBeLessThan(0.3);
    expect(Math.max(...byClass['short-to-ground'])).toBeGreaterThan(noFault + 10);
  });

  test('two wires that touch are placed by ohms from both ends, and only where they run together', () => {
    const { twin, first } = twoWires();
    const wanted = cellMiddles(4200, 420);
    const reading = (nodeId: 'node:module' | 'node:switch', ohms: number): ElectricalReading => ({
      test: 'ohms',
      from: { on: 'wire', nodeId },
      to: { on: 'wire', nodeId, circuitId: 'circuit:park' },
      ohms,
    });
    const apart = { ...bareState, apartNodeIds: ['node:module', 'node:switch'] as const };
    const taken = [reading('node:module', 0.51), reading('node:switch', 0.39)].map((each) =>
      take(each, apart, fineHandMeter),
    );
    const answer = readingsLogLikelihood(twin, first, taken, { stationsMm: wanted });
    const place = placeOf(wanted, answer.byClass['wire-to-wire']);
    // (4.2 + (0.51 - 0.39) / (2 x 0.0247)) / 2 = 3.31 m by the closed form.
    expect(Math.abs(place.mean - 3.31)).toBeLessThan(0.25);
    expect(Math.max(...answer.byClass['wire-to-wire'])).toBeGreaterThan(
      Math.max(...answer.byClass['short-to-ground']) + 3,
    );
    expect(answer.notes).toEqual([]);
  });

  test('a wire that measures through but leaks 70 ohm to the body is a short, not an open', () => {
    const taken = [
      take({ test: 'ohms', from: module, to: switchEnd, ohms: 0.2 }),
      take({ test: 'ohms', from: module, to: body, ohms: 70 }),
    ];
    const { byClass, noFault } = readingsLogLikelihood(map, line, taken, { stationsMm });
    expect(Math.max(...byClass['short-to-ground'])).toBeGreaterThan(Math.max(...byClass.open) + 10);
    expect(Math.max(...byClass['short-to-ground'])).toBeGreaterThan(noFault + 5);
    expect(placeOf(stationsMm, byClass['short-to-ground']).sd).toBeGreaterThan(1.1);
  });

  test('a closed reading that goes away with the switch unplugged blames the switch', () => {
    const powered = { apartNodeIds: [], switchClosed: false, ignitionOn: true, batteryConnected: true };
    const taken = [
      take({ test: 'volts', from: module, to: body, volts: 0.005 }, powered),
      take(
        { test: 'volts', from: module, to: body, volts: 5 },
        { ...powered, apartNodeIds: ['node:switch'] },
      ),
    ];
    const { byClass, components } = readingsLogLikelihood(map, line, taken, { stationsMm });
    const score =
      components.find(({ place }) => place === 'second-end')?.logLikelihood ?? Number.NEGATIVE_INFINITY;
    expect(score).toBeGreaterThan(Math.max(...byClass['short-to-ground']) + 3);
    expect(components.map(({ nodeId }) => nodeId)).toEqual([
      'node:c1',
      'node:c2',
      'node:module',
      'node:switch',
    ]);
  });
});

describe('readings that cannot be used are named', () => {
  const live = { apartNodeIds: [], switchClosed: false, ignitionOn: true, batteryConnected: true };

  test('ohms on a live wire', () => {
    const taken = [take({ test: 'ohms', from: module, to: body, ohms: 5 }, live)];
    const { notes, used } = readingsLogLikelihood(map, line, taken, { stationsMm });
    expect(used).toBe(0);
    expect(notes[0]).toMatchObject({ code: 'live-while-measured', reading: 0 });
  });

  test('a lead on a place the circuit does not pass', () => {
    const taken = [take({ test: 'ohms', from: { on: 'wire', nodeId: 'node:elsewhere' }, to: body, ohms: 5 })];
    expect(readingsLogLikelihood(map, line, taken, { stationsMm }).notes).toEqual([
      { code: 'lead-not-on-circuit', reading: 0, nodeId: 'node:elsewhere' },
    ]);
  });

  test('ohms with a control unit plugged in count for little', () => {
    const taken = [take({ test: 'ohms', from: module, to: body, ohms: 5 }, bareState, fourWireMeter)];
    const { byClass, notes } = readingsLogLikelihood(map, line, taken, { stationsMm });
    expect(notes.some(({ code }) => code === 'end-part-plugged-in')).toBe(true);
    expect(Math.min(...byClass.open)).toBeGreaterThan(-2.1);
  });

  test('anything electrical on an airbag or high-voltage circuit', () => {
    for (const duty of ['restraint', 'high-voltage'] as const) {
      const guarded = { ...line, circuit: { ...line.circuit, duty } };
      const answer = readingsLogLikelihood(map, guarded, [nearDrop], { stationsMm });
      expect(answer.used).toBe(0);
      expect(answer.notes).toEqual([{ code: 'forbidden-duty', reading: 0 }]);
      expect(new Set(answer.byClass['short-to-ground'])).toEqual(new Set([0]));
    }
  });
});

/** Two wires of 0.75 mm2 side by side over 4.2 m. */
function twoWires(): { readonly twin: MapDocument; readonly first: typeof line } {
  const one = straightWire({ lengthMm: 4200, plugsMm: [], mm2: 0.75, ends: ['load', 'other'] });
  const park: Circuit = { ...one.line.circuit, id: 'circuit:park', name: 'Park wire' };
  const twin = { ...one.map, circuits: new Map([...one.map.circuits, [park.id, park]]) };
  const laid = layStraight(twin, one.line.circuit);
  if (!laid.ok) throw new Error(laid.problem.code);
  return { twin, first: laid.value };
}
