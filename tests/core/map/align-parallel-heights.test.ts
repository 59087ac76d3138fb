import { describe, expect, test } from 'vitest';
import { boundsOf } from '#core/geometry/bounds.ts';
import { nearestStation } from '#core/geometry/nearest-station.ts';
import { parallelLine } from '#core/geometry/parallel-line.ts';
import { pointAtStation, stationLine } from '#core/geometry/station-line.ts';
import { addDefaultPanels } from '#core/map/commands/add-default-panels.ts';
import { addStarter } from '#core/map/commands/add-starter.ts';
import { addUnderlay } from '#core/map/commands/add-underlay.ts';
import { alignThings } from '#core/map/commands/align-things.ts';
import { moveThings } from '#core/map/commands/move-things.ts';
import { parallelRun } from '#core/map/commands/parallel-run.ts';
import { placeUnderlay } from '#core/map/commands/place-underlay.ts';
import { setHeights } from '#core/map/commands/set-heights.ts';
import { emptyMap, type MapDocument } from '#core/map/map-document.ts';
import { panelDefaults } from '#core/map/panel-defaults.ts';
import { panelPlace, placedPanelKeys } from '#core/map/panel-places.ts';
import type { RubSpot, Segment } from '#core/map/records.ts';
import { segmentLine } from '#core/map/segment-line.ts';
import { pixelToPlan, planToPixel } from '#core/map/underlay-place.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { drawFrom } from '#tests/generated/draw.ts';
import { edited } from '#tests/generated/edited.ts';
import { randomUnderlay } from '#tests/generated/random-body.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { sample } from '#tests/sample.ts';

const styles = ['hatch', 'saloon', 'estate', 'van', 'pickup', 'coupe'] as const;

describe('lining up', () => {
  const spots: readonly RubSpot[] = [
    { ...sample.rubSpot, id: 'rub-spot:a', points: [{ xMm: 100, yMm: -300, zMm: 0 }] },
    { ...sample.rubSpot, id: 'rub-spot:b', points: [{ xMm: 200, yMm: 50, zMm: 0 }] },
    { ...sample.rubSpot, id: 'rub-spot:c', points: [{ xMm: 900, yMm: 400, zMm: 0 }] },
  ];
  const map: MapDocument = {
    ...sample.map,
    rubSpots: new Map(spots.map((spot) => [spot.id, spot])),
  };
  const ids = spots.map((spot) => spot.id);
  const places = (how: Parameters<typeof alignThings>[1]['how']): number[][] =>
    [...edited(map, alignThings(map, { ids, how })).rubSpots.values()].map(({ points: [at] }) => [
      at?.xMm ?? Number.NaN,
      at?.yMm ?? Number.NaN,
    ]);

  test('puts everything on the outermost edge of that side', () => {
    expect(places('left').map(([, y]) => y)).toEqual([-300, -300, -300]);
    expect(places('right').map(([, y]) => y)).toEqual([400, 400, 400]);
    expect(places('front').map(([x]) => x)).toEqual([100, 100, 100]);
    expect(places('rear').map(([x]) => x)).toEqual([900, 900, 900]);
    expect(places('centre-line').map(([, y]) => y)).toEqual([0, 0, 0]);
  });

  test('spreads the ones between evenly and leaves the outermost where they are', () => {
    expect(places('spread-along')).toEqual([
      [100, -300],
      [500, 50],
      [900, 400],
    ]);
    expect(places('spread-across')).toEqual([
      [100, -300],
      [200, 50],
      [900, 400],
    ]);
  });

  test('runs that share a node move as one, so that none is bent', () => {
    const ids = ['segment:front', 'segment:middle', 'rub-spot:c'];
    const after = edited(map, alignThings(map, { ids, how: 'right' }));
    const ys = ['west', 'middle', 'east'].map((name) => after.nodes.get(`node:${name}`)?.at.yMm);
    expect(ys).toEqual([400, 400, 400]);
    expect(after.segments.get('segment:front')?.clips).toEqual(sample.segment.clips);
  });

  test('needs two things, three to spread', () => {
    const two = ids.slice(0, 2);
    expect(alignThings(map, { ids: two.slice(1), how: 'left' })).toMatchObject({ ok: false });
    expect(alignThings(map, { ids: two, how: 'spread-along' })).toMatchObject({
      problem: { code: 'bad-value', value: 2, allowed: '>= 3' },
    });
  });
});

