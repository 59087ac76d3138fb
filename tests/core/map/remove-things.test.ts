import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { removeThings } from '#core/map/commands/remove-things.ts';
import { dependents } from '#core/map/dependents.ts';
import { tableOfKind } from '#core/map/map-document.ts';
import { mapFaults } from '#core/map/map-faults.ts';
import { drawFrom } from '#tests/generated/draw.ts';
import { edited } from '#tests/generated/edited.ts';
import { chanceBeside, randomMap } from '#tests/generated/random-map.ts';
import { sample } from '#tests/sample.ts';

describe('removing things', () => {
  test('never leaves anything that names what is gone', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), (seed) => {
        const map = randomMap(seed);
        const draw = drawFrom(chanceBeside(seed));
        const all = Object.values(tableOfKind).flatMap((name) => [...map[name].keys()] as string[]);
        const ids = Array.from({ length: draw.whole(1, all.length) }, () => draw.pick(all));
        const after = edited(map, removeThings(map, { ids: [...new Set(ids)] }));
        expect(mapFaults(after)).toEqual([]);
        const left = new Set(
          Object.values(tableOfKind).flatMap((name) => [...after[name].keys()] as string[]),
        );
        expect(ids.filter((id) => left.has(id))).toEqual([]);
      }),
      { seed: 21, numRuns: 200 },
    );
  });

  test('a node takes its runs along, and circuits through them lose their trace but not their name', () => {
    const after = edited(sample.map, removeThings(sample.map, { ids: ['node:middle'] }));
    expect([...after.segments.keys()]).toEqual(['segment:rear']);
    expect(after.circuits.get('circuit:seat-switch')).toEqual({ ...sample.circuit, path: [] });
  });

  test('a panel takes its tags and its place in the order along', () => {
    const after = edited(sample.map, removeThings(sample.map, { ids: ['panel:tread'] }));
    expect(after.panels.get('panel:seat')?.offFirst).toEqual([]);
    expect(after.segments.get('segment:front')?.tags).toEqual([]);
    expect(after.segments.get('segment:middle')?.tags.map((tag) => tag.panelId)).toEqual(['panel:seat']);
  });

  test('a plain branch goes with its last run, a component stays', () => {
    const after = edited(sample.map, removeThings(sample.map, { ids: ['segment:middle', 'segment:rear'] }));
    expect([...after.nodes.keys()]).toEqual(['node:west', 'node:middle', 'node:far']);
  });

  test('clips go by their own id', () => {
    const after = edited(sample.map, removeThings(sample.map, { ids: ['clip:a'] }));
    expect(after.segments.get('segment:front')?.clips.map((clip) => clip.id)).toEqual(['clip:b']);
  });

  test('what depends on a panel is named before it goes', () => {
    expect(dependents(sample.map, ['panel:tread'])).toEqual({
      ok: true,
      value: [
        { thing: 'panel:seat', effect: 'order-line-dropped' },
        { thing: 'segment:front', effect: 'tags-dropped' },
        { thing: 'segment:middle', effect: 'tags-dropped' },
      ],
    });
  });

  test('a thing that is not there is refused by name', () => {
    for (const id of ['node:none', 'clip:none', 'details:map', 'nonsense']) {
      expect(removeThings(sample.map, { ids: [id] })).toEqual({
        ok: false,
        problem: { code: 'not-found', thing: id },
      });
    }
  });
});
