import { describe, expect, test } from 'vitest';
import { circuitFaults } from '#core/circuit/circuit-faults.ts';
import type { Circuit } from '#core/map/records.ts';
import { sample } from '#tests/sample.ts';

const faultsOf = (changes: Partial<Circuit>) =>
  circuitFaults({
    ...sample.map,
    circuits: new Map([[sample.circuit.id, { ...sample.circuit, ...changes }]]),
  });

describe('faults of traced circuits', () => {
  test('a circuit that nobody traced yet is no fault', () => {
    expect(faultsOf({ path: [] })).toEqual([]);
  });

  test('a gap is named by the runs on either side of it', () => {
    expect(faultsOf({ path: sample.circuit.path.toSpliced(1, 1) })).toEqual([
      {
        code: 'circuit-broken',
        circuit: 'circuit:seat-switch',
        afterSegment: 'segment:front',
        nextSegment: 'segment:rear',
      },
    ]);
  });

  test('a trace that stops short of its end names the end it should have', () => {
    expect(faultsOf({ path: sample.circuit.path.slice(0, 2) })).toMatchObject([
      { code: 'circuit-end-mismatch', expectedNode: 'node:far', foundNode: 'node:east' },
    ]);
  });

  test('a run that is gone is named', () => {
    expect(faultsOf({ path: [{ segmentId: 'segment:gone', reversed: false }] })).toMatchObject([
      { code: 'missing-reference', missing: 'segment:gone' },
    ]);
  });
});
