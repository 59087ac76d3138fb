import { describe, expect, test } from 'vitest';
import { beepChance, beepEdge } from '#core/circuit/beep.ts';
import { layStraight } from '#core/circuit/circuit-line.ts';
import {
  bareState,
  circuitNetwork,
  standingWire,
  typicalSupply,
  withEndsApart,
} from '#core/circuit/circuit-network.ts';
import { fourWireMeter, handMeter } from '#core/circuit/default-meter-table.ts';
import { faultResponse, linkResponse, soundReading } from '#core/circuit/fault-response.ts';
import { accuracySpread } from '#core/circuit/meter.ts';
import { meterConnected } from '#core/circuit/metered-circuit.ts';
import { blavier, shortedFarEnd } from '#core/circuit/methods/blavier.ts';
import {
  capacitanceRatio,
  wireOverPlanePicofaradsPerMetre,
} from '#core/circuit/methods/capacitance-ratio.ts';
import { echoDistanceM, echoNanoseconds } from '#core/circuit/methods/echo-time.ts';
import { injectedDrop, injectedDropShare } from '#core/circuit/methods/injected-drop.ts';
import { murrayLoop } from '#core/circuit/methods/murray-loop.ts';
import { twoEndedOhms } from '#core/circuit/methods/two-ended-ohms.ts';
import { varleyLoop } from '#core/circuit/methods/varley-loop.ts';
import { emptyNetwork, type Network } from '#core/circuit/network.ts';
import { readingsLogLikelihood } from '#core/circuit/reading-likelihood.ts';
import { solveNetwork } from '#core/circuit/solve-network.ts';
import { inputLimits, inputVolts, typicalInput } from '#core/circuit/switched-input.ts';
import { layLadder, placesOnLadder, wireOhmsTo } from '#core/circuit/wire-ladder.ts';
import { awgAreaMm2, awgDiameterMm } from '#core/wire/awg.ts';
import { conductorOhmsPerMetre, copperWarmthFactor } from '#core/wire/conductor-resistance.ts';
import { copper } from '#core/wire/copper.ts';
import { cellMiddles, fourMetreWire, placeOf, straightWire } from '#tests/core/circuit/four-metre-wire.ts';

const voltsOf = (network: Network): Float64Array => {
  const answer = solveNetwork(network);
  if (answer.outcome !== 'solved') throw new Error(answer.outcome);
  return answer.volts;
};
const inputSupply = { ...emptyNetwork, voltageSources: [{ plus: 1, minus: 0, volts: 5 }] };
const pullUp = { a: 1, b: 2, ohms: 1000 };

const module = { on: 'wire', nodeId: 'node:module' } as const;
const switchEnd = { on: 'wire', nodeId: 'node:switch' } as const;
const body = { on: 'body' } as const;

describe('wire', () => {
  test('4 m of 0.35 mm2 at 20, 80 and -10 C (ISO 6722-1 maximum and IEC 60028 coefficient, from memory)', () => {
    const ohms = (celsius: number) => 4 * conductorOhmsPerMetre(0.35, celsius);
    expect(ohms(20)).toBeCloseTo(0.2176, 5);
    expect(ohms(80)).toBeCloseTo(0.26891, 5);
    expect(ohms(-10)).toBeCloseTo(0.19194, 5);
  });

  test('AWG 20 is 0.8118 mm and 0.5176 mm2 (ASTM B258) and 33.3 milliohm/m (published AWG table: 33.29)', () => {
    expect(awgDiameterMm(20)).toBeCloseTo(0.8118, 3);
    expect(awgAreaMm2(20)).toBeCloseTo(0.5176, 3);
    const milliohmsPerMetre = (1000 * copper.ohmMm2PerMetreAt20) / awgAreaMm2(20);
    expect(Math.abs(milliohmsPerMetre / 33.29 - 1)).toBeLessThan(0.001);
  });

  test('copper to 20 C at 40 C: 0.926 (IEC 60228 correction table); the copper formula is within 0.4 percent', () => {
    expect(250 / (230 + 40)).toBeCloseTo(0.926, 3);
    expect(Math.abs(1 / copperWarmthFactor(40) / 0.926 - 1)).toBeLessThan(0.004);
  });

  test('a warm stretch is integrated where it lies, never spread over the length', () => {
    const { map, line } = straightWire({ lengthMm: 4000, plugsMm: [], mm2: 0.35 });
    const warm = layLadder(map, line, [], { warmStretches: [{ fromMm: 0, toMm: 1500, celsius: 80 }] });
    const total = wireOhmsTo(warm, 4000);
    const uniform = (total * 2500) / 4000;
    expect(wireOhmsTo(warm, 2500)).toBeCloseTo(1.5 * 0.0544 * copperWarmthFactor(80) + 0.0544, 9);
    // Read on an even ruler the fault at 2.50 m seems to lie at 2.62 m.
    expect((4 * wireOhmsTo(warm, 2500)) / total).toBeCloseTo(2.62, 2);
    expect(wireOhmsTo(warm, 2500)).toBeGreaterThan(uniform);
  });
});