test('a clip dragged with other things slides along its run, and goes with it when that moves', () => {
  const slid = edited(sample.map, moveThings(sample.map, { ids: ['clip:a'], dxMm: 350, dyMm: 90 }));
  expect(slid.segments.get('segment:front')?.clips.map(({ id, stationMm }) => [id, stationMm])).toEqual([
    ['clip:b', 400],
    ['clip:a', 450],
  ]);
  const ids = ['clip:a', 'segment:front'];
  const gone = edited(sample.map, moveThings(sample.map, { ids, dxMm: 0, dyMm: 90 }));
  expect(gone.segments.get('segment:front')?.clips).toEqual(sample.segment.clips);
  expect(moveThings(sample.map, { ids: ['clip:none'], dxMm: 1, dyMm: 1 })).toEqual({
    ok: false,
    problem: { code: 'not-found', thing: 'clip:none' },
  });
});

describe('a run beside another', () => {
  test('keeps its distance all along, whatever the corners', () => {
    const distancesMm: number[] = [];
    for (let seed = 1; seed <= 40; seed++) {
      const map = randomMap(seed, { smoothShare: 0 });
      for (const segment of [...map.segments.values()].slice(0, 4)) {
        const offsetMm = seed % 2 === 0 ? 12 : -12;
        const ends = ['free', 'free'] as const;
        const patch = parallelRun(map, { segmentId: segment.id, offsetMm, ends }, seededChance(seed));
        if (!patch.ok) throw new Error(JSON.stringify(patch.problem));
        const after = edited(map, patch);
        const run = patch.value.added.find((record) => record.id.startsWith('segment:')) as Segment;
        const line = segmentLine(after, run);
        const beside = segmentLine(map, segment);
        if (!line || !beside) throw new Error('no line');
        for (let share = 0; share <= 1; share += 0.05) {
          const at = pointAtStation(line, share * line.lengthMm);
          const { distanceMm } = nearestStation(beside, at);
          distancesMm.push(distanceMm);
        }
      }
    }
    // Nearer only where a run crosses itself, or where a fold is cut off between pieces shorter than the offset.
    const near = distancesMm.filter((mm) => mm < 12 * 0.98);
    expect(near.length / distancesMm.length).toBeLessThan(0.03);
    const far = distancesMm.filter((mm) => mm > 12 * 2.01);
    expect(far.length / distancesMm.length).toBeLessThan(0.01);
    expect(Math.max(...distancesMm)).toBeLessThan(12 * 4);
    expect(distancesMm.length).toBeGreaterThan(1_000);
  });

  test('meets at the mitre of a corner, on either side, and goes round a hairpin', () => {
    const at = (xMm: number, yMm: number) => ({ xMm, yMm, zMm: 7 });
    const corner = [at(0, 0), at(300, 0), at(300, 200)];
    expect(parallelLine(corner, 10).map(({ xMm, yMm }) => [xMm, yMm].map(Math.round))).toEqual([
      [0, -10],
      [310, -10],
      [310, 200],
    ]);
    expect(parallelLine(corner, -10)[1]).toMatchObject({ xMm: 290, zMm: 7 });
    const hairpin = [at(0, 0), at(300, 0), at(0, 40)];
    const line = stationLine(hairpin);
    const round = stationLine(parallelLine(hairpin, 10));
    for (let share = 0; share <= 1; share += 0.01) {
      const { distanceMm } = nearestStation(line, pointAtStation(round, share * round.lengthMm));
      expect(distanceMm).toBeGreaterThan(9.999);
      expect(distanceMm).toBeLessThan(11);
    }
  });

  test('follows a part only, at the same heights, to the right for a positive offset', () => {
    const { added } = good(
      parallelRun(
        sample.map,
        { segmentId: 'segment:front', offsetMm: 30, fromMm: 100, toMm: 300, snapMm: 5 },
        seededChance(1),
      ),
    );
    const ends = added.flatMap((record) => ('at' in record ? [record.at] : []));
    // Walked to the rear, the right hand points to the car's left: y falls.
    expect(ends).toEqual([
      { xMm: 100, yMm: -30, zMm: 0 },
      { xMm: 300, yMm: -30, zMm: 0 },
    ]);
  });

  test('takes hold of nodes near its ends, and branches from a run when told to', () => {
    const near = good(parallelRun(sample.map, { segmentId: 'segment:front', offsetMm: 10 }, seededChance(2)));
    const [run] = near.added as [Segment];
    expect([run.fromNodeId, run.toNodeId]).toEqual(['node:west', 'node:middle']);
    const snap = { segmentId: 'segment:rear', stationMm: 200 } as const;
    const branched = edited(
      sample.map,
      parallelRun(
        sample.map,
        { segmentId: 'segment:front', offsetMm: 60, ends: [undefined, snap] },
        seededChance(3),
      ),
    );
    expect(branched.segments.size).toBe(sample.map.segments.size + 2);
  });

  test('refuses a stretch or an offset that cannot be seen', () => {
    const input = { segmentId: 'segment:front', offsetMm: 40 } as const;
    const refused = (changes: object) => parallelRun(sample.map, { ...input, ...changes }, seededChance(1));
    expect(refused({ offsetMm: 0 })).toMatchObject({ problem: { field: 'offsetMm' } });
    expect(refused({ offsetMm: Number.NaN })).toMatchObject({ problem: { field: 'offsetMm' } });
    expect(refused({ fromMm: 300, toMm: 200 })).toMatchObject({ problem: { field: 'toMm' } });
    expect(refused({ toMm: 900 })).toMatchObject({ problem: { code: 'beyond-end' } });
  });
});

