import { describe, expect, test } from 'vitest';
import { emptyMap } from '#core/map/map-document.ts';
import { readiness, readyForJob } from '#core/map/readiness.ts';
import type { Circuit, Segment } from '#core/map/records.ts';
import { sample } from '#tests/sample.ts';

const item = (map: typeof sample.map, code: string) => readiness(map).find((each) => each.code === code);

const withRun = (changes: Partial<Segment>) => ({
  ...sample.map,
  segments: new Map(sample.map.segments).set('segment:rear', { ...sample.rear, ...changes }),
});

describe('the checklist of a map', () => {
  test('an empty map is not ready and lacks runs and a traced circuit', () => {
    const items = readiness(emptyMap('map:e', 'E', 'van', 'left'));
    expect(readyForJob(items)).toBe(false);
    expect(items.filter((each) => each.necessary && !each.done).map((each) => each.code)).toEqual([
      'runs-drawn',
      'circuit-traced',
    ]);
  });

  test('on an empty map nothing counts as done that there is nothing yet to do for', () => {
    const blank = readiness(emptyMap('map:e', 'E', 'van', 'left'));
    expect(blank.filter((each) => each.done && !each.idle)).toEqual([]);
    const drawn = readiness(sample.map);
    expect(drawn.filter((each) => each.idle)).toEqual([]);
    const untagged = { ...sample.map, segments: new Map([['segment:rear' as const, sample.rear]]) };
    expect(item(untagged, 'tags-confirmed')).toMatchObject({ done: true, idle: true });
    expect(item(untagged, 'mirrored-runs-checked')).toMatchObject({ done: true, idle: false });
  });

  test('a run without panels is named until it is tagged or said to be in view', () => {
    expect(item(sample.map, 'runs-tagged')).toMatchObject({ done: false, things: ['segment:rear'] });
    expect(item(withRun({ inView: true }), 'runs-tagged')).toMatchObject({ done: true, things: [] });
  });

  test('mirrored runs and unconfirmed tags are named', () => {
    const tags = [{ panelId: 'panel:seat' as const, fromMm: 0, toMm: 50, confirmed: false }];
    const map = withRun({ unchecked: true, tags });
    expect(item(map, 'mirrored-runs-checked')?.things).toEqual(['segment:rear']);
    expect(item(map, 'tags-confirmed')?.things).toEqual(['segment:rear']);
  });

  test('a stray piece of harness is named unless each piece has a route name', () => {
    const segments = new Map(sample.map.segments);
    segments.delete('segment:middle');
    expect(item({ ...sample.map, segments }, 'harness-connected')?.done).toBe(true);
    segments.set('segment:rear', { ...sample.rear, routeName: ' ' });
    expect(item({ ...sample.map, segments }, 'harness-connected')?.things).toEqual(['segment:rear']);
  });

  test('a ring of panels blocks a job and is named', () => {
    const panels = new Map(sample.map.panels).set('panel:tread', {
      ...sample.tread,
      offFirst: ['panel:seat'],
    });
    const items = readiness({ ...sample.map, panels });
    expect(readyForJob(items)).toBe(false);
    expect(items.find((each) => each.code === 'panel-order-clear')?.things).toEqual([
      'panel:seat',
      'panel:tread',
    ]);
  });

  test('a circuit whose end is elsewhere does not count as traced', () => {
    const [first, last] = sample.circuit.ends;
    const circuit: Circuit = { ...sample.circuit, ends: [first, { ...last, nodeId: 'node:east' }] };
    const map = { ...sample.map, circuits: new Map([[circuit.id, circuit]]) };
    expect(item(map, 'circuit-traced')).toMatchObject({
      done: false,
      things: ['circuit:seat-switch'],
    });
  });

  test('panels without minutes are named', () => {
    const panels = new Map(sample.map.panels).set('panel:tread', { ...sample.tread, minutesOff: 0 });
    expect(item({ ...sample.map, panels }, 'panels-timed')?.things).toEqual(['panel:tread']);
  });
});