describe('closed forms', () => {
  test('Murray loop: scale 332 of 1000, loop 54.07 ohm, 16.46 ohm a mile gives 1.09 mile (Hawkins Electrical Guide vol. 3)', () => {
    expect(murrayLoop({ loop: 54.07, armA: 332, armB: 668 }) / 16.46).toBeCloseTo(1.09, 2);
  });

  test('Murray loop over 100 m of 120 and 100 m of 240 mm2 at ratio 1 to 3 points at the joint (inputs: a published exercise)', () => {
    const perMetre = (mm2: number) => copper.ohmMm2PerMetreAt20 / mm2;
    // The sound wire back is of the same two pieces.
    const loop = 2 * (100 * perMetre(120) + 100 * perMetre(240));
    const ohms = murrayLoop({ loop, armA: 1, armB: 2 });
    expect(ohms / perMetre(120)).toBeCloseTo(100, 6);
  });

  test('Varley loop: arms 15 and 40, 20 and 10 ohm, 0.5 ohm/km gives 5.4545 km and a loop of 7.5 ohm (inputs: a published exercise)', () => {
    const found = varleyLoop({ armP: 15, armQ: 40, setForLoop: 20, setForEarth: 10 });
    expect(found.loop).toBeCloseTo(7.5, 9);
    expect(found.ohmsToFault / 0.5).toBeCloseTo(5.4545, 4);
  });

  test('open-ended readings of 4 and 8 ohm and 3.5 ohm shorted give 2 ohm, 2000 m of 8000 m (inputs: pho.rs 2513)', () => {
    const found = shortedFarEnd({ fromA: 4, fromB: 8, fromAShorted: 3.5 });
    expect(found?.faultOhms).toBeCloseTo(2, 9);
    expect((found?.ohmsToFault ?? 0) / 1e-3).toBeCloseTo(2000, 9);
    const beyond = 8 - (found?.faultOhms ?? 0);
    expect((2 + beyond) / 1e-3).toBeCloseTo(8000, 9);
    // From B with A's end shorted: 6 ohm and then 2 beside 2.
    expect(beyond + (2 * 2) / (2 + 2)).toBeCloseTo(7, 9);
  });

  test("Blavier's test finds the place that made its readings", () => {
    const [x, rest, fault] = [2, 7, 2];
    const farEndEarthed = x + (rest * fault) / (rest + fault);
    const found = blavier({ farEndOpen: x + fault, farEndEarthed, conductor: x + rest });
    expect(found?.ohmsToFault).toBeCloseTo(2, 9);
    expect(found?.faultOhms).toBeCloseTo(2, 9);
    expect(blavier({ farEndOpen: 4, farEndEarthed: 3, conductor: 2 })).toBeNull();
  });

  test('an open by capacitance: 240, 110 and 290 ft give 91.14 ft from B (telephone cable tester manual)', () => {
    expect(capacitanceRatio({ fromA: 110, fromB: 240, length: 290 })).toBeCloseTo(91.14, 2);
  });

  test('an open by capacitance: 100 and 400 pF on 10 m give 2 m (soundonsound.com forum 961331)', () => {
    expect(capacitanceRatio({ fromA: 100, fromB: 400, length: 10 })).toBeCloseTo(2, 9);
  });

  test('an echo over 4 m at 0.66 takes 40.43 ns; a 10 ns clock at 0.684 steps 1.025 m (Hioki 3665-20 guide: about 1 m)', () => {
    expect(echoNanoseconds({ metres: 4, velocityFactor: 0.66 })).toBeCloseTo(40.43, 2);
    expect(echoDistanceM({ nanoseconds: 10, velocityFactor: 0.684 })).toBeCloseTo(1.025, 3);
  });

  test('a thin wire 1 m over a plane has 6.7 pF/m (pulsedpower.eu)', () => {
    const perMetre = wireOverPlanePicofaradsPerMetre({
      heightMm: 1000,
      radiusMm: 0.5,
      relativePermittivity: 1,
    });
    expect(perMetre).toBeCloseTo(6.7075, 3);
  });

  test('two-ended ohms .5866 and .6410 with loop .2276 point at 1.500 m past one plug, 1.522 m if plugs are forgotten (own figures)', () => {
    const ohms = twoEndedOhms({ fromA: 0.5866, fromB: 0.641, endToEnd: 0.2276 });
    const { map, line } = fourMetreWire;
    const ladder = layLadder(map, line, []);
    expect(1.2 + (ohms - 0.005 - wireOhmsTo(ladder, 1200)) / 0.0544).toBeCloseTo(1.5, 3);
    expect((0.5866 - 0.641 + 4 * 0.0544) / 2 / 0.0544).toBeCloseTo(1.5, 3);
    expect((ohms * 4) / 0.2276).toBeCloseTo(1.522, 3);
  });
});

