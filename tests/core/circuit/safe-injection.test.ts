import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bareState, withEndsApart } from '#core/circuit/circuit-network.ts';
import { mostInjectionA, safeInjection, tradeLamps } from '#core/circuit/safe-injection.ts';
import { currentCarryingA, wireCurrentTable } from '#core/circuit/wire-current-table.ts';
import { conductorTable } from '#core/wire/conductor-table.ts';
import { fourMetreWire, straightWire } from './four-metre-wire.ts';

const signal = fourMetreWire.line.circuit;
const unplugged = withEndsApart(bareState, signal.ends);
const feedLine = straightWire({ lengthMm: 5000, plugsMm: [], mm2: 1, ends: ['fused-supply', 'load'] }).line;
const feed = { ...feedLine.circuit, fuseA: 15 };
const feedState = { ...bareState, batteryConnected: true, apartNodeIds: ['node:switch'] as const };

describe('current into a wire', () => {
  test('a signal wire unplugged at both ends gets 0.1 A through 120 ohm', () => {
    const answer = safeInjection(signal, unplugged);
    expect(answer).toMatchObject({
      outcome: 'allowed',
      plan: { way: 'limited-supply', amps: 0.1, seriesOhms: 120 },
    });
  });

  test('never into airbag, high-voltage or data circuits, whatever the state', () => {
    for (const duty of ['restraint', 'high-voltage', 'data'] as const) {
      for (const circuit of [
        { ...signal, duty },
        { ...feed, duty },
      ]) {
        for (const state of [unplugged, feedState])
          expect(safeInjection(circuit, state)).toEqual({
            outcome: 'refused',
            reason: { code: `${duty}-circuit` },
          });
      }
    }
  });

  test('not with an end still plugged in, and it says which', () => {
    expect(safeInjection(signal, { ...bareState, apartNodeIds: ['node:switch'] })).toEqual({
      outcome: 'refused',
      reason: { code: 'end-plugged-in', nodeIds: ['node:module'] },
    });
  });

  test('not with the battery on a signal wire', () => {
    const answer = safeInjection(signal, { ...unplugged, batteryConnected: true });
    expect(answer).toEqual({ outcome: 'refused', reason: { code: 'battery-connected' } });
  });

  test('never more than half an ampere into a signal wire', () => {
    fc.assert(
      fc.property(fc.double({ min: -1, max: 20, noNaN: true }), (amps) => {
        const answer = safeInjection(signal, unplugged, { amps });
        if (answer.outcome === 'allowed' && answer.plan.way === 'limited-supply') {
          expect(answer.plan.amps).toBeLessThanOrEqual(mostInjectionA);
          expect(answer.plan.supplyVolts / answer.plan.seriesOhms).toBeLessThanOrEqual(
            mostInjectionA + 1e-12,
          );
        } else expect(amps > mostInjectionA || amps <= 0).toBe(true);
      }),
      { seed: 4 },
    );
  });

  test('a lamp in place of the fuse stays within fuse and wire, and is the largest that does', () => {
    for (const fuseA of [2, 3, 5, 10, 15, 30]) {
      const answer = safeInjection({ ...feed, fuseA }, feedState);
      if (answer.outcome !== 'allowed' || answer.plan.way !== 'lamp-for-fuse') throw new Error('a lamp fits');
      const { amps, mostA } = answer.plan;
      expect(amps).toBeLessThanOrEqual(Math.min(fuseA, currentCarryingA(1)));
      const larger = tradeLamps.map((lamp) => lamp.watts / lamp.volts).filter((each) => each > amps);
      expect(larger.every((each) => each > mostA)).toBe(true);
    }
  });

  test('no lamp where none is small enough, where no fuse is known, or where the load is plugged in', () => {
    expect(safeInjection({ ...feed, fuseA: 0.2 }, feedState)).toMatchObject({
      reason: { code: 'no-lamp-small-enough' },
    });
    expect(safeInjection({ ...feed, fuseA: null }, feedState)).toMatchObject({
      reason: { code: 'no-fuse-rating' },
    });
    expect(safeInjection(feed, { ...feedState, apartNodeIds: [] })).toMatchObject({
      reason: { code: 'end-plugged-in' },
    });
    expect(safeInjection(feed, { ...feedState, batteryConnected: false })).toMatchObject({
      reason: { code: 'battery-off' },
    });
  });

  test('a thicker wire never bears less', () => {
    const sizes = conductorTable.map(({ mm2 }) => mm2);
    const amps = sizes.map(currentCarryingA);
    expect([...amps].sort((a, b) => a - b)).toEqual(amps);
    expect(currentCarryingA(0.1)).toBeLessThan(wireCurrentTable[0]?.amps ?? 0);
  });
});
