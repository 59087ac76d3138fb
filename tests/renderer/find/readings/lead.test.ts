import { describe, expect, test } from 'vitest';
import { layStraight } from '#core/circuit/circuit-line.ts';
import type { CarState } from '#core/job/reading.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Circuit } from '#core/map/records.ts';
import { assert } from '#core/quantity/assert.ts';
import { fuseNodes, leadGroups, leadKey, plugsOf, settleLead } from '#renderer/places/find/readings/lead.ts';
import { sample } from '#tests/sample.ts';

const together: CarState = {
  apartNodeIds: [],
  switchClosed: null,
  ignitionOn: false,
  batteryConnected: false,
};
const sillApart: CarState = { ...together, apartNodeIds: ['node:middle'] };
const ownId = sample.circuit.id;

/** The sample with a second wire through the same runs. */
const withWireBeside = (duty: Circuit['duty']): MapDocument => ({
  ...sample.map,
  circuits: new Map<Circuit['id'], Circuit>([
    [ownId, sample.circuit],
    ['circuit:beside', { ...sample.circuit, id: 'circuit:beside', name: 'Lamp feed', duty, order: 1 }],
  ]),
});
const groupsOf = (state: CarState, map: MapDocument = sample.map) => leadGroups(map, sample.line, state, []);
const keysOf = (state: CarState, map?: MapDocument) =>
  groupsOf(state, map).map(({ circuitId, places }) => [circuitId, places.map(({ key }) => key)]);

describe('where a lead may sit', () => {
  test('at the ends and the plugs of the wire, on the body and on battery positive, never on a bare branch', () => {
    expect(keysOf(together)).toEqual([
      [ownId, ['node:west', 'node:middle', 'node:far']],
      [null, ['body', 'battery-positive']],
    ]);
  });

  test('a plug that is apart has two halves', () => {
    expect(keysOf(sillApart)[0]?.[1]).toEqual([
      'node:west',
      'node:middle first-end',
      'node:middle second-end',
      'node:far',
    ]);
  });

  test('an end that is unplugged has the one half that carries the wire', () => {
    expect(keysOf({ ...together, apartNodeIds: ['node:west'] })[0]?.[1]).toContain('node:west');
  });

  test('on a wire beside it, unless that is airbag or high-voltage wiring', () => {
    expect(keysOf(together, withWireBeside('ordinary'))[2]).toEqual([
      'circuit:beside',
      ['node:west circuit:beside', 'node:middle circuit:beside', 'node:far circuit:beside'],
    ]);
    for (const duty of ['restraint', 'high-voltage'] as const)
      expect(keysOf(together, withWireBeside(duty))).toHaveLength(2);
  });

  test('a lead of the searched circuit is the same with its id written out', () => {
    expect(leadKey({ on: 'wire', nodeId: 'node:west', circuitId: ownId }, ownId)).toBe(
      leadKey({ on: 'wire', nodeId: 'node:west' }, ownId),
    );
  });
});

describe('a lead while the car changes under it', () => {
  test('moves to a half when its plug is pulled, and off the half when it is pushed together', () => {
    const onPlug = { on: 'wire', nodeId: 'node:middle' } as const;
    const half = settleLead(onPlug, groupsOf(sillApart), ownId);
    expect(half).toEqual({ ...onPlug, side: 'first-end' });
    expect(settleLead(half, groupsOf(together), ownId)).toEqual(onPlug);
  });

  test('stays where it is when that place is still there', () => {
    const second = { on: 'wire', nodeId: 'node:middle', side: 'second-end' } as const;
    expect(settleLead(second, groupsOf(sillApart), ownId)).toBe(second);
    expect(settleLead({ on: 'body' }, groupsOf(sillApart), ownId)).toEqual({ on: 'body' });
  });
});

describe('what can be pulled apart', () => {
  test('is every plug and part in the circuit’s order, and what is noted as apart beside it', () => {
    expect(plugsOf(sample.map, sample.line, together)).toEqual(['node:west', 'node:middle', 'node:far']);
    expect(plugsOf(sample.map, sample.line, { ...together, apartNodeIds: ['node:trailer'] })).toContain(
      'node:trailer',
    );
  });

  test('at a fused end it is the fuse that is out', () => {
    const fed = layStraight(sample.map, {
      ...sample.circuit,
      ends: [{ nodeId: 'node:west', kind: 'fused-supply' }, sample.circuit.ends[1]],
    });
    assert(fed.ok, 'the fed circuit lies straight');
    expect([...fuseNodes(fed.value)]).toEqual(['node:west']);
    expect(fuseNodes(sample.line).size).toBe(0);
    expect(fuseNodes(null).size).toBe(0);
  });
});