describe('networks solved by hand in ngspice 39', () => {
  test('N1: a 10 ohm leak 1.5 m along a 5 V, 1 kilohm input', () => {
    const volts = voltsOf({
      ...inputSupply,
      nodeCount: 4,
      resistors: [pullUp, { a: 3, b: 0, ohms: 10 }, { a: 4, b: 0, ohms: 1e6 }],
      branches: [
        { a: 2, b: 3, ohms: 1.5 * 0.0544 },
        { a: 3, b: 4, ohms: 2.5 * 0.0544 },
      ],
    });
    expect(volts[2]).toBeCloseTo(0.0499043889, 8);
    expect(volts[4]).toBeCloseTo(0.0495004544, 8);
  });

  test('N1 as a traced circuit with a voltmeter and the fault by rank-one change', () => {
    const { map, line } = straightWire({ lengthMm: 4000, plugsMm: [], mm2: 0.35 });
    const ladder = layLadder(map, line, ['node:module', 'node:switch']);
    const state = { apartNodeIds: [], switchClosed: false, ignitionOn: true, batteryConnected: true };
    for (const [lead, expected] of [
      [module, 0.0499043889],
      [switchEnd, 0.0495004544],
    ] as const) {
      const wires = { mainId: line.circuit.id, main: standingWire(ladder, line.circuit), other: null };
      const metered = meterConnected(
        wires,
        { test: 'volts', from: lead, to: body, volts: 0 },
        state,
        typicalSupply,
      );
      if (!metered) throw new Error('the lead sits on the wire');
      const { sound, numerator, offset } = faultResponse(
        metered,
        'short-to-ground',
        placesOnLadder(ladder, [1500]),
      );
      // The 10 megohm of the meter takes a millionth.
      expect(sound - (numerator[0] as number) / (10 + (offset[0] as number))).toBeCloseTo(expected, 6);
    }
  });

  test('N2: an input wire that touches a lamp feed', () => {
    const volts = voltsOf({
      ...emptyNetwork,
      nodeCount: 8,
      voltageSources: [
        { plus: 1, minus: 0, volts: 5 },
        { plus: 5, minus: 0, volts: 12.6 },
      ],
      resistors: [
        pullUp,
        { a: 4, b: 0, ohms: 1e6 },
        { a: 5, b: 6, ohms: 0.02 },
        { a: 8, b: 0, ohms: 10 },
        { a: 3, b: 7, ohms: 2 },
      ],
      branches: [
        { a: 2, b: 3, ohms: 0.0544 },
        { a: 3, b: 4, ohms: 3 * 0.0544 },
        { a: 6, b: 7, ohms: 0.0371 },
        { a: 7, b: 8, ohms: 3 * 0.0371 },
      ],
    });
    expect(volts[2]).toBeCloseTo(12.5133577, 6);
    expect(volts[8]).toBeCloseTo(12.3909074, 6);
  });

  test('N3: half an ampere into a branched wire; the sound branch end reads its splice, the faulty one its fault', () => {
    const perMetre = 0.0247;
    const volts = voltsOf({
      ...emptyNetwork,
      nodeCount: 5,
      currentSources: [{ from: 0, to: 1, amps: 0.5 }],
      branches: [
        { a: 1, b: 2, ohms: 1.5 * perMetre },
        { a: 2, b: 3, ohms: 1.0 * 0.0544 },
        { a: 2, b: 4, ohms: 0.8 * 0.0544 },
        { a: 4, b: 5, ohms: 1.2 * 0.0544 },
      ],
      resistors: [
        { a: 4, b: 0, ohms: 0.5 },
        { a: 3, b: 0, ohms: 1e7 },
        { a: 5, b: 0, ohms: 1e7 },
      ],
    });
    expect(volts[1]).toBeCloseTo(0.290285, 6);
    expect(volts[2]).toBeCloseTo(0.27176, 6);
    expect(volts[3]).toBeCloseTo(0.27176, 6);
    expect(volts[4]).toBeCloseTo(0.25, 6);
    expect(volts[5]).toBeCloseTo(0.25, 6);
  });

  test('N4: 0.1 A from either end past plugs of 5 milliohm reads 8.660 and 14.100 mV, which is 1.500 m', () => {
    const { map, line } = fourMetreWire;
    const ladder = layLadder(map, line, ['node:module', 'node:switch']);
    const state = withEndsApart(bareState, line.circuit.ends);
    const wires = { mainId: line.circuit.id, main: standingWire(ladder, line.circuit), other: null };
    const shown = ([driven, sensed]: readonly [
      typeof module | typeof switchEnd,
      typeof module | typeof switchEnd,
    ]) => {
      const reading = { test: 'drop', driven, sensed, currentA: 0.1, millivolts: 0 } as const;
      const metered = meterConnected(wires, reading, state, typicalSupply);
      if (!metered) throw new Error('the leads sit on the wire');
      const { sound, numerator, offset } = faultResponse(
        metered,
        'short-to-ground',
        placesOnLadder(ladder, [1500]),
      );
      return sound - (numerator[0] as number) / (0.5 + (offset[0] as number));
    };
    const near = shown([module, switchEnd]);
    const far = shown([switchEnd, module]);
    expect(near).toBeCloseTo(8.66, 3);
    expect(far).toBeCloseTo(14.1, 3);
    const ohms = injectedDrop({ volts: near / 1000, amps: 0.1 });
    expect(1.2 + (ohms - 0.005 - wireOhmsTo(ladder, 1200)) / 0.0544).toBeCloseTo(1.5, 3);
    const share = injectedDropShare({ volts: near, amps: 100 }, { volts: far, amps: 100 });
    expect(share * 0.2276).toBeCloseTo(ohms, 5);
  });

  test('N5: 30 ohm in a plug behind a closed switch still reads closed, 0.146750614 V', () => {
    const { map, line } = straightWire({ lengthMm: 4000, plugsMm: [1200], mm2: 0.35 });
    // The published figure has no contact resistance in the plug besides the fault.
    const ladder = layLadder(map, line, ['node:module'], { measuredPlugs: new Map([['node:c1', 0]]) });
    const wires = { mainId: line.circuit.id, main: standingWire(ladder, line.circuit), other: null };
    const reading = { test: 'volts', from: module, to: body, volts: 0 } as const;
    const state = { apartNodeIds: [], switchClosed: true, ignitionOn: true, batteryConnected: true };
    const metered = meterConnected(wires, reading, state, typicalSupply);
    if (!metered) throw new Error('the lead sits on the wire');
    const { numerator, offset } = linkResponse(metered, 1);
    const shown = soundReading(metered) - numerator / (1 / 30 + offset);
    const total = 30 + 0.02 + 4 * 0.0544;
    const withMeter = 1 / (1 / total + 1e-7);
    expect(shown).toBeCloseTo((5 * withMeter) / (1000 + withMeter), 8);
    expect(inputVolts(typicalInput, total)).toBeCloseTo(0.146750614, 8);
  });

  test('N6: an open wire with 1 megohm of leakage to 12 V shows 10.909 V on a meter of 10 megohm', () => {
    const volts = voltsOf({
      ...emptyNetwork,
      nodeCount: 2,
      voltageSources: [{ plus: 1, minus: 0, volts: 12 }],
      resistors: [
        { a: 1, b: 2, ohms: 1e6 },
        { a: 2, b: 0, ohms: 1e7 },
      ],
    });
    expect(Math.abs((volts[2] as number) - 10.90909)).toBeLessThan(2e-5);
  });

  test('N7: a shared ground of half an ohm under a lamp lifts a closed input to 2.17425446 V', () => {
    const volts = voltsOf({
      ...emptyNetwork,
      nodeCount: 5,
      voltageSources: [
        { plus: 1, minus: 0, volts: 5 },
        { plus: 5, minus: 0, volts: 12.6 },
      ],
      resistors: [pullUp, { a: 3, b: 4, ohms: 0.02 }, { a: 4, b: 0, ohms: 0.5 }, { a: 5, b: 4, ohms: 2.4 }],
      branches: [{ a: 2, b: 3, ohms: 4 * 0.0544 }],
    });
    expect(volts[2]).toBeCloseTo(2.17425446, 6);
  });
});

