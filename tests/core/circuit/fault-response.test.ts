import { describe, expect, test } from 'vitest';
import { bareState, standingWire, typicalSupply } from '#core/circuit/circuit-network.ts';
import { faultResponse, isSeriesClass, linkResponse, soundReading } from '#core/circuit/fault-response.ts';
import { meterConnected } from '#core/circuit/metered-circuit.ts';
import { solveNetwork } from '#core/circuit/solve-network.ts';
import { layLadder } from '#core/circuit/wire-ladder.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { withFault } from './explicit-fault.ts';
import { straightWire } from './four-metre-wire.ts';
import { generatedCases } from './generated-readings.ts';

const volts = (network: Parameters<typeof solveNetwork>[0], plus: number, minus: number): number => {
  // A part that hangs free is tied far above any reading, as the reduction does.
  const first = solveNetwork(network);
  const answer =
    first.outcome === 'floating'
      ? solveNetwork({
          ...network,
          resistors: [
            ...network.resistors,
            ...first.islands.map((island) => ({ a: island[0] as number, b: 0, ohms: 1e12 })),
          ],
        })
      : first;
  if (answer.outcome !== 'solved') throw new Error(answer.outcome);
  return (answer.volts[plus] as number) - (answer.volts[minus] as number);
};

describe('a fault by rank-one change', () => {
  test('agrees with solving the circuit with the fault built in, for 400 generated circuits', () => {
    const seen = new Set<string>();
    for (const { metered, fault, reading } of generatedCases(400, 20_26)) {
      const { link, share, ohms, faultClass } = fault;
      const response = faultResponse(metered, faultClass, {
        link: Int32Array.of(link),
        share: Float64Array.of(share),
      });
      const theta = isSeriesClass(faultClass) ? 1 / ohms : ohms;
      const reduced =
        response.sound - (response.numerator[0] as number) / (theta + (response.offset[0] as number));
      const built = volts(withFault(metered.network, fault), metered.plus, metered.minus);
      const full = metered.unitsPerVolt * built;
      const largest = Math.abs(response.sound) + Math.abs(full);
      // A supply pushing into an open wire stands at a megavolt: a millionth of a millivolt is its last digit.
      expect(Math.abs(reduced - full)).toBeLessThan(1e-6 * Math.abs(full) + 1e-9 * largest + 1e-6);
      seen.add(`${faultClass} ${reading.test}`);
    }
    expect(seen.size).toBe(15);
  });

  test('two wires that touch, both within a link, agree with the built circuit', () => {
    const chance = seededChance(5);
    for (let i = 0; i < 100; i++) {
      const lengthMm = 1000 + 5000 * chance();
      const a = straightWire({ lengthMm, plugsMm: [lengthMm * 0.4], mm2: 0.35 });
      const b = straightWire({
        lengthMm: lengthMm * 1.1,
        plugsMm: [],
        mm2: 0.75,
        ends: ['fused-supply', 'load'],
      });
      const main = standingWire(layLadder(a.map, a.line, ['node:module']), a.line.circuit);
      const other = standingWire(layLadder(b.map, b.line, ['node:module']), b.line.circuit);
      const metered = meterConnected(
        { mainId: 'circuit:signal', main, other: { circuitId: 'circuit:feed', wire: other } },
        { test: 'volts', from: { on: 'wire', nodeId: 'node:module' }, to: { on: 'body' }, volts: 0 },
        { apartNodeIds: [], switchClosed: false, ignitionOn: true, batteryConnected: true },
        typicalSupply,
      );
      if (!metered) throw new Error('the leads sit on the wire');
      const share = chance();
      const otherShare = chance();
      const ohms = 10 ** (-2 + 4 * chance());
      const at = (link: number, part: number) => ({
        link: Int32Array.of(link),
        share: Float64Array.of(part),
      });
      const response = faultResponse(metered, 'wire-to-wire', at(2, share), at(0, otherShare));
      const reduced =
        response.sound - (response.numerator[0] as number) / (ohms + (response.offset[0] as number));
      const fault = {
        faultClass: 'wire-to-wire',
        link: 2,
        share,
        ohms,
        other: { link: 0, share: otherShare },
      } as const;
      const full = volts(withFault(metered.network, fault), metered.plus, metered.minus);
      expect(reduced).toBeCloseTo(full, 8);
    }
  });

  test('a series fault moved within one stretch of wire changes no reading', () => {
    const { map, line } = straightWire({ lengthMm: 4000, plugsMm: [1200], mm2: 0.35 });
    const main = standingWire(layLadder(map, line, ['node:module', 'node:switch']), line.circuit);
    const metered = meterConnected(
      { mainId: line.circuit.id, main, other: null },
      {
        test: 'ohms',
        from: { on: 'wire', nodeId: 'node:module' },
        to: { on: 'wire', nodeId: 'node:switch' },
        ohms: 30,
      },
      { ...bareState, apartNodeIds: ['node:module', 'node:switch'] },
      typicalSupply,
    );
    if (!metered) throw new Error('the leads sit on the wire');
    const places = { link: Int32Array.of(0, 0, 0), share: Float64Array.of(0.01, 0.5, 0.99) };
    const { numerator, offset } = faultResponse(metered, 'high-resistance', places);
    const shown = [0, 1, 2].map(
      (i) => soundReading(metered) - (numerator[i] as number) / (1 / 30 + (offset[i] as number)),
    );
    expect(Math.max(...shown) - Math.min(...shown)).toBeLessThan(1e-12);
    expect(shown[0]).toBeGreaterThan(30);
  });

  test('a parted plug has no contact to go bad', () => {
    const { map, line } = straightWire({ lengthMm: 4000, plugsMm: [1200], mm2: 0.35 });
    const main = standingWire(layLadder(map, line, ['node:module']), line.circuit);
    const reading = {
      test: 'ohms',
      from: { on: 'wire', nodeId: 'node:module' },
      to: { on: 'body' },
      ohms: 1,
    } as const;
    const apart = meterConnected(
      { mainId: line.circuit.id, main, other: null },
      reading,
      { ...bareState, apartNodeIds: ['node:c1'] },
      typicalSupply,
    );
    const joined = meterConnected(
      { mainId: line.circuit.id, main, other: null },
      reading,
      bareState,
      typicalSupply,
    );
    if (!apart || !joined) throw new Error('the leads sit on the wire');
    expect(linkResponse(apart, 1).numerator).toBe(0);
    expect(linkResponse(joined, 1).numerator).not.toBe(0);
  });
});