test('heights change the length and leave every clip where it is seen from above', () => {
  const heights = [{ at: 'to', zMm: 400 }] as const;
  const after = edited(sample.map, setHeights(sample.map, { segmentId: 'segment:front', heights }));
  const run = after.segments.get('segment:front') as Segment;
  const line = segmentLine(after, run);
  if (!line) throw new Error('no line');
  expect(line.lengthMm).toBeCloseTo(Math.hypot(500, 400), 9);
  expect(run.clips.map((clip) => pointAtStation(line, clip.stationMm).xMm)).toEqual([100, 400]);
  expect(after.segments.get('segment:middle')?.tags.at(-1)?.toMm).toBeCloseTo(Math.hypot(500, 400), 9);
});

describe('a picture under the drawing', () => {
  test('comes to lie with both its points where they are known to be, turned and scaled', () => {
    const draw = drawFrom(seededChance(11));
    for (let i = 0; i < 50; i++) {
      const underlay = randomUnderlay(draw);
      const map = edited(sample.map, addUnderlay(sample.map, { underlay }));
      const point = () => ({ uPx: draw.between(0, 3_000), vPx: draw.between(0, 2_000) });
      const place = () => ({ xMm: draw.between(0, 4_000), yMm: draw.between(-900, 900) });
      const picture = [point(), point()] as const;
      const body = [place(), place()] as const;
      const patch = placeUnderlay(map, { underlayId: underlay.id, picture, body });
      const placed = edited(map, patch).underlays.get(underlay.id);
      if (!placed) throw new Error('the picture is gone');
      for (const side of [0, 1] as const) {
        const at = pixelToPlan(placed, picture[side]);
        expect(at.xMm).toBeCloseTo(body[side].xMm, 6);
        expect(at.yMm).toBeCloseTo(body[side].yMm, 6);
        expect(planToPixel(placed, body[side]).vPx).toBeCloseTo(picture[side].vPx, 6);
      }
    }
  });

  test('is never mirrored: what reads from left to right still does', () => {
    const place = { origin: { xMm: 0, yMm: 0 }, mmPerPx: 2, turnRad: 1 };
    const corner = pixelToPlan(place, { uPx: 0, vPx: 0 });
    const right = pixelToPlan(place, { uPx: 1, vPx: 0 });
    const down = pixelToPlan(place, { uPx: 0, vPx: 1 });
    const cross =
      (right.xMm - corner.xMm) * (down.yMm - corner.yMm) - (right.yMm - corner.yMm) * (down.xMm - corner.xMm);
    // With y up, right turns clockwise into down: the cross product is minus the area of a pixel.
    expect(cross).toBeCloseTo(-4, 9);
  });
});