describe('meters', () => {
  test('10.1 ohm at 0.8 percent + 2 x 0.1 is +-0.1621 ohm; 8.3 mV at 0.5 percent + 2 x 0.1 is +-0.1394 mV (limit / sqrt 3: Fluke Calibration)', () => {
    expect(accuracySpread(handMeter.ohms, 10.1)).toBeCloseTo(0.1621, 4);
    expect(accuracySpread(handMeter.millivolts, 8.3)).toBeCloseTo(0.1394, 4);
  });

  test('chance of a beep at 10, 30, 100 and 200 ohm (own figures from a threshold of 50, spread 0.6)', () => {
    const edge = beepEdge(null);
    const expected = [0.9963, 0.8027, 0.124, 0.0104];
    [10, 30, 100, 200].forEach((ohms, i) => {
      expect(Math.abs(beepChance(edge, ohms) - (expected[i] as number))).toBeLessThan(5e-4);
    });
  });

  test('an input pulled up by 4.7 kilohm changes its mind at 2014 and 10967 ohm (0.3 and 0.7, CMOS habit)', () => {
    const { closedBelowOhms, openAboveOhms } = inputLimits({ ...typicalInput, pullUpOhms: 4700 });
    expect(closedBelowOhms).toBeCloseTo(2014, 0);
    expect(openAboveOhms).toBeCloseTo(10967, 0);
  });

  test('70 ohm pulls a 5 V, 1 kilohm input to 0.327 V (common practice, no source)', () => {
    expect(inputVolts(typicalInput, 70)).toBeCloseTo(0.327, 3);
  });

  test('inputs of 5 and 12 V with leaks from 10 ohm to 100 kilohm (own table)', () => {
    const volts = (pullUpVolts: number, pullUpOhms: number) =>
      [10, 100, 1000, 10_000, 100_000].map((leak) =>
        inputVolts({ ...typicalInput, pullUpVolts, pullUpOhms }, leak),
      );
    const expected = [
      [0.05, 0.455, 2.5, 4.55, 4.95],
      [0.011, 0.104, 0.877, 3.4, 4.78],
      [0.119, 1.09, 6, 10.9, 11.9],
    ];
    const shown = [volts(5, 1000), volts(5, 4700), volts(12, 1000)];
    shown.forEach((row, i) => {
      row.forEach((value, k) => {
        const wanted = expected[i]?.[k] as number;
        expect(Math.abs(value - wanted) / wanted).toBeLessThan(0.05);
      });
    });
  });
});

