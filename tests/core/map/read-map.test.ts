import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mapText, mapToExchange } from '#core/map/exchange.ts';
import { readMap } from '#core/map/read-map.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { sample } from '#tests/sample.ts';

const good = () => structuredClone(mapToExchange(sample.map)) as Record<string, unknown>;

/** The problem a changed sample gives, or null when it reads. */
function problemOf(change: (document: Record<string, unknown>) => void) {
  const document = good();
  change(document);
  const read = readMap(JSON.stringify(document));
  return read.ok ? null : read.problem;
}

describe('reading a map file', () => {
  test('gives back the map that was written, to the byte', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), (seed) => {
        const map = randomMap(seed);
        const text = mapText(map);
        const read = readMap(text);
        expect(read.ok && read.value.problems).toEqual([]);
        expect(read.ok && mapText(read.value.map) === text).toBe(true);
        expect(read.ok && mapToExchange(read.value.map)).toEqual(mapToExchange(map));
      }),
      { seed: 31, numRuns: 100 },
    );
  });

  test('refuses what is not JSON, not a map, or from a newer version', () => {
    expect(readMap('{')).toMatchObject({ ok: false, problem: { code: 'not-json' } });
    expect(readMap('[]')).toMatchObject({ ok: false, problem: { code: 'wrong-format' } });
    expect(readMap('{"format": "undertrim.job"}')).toEqual({
      ok: false,
      problem: { code: 'wrong-format', expected: 'undertrim.map', found: 'undertrim.job' },
    });
    expect(readMap('{"format": "undertrim.map", "version": 2}')).toEqual({
      ok: false,
      problem: { code: 'newer-version', found: 2, known: 1 },
    });
    expect(readMap('{"format": "undertrim.map", "version": "1"}')).toMatchObject({
      ok: false,
      problem: { code: 'bad-field', path: 'version' },
    });
  });

  test.each([
    [
      'a station that is no number',
      'segments[0].clips[0].stationMm',
      'number',
      (d: ReturnType<typeof good>) => set(d, 'segments.0.clips.0.stationMm', 'far'),
    ],
    [
      'a missing field',
      'panels[1].minutesOff',
      'number',
      (d: ReturnType<typeof good>) => set(d, 'panels.1.minutesOff', undefined),
    ],
    [
      'an unknown field',
      'nodes[2].colour',
      'no such field',
      (d: ReturnType<typeof good>) => set(d, 'nodes.2.colour', 'red'),
    ],
    [
      'a negative station',
      'segments[0].tags[0].fromMm',
      '>= 0',
      (d: ReturnType<typeof good>) => set(d, 'segments.0.tags.0.fromMm', -1),
    ],
    [
      'a severity out of range',
      'rubSpots[0].severity',
      '1 | 2 | 3',
      (d: ReturnType<typeof good>) => set(d, 'rubSpots.0.severity', 4),
    ],
    [
      'an id of the wrong kind',
      'segments[0].fromNodeId',
      'an id such as "node:left-sill"',
      (d: ReturnType<typeof good>) => set(d, 'segments.0.fromNodeId', 'panel:seat'),
    ],
    [
      'an empty name',
      'details.name',
      'letters >= 1',
      (d: ReturnType<typeof good>) => set(d, 'details.name', ''),
    ],
  ])('names the field and what it should be: %s', (_, path, expected, change) => {
    expect(problemOf(change)).toEqual({ code: 'bad-field', path, expected });
  });

  test('refuses two things with one id, clips of different runs included', () => {
    expect(problemOf((d) => (d.nodes as unknown[]).push((d.nodes as unknown[])[0]))).toEqual({
      code: 'duplicate-id',
      thing: 'node:east',
    });
    const clip = { id: 'clip:a', stationMm: 5, kind: 'clip', missing: false };
    expect(problemOf((d) => set(d, 'segments.2.clips', [clip]))).toEqual({
      code: 'duplicate-id',
      thing: 'clip:a',
    });
  });

  test('reads a half-drawn map and tells what does not hang together', () => {
    const document = good();
    set(document, 'segments.0.toNodeId', 'node:gone');
    set(document, 'segments.1.tags.0.toMm', 900);
    set(document, 'panels.1.offFirst', ['panel:seat']);
    const read = readMap(JSON.stringify(document));
    expect(read.ok && read.value.problems).toEqual([
      { code: 'missing-reference', thing: 'segment:front', field: 'toNodeId', missing: 'node:gone' },
      { code: 'beyond-end', thing: 'segment:middle', field: 'tags[0].toMm', stationMm: 900, lengthMm: 500 },
      { code: 'panel-cycle', panels: ['panel:tread', 'panel:seat'] },
    ]);
  });

  test('tells of ranges told backwards, runs without length and clips past a run', () => {
    const document = good();
    set(document, 'segments.0.tags.0', { panelId: 'panel:tread', fromMm: 300, toMm: 100, confirmed: true });
    set(document, 'segments.0.clips.1.stationMm', 502);
    set(document, 'nodes.1.at', { xMm: 1000, yMm: 0, zMm: 0 });
    const read = readMap(JSON.stringify(document));
    expect(read.ok && read.value.problems).toEqual([
      { code: 'range-reversed', thing: 'segment:front', field: 'tags[0]', fromMm: 300, toMm: 100 },
      {
        code: 'beyond-end',
        thing: 'segment:front',
        field: 'clips[1].stationMm',
        stationMm: 502,
        lengthMm: 500,
      },
      { code: 'zero-length', thing: 'segment:rear' },
    ]);
  });

  test('never throws, whatever stands in the file', () => {
    fc.assert(
      fc.property(fc.json(), fc.jsonValue(), (text, value) => {
        readMap(text);
        const read = readMap(JSON.stringify({ ...good(), segments: value }));
        expect(typeof read.ok).toBe('boolean');
      }),
      { seed: 33, numRuns: 300 },
    );
  });
});

function set(document: unknown, path: string, value: unknown): void {
  const parts = path.split('.');
  const last = parts.pop() as string;
  const owner = parts.reduce((at, part) => (at as Record<string, unknown>)[part], document);
  (owner as Record<string, unknown>)[last] = value;
}