describe('beginning from a body style', () => {
  test.each(styles)('%s: the outlines have the measured size, on the centre line', (style) => {
    const map = { ...sample.map, details: { ...sample.map.details, centreLineYMm: 25 } };
    const size = { lengthMm: 4_600, widthMm: 1_850, wheelbaseMm: 2_750 };
    const after = edited(map, addStarter(map, { style, size, frontXMm: 100 }, seededChance(1)));
    const shell = [...after.outlines.values()].find((outline) => outline.kind === 'shell');
    const box = boundsOf(shell?.vertices ?? []);
    expect(box?.minXMm).toBeCloseTo(100, 6);
    expect(box?.maxXMm).toBeCloseTo(4_700, 6);
    expect(((box?.minYMm ?? 0) + (box?.maxYMm ?? 0)) / 2).toBeCloseTo(25, 6);
    const orders = [...after.outlines.values()].map((outline) => outline.order);
    expect(new Set(orders).size).toBe(orders.length);
  });

  test('a size no car has is refused by its field', () => {
    const refused = (size: { lengthMm: number; widthMm: number; wheelbaseMm: number }) =>
      addStarter(sample.map, { style: 'van', size }, seededChance(1));
    expect(refused({ lengthMm: 0, widthMm: 1, wheelbaseMm: 1 })).toMatchObject({
      problem: { field: 'lengthMm' },
    });
    expect(refused({ lengthMm: 4_000, widthMm: 1_800, wheelbaseMm: 4_000 })).toMatchObject({
      problem: { field: 'wheelbaseMm', allowed: '< 4000' },
    });
  });

  test.each(styles)(
    '%s: every usual panel has a place inside the shell, pairs on their own side',
    (style) => {
      const shell = { minXMm: 0, maxXMm: 4_500, minYMm: -900, maxYMm: 900 };
      for (const { key } of panelDefaults(style)) {
        const box = boundsOf(panelPlace(style, key, shell, 'right'));
        if (!box) throw new Error(`${key} has no place`);
        expect([key, box.maxXMm - box.minXMm > 40, box.maxYMm - box.minYMm > 40]).toEqual([key, true, true]);
        expect([
          key,
          box.minXMm >= 0 && box.maxXMm <= 4_500 && box.minYMm >= -900 && box.maxYMm <= 900,
        ]).toEqual([key, true]);
        if (key.startsWith('left-')) expect(box.maxYMm).toBeLessThan(0);
        if (key.startsWith('right-')) expect(box.minYMm).toBeGreaterThan(0);
      }
    },
  );

  test('no place is kept for a panel that no style has', () => {
    const used = new Set(
      styles.flatMap((style) => panelDefaults(style).map(({ key }) => key.replace(/^(left|right)-/, ''))),
    );
    expect(placedPanelKeys().filter((key) => !used.has(key))).toEqual([]);
  });

  test('the glovebox changes sides with the driver', () => {
    const middleY = (driveSide: 'left' | 'right'): number => {
      const map = emptyMap('map:x', 'X', 'hatch', driveSide);
      const after = edited(
        map,
        addDefaultPanels(map, { style: 'hatch', keys: ['glovebox'] }, seededChance(1)),
      );
      return [...after.panels.values()][0]?.area[0]?.yMm ?? Number.NaN;
    };
    expect(middleY('left')).toBeGreaterThan(0);
    expect(middleY('right')).toBeLessThan(0);
  });

  test('panels added later wait for those that are there, and none comes twice', () => {
    const map = emptyMap('map:x', 'X', 'estate', 'left');
    const add = (each: MapDocument, keys?: readonly string[]) =>
      edited(
        each,
        addDefaultPanels(
          each,
          keys ? { style: 'estate', keys } : { style: 'estate' },
          seededChance(each.panels.size),
        ),
      );
    const first = add(map, ['left-front-tread']);
    const all = add(first);
    expect(all.panels.size).toBe(panelDefaults('estate').length);
    const [tread] = first.panels.keys();
    const kick = [...all.panels.values()].find((panel) => panel.name === 'Left kick trim');
    expect(kick?.offFirst).toEqual([tread]);
    expect(add(all).panels.size).toBe(all.panels.size);
    expect(addDefaultPanels(map, { style: 'van', keys: ['boot-floor'] }, seededChance(1))).toEqual({
      ok: false,
      problem: { code: 'not-found', thing: 'boot-floor' },
    });
  });
});

function good<T>(result: { readonly ok: true; readonly value: T } | { readonly ok: false }): T {
  if (!result.ok) throw new Error('refused');
  return result.value;
}