describe('what readings say about the place (figures by an independent grid)', () => {
  const { map, line } = fourMetreWire;
  const stationsMm = cellMiddles(line.lengthMm, 800);
  const state = withEndsApart(bareState, line.circuit.ends);
  const asKnown = { stationsMm, draws: 0, knowledge: { ohmsPerMetre: 0.0517 } };

  test('0.1 A from both ends, 8.3 and 13.4 mV: mean 1.507 m, spread 0.020 m by the meter alone', () => {
    const taken = [
      { reading: { test: 'drop', driven: module, sensed: switchEnd, currentA: 0.1, millivolts: 8.3 }, state },
      {
        reading: { test: 'drop', driven: switchEnd, sensed: module, currentA: 0.1, millivolts: 13.4 },
        state,
      },
    ] as const;
    const { byClass } = readingsLogLikelihood(map, line, taken, asKnown);
    const place = placeOf(stationsMm, byClass['short-to-ground']);
    expect(Math.abs(place.mean - 1.507)).toBeLessThan(0.005);
    expect(Math.abs(place.sd - 0.02)).toBeLessThan(0.005);
  });

  test('a hand meter reading 10.1 ohm at both ends cannot place a short: spread 1.09 m', () => {
    const taken = [module, switchEnd].map((from) => ({
      reading: { test: 'ohms', from, to: body, ohms: 10.1 } as const,
      state,
    }));
    const { byClass } = readingsLogLikelihood(map, line, taken, asKnown);
    const place = placeOf(stationsMm, byClass['short-to-ground']);
    expect(Math.abs(place.mean - 2)).toBeLessThan(0.02);
    expect(Math.abs(place.sd - 1.09)).toBeLessThan(0.02);
  });

  test('a four-lead meter with 1 milliohm places half an ohm to about 2 cm by itself, and a sharp reading is not lost between nodes', () => {
    const ohmsTo = 1.5 * 0.0517 + 0.005;
    const total = 4 * 0.0517 + 0.01;
    for (const fault of [0.05, 0.5]) {
      const taken = [ohmsTo, total - ohmsTo].map((wire, i) => ({
        reading: {
          test: 'ohms',
          from: i === 0 ? module : switchEnd,
          to: body,
          ohms: Math.round(1000 * (wire + fault)) / 1000,
        } as const,
        state,
        meter: { ...fourWireMeter, ohms: { ...fourWireMeter.ohms, percent: 0 } },
      }));
      const { byClass } = readingsLogLikelihood(map, line, taken, asKnown);
      const place = placeOf(stationsMm, byClass['short-to-ground']);
      expect(Math.abs(place.mean - 1.5)).toBeLessThan(0.02);
      expect(Math.abs(place.sd - 0.017)).toBeLessThan(0.004);
    }
  });

  test('70 ohm at 1.2 m of 4 m: the closed form is exact, a tenth of an ohm makes it useless and the answer stays flat', () => {
    expect(twoEndedOhms({ fromA: 70.0624, fromB: 70.1456, endToEnd: 0.208 }) / 0.052).toBeCloseTo(1.2, 9);
    const taken = [module, switchEnd].map((from) => ({
      reading: { test: 'ohms', from, to: body, ohms: 70.1 } as const,
      state,
    }));
    const { byClass } = readingsLogLikelihood(map, line, taken, { stationsMm });
    expect(placeOf(stationsMm, byClass['short-to-ground']).sd).toBeGreaterThan(1.1);
  });

  test('nothing is placed sharper than 0.06 m unless wire and plugs were measured', () => {
    const taken = [
      {
        reading: { test: 'drop', driven: module, sensed: switchEnd, currentA: 0.5, millivolts: 41.3 },
        state,
      },
      {
        reading: { test: 'drop', driven: switchEnd, sensed: module, currentA: 0.5, millivolts: 67.1 },
        state,
      },
    ] as const;
    const rough = readingsLogLikelihood(map, line, taken, { stationsMm }).byClass['short-to-ground'];
    expect(placeOf(stationsMm, rough).sd).toBeGreaterThan(0.058);
    expect(placeOf(stationsMm, rough).sd).toBeLessThan(0.1);
    expect(Math.abs(placeOf(stationsMm, rough).mean - 1.5)).toBeLessThan(0.06);
    const knowledge = {
      ohmsPerMetre: 0.0517,
      measuredPlugs: new Map([
        ['node:c1', 0.005],
        ['node:c2', 0.005],
      ] as const),
    };
    const fine = readingsLogLikelihood(map, line, taken, { stationsMm, knowledge }).byClass[
      'short-to-ground'
    ];
    expect(placeOf(stationsMm, fine).sd).toBeLessThan(0.04);
  });
});

test('the traced circuit lies as the figures assume', () => {
  const laid = layStraight(fourMetreWire.map, fourMetreWire.line.circuit);
  expect(laid.ok && laid.value.lengthMm).toBe(4000);
  const main = standingWire(layLadder(fourMetreWire.map, fourMetreWire.line, []), fourMetreWire.line.circuit);
  expect(circuitNetwork(main, null, bareState, typicalSupply).branches).toHaveLength(5);
});
