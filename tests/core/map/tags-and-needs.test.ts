import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rangesInside } from '#core/geometry/ranges-inside.ts';
import { confirmTags } from '#core/map/commands/confirm-tags.ts';
import { proposeTags } from '#core/map/commands/propose-tags.ts';
import { setTag } from '#core/map/commands/set-tag.ts';
import type { Segment } from '#core/map/records.ts';
import { segmentLine } from '#core/map/segment-line.ts';
import { panelsOver, segmentNeeds } from '#core/map/segment-needs.ts';
import { drawFrom } from '#tests/generated/draw.ts';
import { edited } from '#tests/generated/edited.ts';
import { chanceBeside, randomMap } from '#tests/generated/random-map.ts';
import { sample } from '#tests/sample.ts';

const seeds = fc.integer({ min: 0, max: 1_000_000 });
const confirmed = (segment: Segment) => segment.tags.filter((tag) => tag.confirmed);

describe('proposing which panels hide a run', () => {
  test('never touches a confirmed tag, and proposing again changes nothing', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const map = randomMap(seed, { panels: 12 });
        const once = edited(map, proposeTags(map, {}));
        for (const run of map.segments.values()) {
          expect(confirmed(once.segments.get(run.id) as Segment)).toEqual(confirmed(run));
        }
        expect(proposeTags(once, {})).toEqual({ ok: true, value: { added: [], removed: [], changed: [] } });
      }),
      { seed: 61, numRuns: 100 },
    );
  });

  test('hides every place of a run that lies under the area, but for touches too short to matter', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const map = randomMap(seed, { panels: 6 });
        const after = edited(map, proposeTags(map, {}));
        for (const run of after.segments.values()) {
          const line = segmentLine(after, run);
          for (const panel of after.panels.values()) {
            for (const range of line ? rangesInside(line, panel.area) : []) {
              if (range.toMm - range.fromMm < 12) continue;
              const middle = (range.fromMm + range.toMm) / 2;
              expect(panelsOver(run, middle)).toContain(panel.id);
            }
          }
        }
      }),
      { seed: 62, numRuns: 60 },
    );
  });

  test('over a drawn seat gives a proposal where the seat is', () => {
    const area = [
      { xMm: 1100, yMm: -50 },
      { xMm: 1300, yMm: -50 },
      { xMm: 1300, yMm: 50 },
      { xMm: 1100, yMm: 50 },
    ];
    const map = {
      ...sample.map,
      panels: new Map(sample.map.panels).set('panel:seat', { ...sample.seat, area }),
    };
    const after = edited(map, proposeTags(map, {}));
    expect(after.segments.get('segment:rear')?.tags).toEqual([
      { panelId: 'panel:seat', fromMm: 100, toMm: 300, confirmed: false },
    ]);
    const said = edited(after, confirmTags(after, { segmentIds: ['segment:rear'] }));
    expect(said.segments.get('segment:rear')?.tags[0]?.confirmed).toBe(true);
  });
});

describe('painting a panel along a run', () => {
  test('hides exactly what was painted, and wiping shows exactly what was wiped', () => {
    fc.assert(
      fc.property(seeds, fc.boolean(), (seed, over) => {
        const map = randomMap(seed);
        const draw = drawFrom(chanceBeside(seed));
        const run = draw.pick([...map.segments.values()]);
        const panel = draw.pick([...map.panels.values()]);
        const lengthMm = segmentLine(map, run)?.lengthMm ?? 0;
        const a = draw.chance() * lengthMm;
        const b = draw.chance() * lengthMm;
        const [from, to] = [Math.min(a, b), Math.max(a, b)];
        const input = { segmentId: run.id, panelId: panel.id, fromMm: a, toMm: b, over };
        const painted = edited(map, setTag(map, input)).segments.get(run.id) as Segment;
        for (let i = 0; i < 40; i++) {
          const station = draw.chance() * lengthMm;
          // Half a millimetre at an edge is below what a tape shows.
          if (Math.abs(station - from) < 1 || Math.abs(station - to) < 1) continue;
          const nearEdge = run.tags.some(
            (tag) => Math.abs(tag.fromMm - station) < 1 || Math.abs(tag.toMm - station) < 1,
          );
          if (nearEdge) continue;
          const hit = station > from && station < to;
          const hidden = panelsOver(painted, station).includes(panel.id);
          expect(hidden).toBe(hit ? over : panelsOver(run, station).includes(panel.id));
        }
      }),
      { seed: 63, numRuns: 200 },
    );
  });

  test('joins what it touches and makes a proposal a fact', () => {
    const input = { segmentId: 'segment:front', panelId: 'panel:seat' } as const;
    const first = edited(sample.map, setTag(sample.map, { ...input, fromMm: 0, toMm: 200, over: true }));
    const second = edited(first, setTag(first, { ...input, fromMm: 400, toMm: 200, over: true }));
    expect(second.segments.get('segment:front')?.tags).toContainEqual({
      panelId: 'panel:seat',
      fromMm: 0,
      toMm: 400,
      confirmed: true,
    });
  });
});

describe('what must come off to see a run', () => {
  test('is told for every millimetre from end to end, and agrees with the tags', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const map = randomMap(seed, { panels: 10 });
        for (const run of map.segments.values()) {
          const lengthMm = segmentLine(map, run)?.lengthMm ?? 0;
          const pieces = segmentNeeds(run, lengthMm);
          expect(pieces[0]?.fromMm).toBe(0);
          expect(pieces.at(-1)?.toMm).toBe(lengthMm);
          for (const [i, piece] of pieces.entries()) {
            if (i > 0) expect(piece.fromMm).toBe(pieces[i - 1]?.toMm);
            // A border within half a millimetre of an end is taken as that end.
            if (piece.toMm - piece.fromMm < 1.1) continue;
            expect(panelsOver(run, (piece.fromMm + piece.toMm) / 2)).toEqual(piece.panelIds);
          }
        }
      }),
      { seed: 64, numRuns: 100 },
    );
  });
});
