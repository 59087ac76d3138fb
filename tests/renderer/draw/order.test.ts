import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { MapDocument } from '#core/map/map-document.ts';
import { panelCycle } from '#core/map/panel-order.ts';
import { applyPatch } from '#core/map/patch.ts';
import type { Panel } from '#core/map/records.ts';
import type { PanelId } from '#core/quantity/id.ts';
import { ringSentence, turnedArrow } from '#renderer/places/draw/order/order-arrow.ts';
import { orderAround, orderPicture } from '#renderer/places/draw/order/order-picture.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { sample } from '#tests/sample.ts';

const panel = (name: string, offFirst: readonly PanelId[] = [], order = 0): Panel => ({
  ...sample.tread,
  id: `panel:${name}`,
  name,
  offFirst: [...offFirst],
  order,
});
const mapOf = (...panels: readonly Panel[]): MapDocument => ({
  ...sample.map,
  panels: new Map(panels.map((each) => [each.id, each])),
});
const car = mapOf(
  panel('tread'),
  panel('kick', ['panel:tread'], 1),
  panel('seat', ['panel:tread'], 2),
  panel('carpet', ['panel:kick', 'panel:seat'], 3),
  panel('lamp', [], 4),
);

describe('the diagram of what must be off first', () => {
  test('every panel stands below all it waits for, and no two stand on each other', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 50_000 }),
        fc.integer({ min: 280, max: 1_300 }),
        (seed, width) => {
          const { panels } = randomMap(seed, { panels: 14 });
          const picture = orderPicture(panels, panels.keys(), width);
          expect(picture.boxes).toHaveLength(panels.size);
          const at = new Map(picture.boxes.map((box) => [box.id, box]));
          for (const { first, waits, way } of picture.arrows) {
            expect(at.get(first)?.yPx).toBeLessThan(at.get(waits)?.yPx ?? 0);
            const heights = way.map(({ yPx }) => yPx);
            expect(heights).toEqual([...heights].sort((a, b) => a - b));
            expect(way.length % 2).toBe(0);
          }
          for (const one of picture.boxes) {
            expect(one.xPx).toBeGreaterThanOrEqual(-0.5);
            expect(one.xPx + picture.boxPx.width).toBeLessThanOrEqual(width + 0.5);
            for (const other of picture.boxes) {
              if (one === other) continue;
              const apart =
                Math.abs(one.xPx - other.xPx) >= picture.boxPx.width ||
                Math.abs(one.yPx - other.yPx) >= picture.boxPx.height;
              expect(apart).toBe(true);
            }
          }
        },
      ),
      { seed: 21, numRuns: 40 },
    );
  });

  test('an arrow past several rows passes between the panels of each, never through one', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 50_000 }), (seed) => {
        const { panels } = randomMap(seed, { panels: 20 });
        const { boxes, boxPx, arrows } = orderPicture(panels, panels.keys(), 1_000);
        for (const { way } of arrows) {
          for (let i = 1; i + 2 < way.length; i += 2) {
            const lane = way[i];
            if (!lane) throw new Error('no lane');
            const through = boxes.filter(
              ({ xPx, yPx }) => yPx === lane.yPx && lane.xPx > xPx && lane.xPx < xPx + boxPx.width,
            );
            expect(through).toEqual([]);
          }
        }
      }),
      { seed: 5, numRuns: 40 },
    );
  });

  test('panels in no order stand below the rest', () => {
    const picture = orderPicture(car.panels, car.panels.keys(), 290);
    const lamp = picture.boxes.find(({ id }) => id === 'panel:lamp');
    expect(Math.max(...picture.boxes.map(({ yPx }) => yPx))).toBe(lamp?.yPx);
    expect(picture.looseYPx).toBe(lamp?.yPx);
  });

  test('a ring that came with a file is still drawn, with all its arrows', () => {
    const ring = mapOf(panel('a', ['panel:b']), panel('b', ['panel:a']));
    const picture = orderPicture(ring.panels, ring.panels.keys(), 290);
    expect(picture.boxes).toHaveLength(2);
    expect(picture.arrows).toHaveLength(2);
  });

  test('round a panel stand all that must be off before it and what waits for it directly', () => {
    expect([...orderAround(car.panels, 'panel:seat')].sort()).toEqual([
      'panel:carpet',
      'panel:seat',
      'panel:tread',
    ]);
    expect(orderAround(car.panels, 'panel:lamp')).toEqual(['panel:lamp']);
  });
});

describe('an arrow', () => {
  const turned = (map: MapDocument, first: PanelId, waits: PanelId): MapDocument => {
    const patch = turnedArrow(map, first, waits);
    const after = patch.ok ? applyPatch(map, patch.value) : patch;
    if (!after.ok) throw new Error(after.problem.code);
    return after.value;
  };

  test('is put in by the first turn and taken out by the second', () => {
    const once = turned(car, 'panel:lamp', 'panel:carpet');
    expect(once.panels.get('panel:carpet')?.offFirst).toEqual(['panel:kick', 'panel:seat', 'panel:lamp']);
    expect(turned(once, 'panel:lamp', 'panel:carpet').panels.get('panel:carpet')?.offFirst).toEqual(
      car.panels.get('panel:carpet')?.offFirst,
    );
  });

  test('that would close a ring is refused with a sentence naming every panel of it', () => {
    const patch = turnedArrow(car, 'panel:carpet', 'panel:tread');
    const said = ringSentence(car, 'panel:carpet', 'panel:tread', patch) ?? '';
    for (const name of ['carpet', 'tread']) expect(said).toContain(name);
    expect(said).toMatch(/kick|seat/);
    expect(said).toContain('ring');
    expect(panelCycle(car.panels)).toBeNull();
  });

  test('from a panel to itself is refused in its own words', () => {
    const patch = turnedArrow(car, 'panel:seat', 'panel:seat');
    expect(ringSentence(car, 'panel:seat', 'panel:seat', patch)).toBe('A panel cannot wait for itself.');
  });
});
