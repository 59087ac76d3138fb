import { describe, expect, test } from 'vitest';
import { createHazardCache } from '#core/chafe/hazard-cache.ts';
import { segmentHazard } from '#core/chafe/segment-hazard.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { MapNode, RubSpot, Segment } from '#core/map/records.ts';
import { type Chance, seededChance } from '#core/quantity/chance.ts';
import { circuit, clip, randomMap } from './chafe-map.ts';

function anyOf<R>(table: ReadonlyMap<string, R>, chance: Chance): R {
  return [...table.values()][Math.floor(chance() * table.size)] as R;
}

/** One small edit of each kind a person makes. */
const edits: readonly ((map: MapDocument, chance: Chance) => MapDocument)[] = [
  (map, chance) => {
    const each: Segment = anyOf(map.segments, chance);
    return { ...map, segments: new Map(map.segments).set(each.id, { ...each, covering: 'braided-sleeve' }) };
  },
  (map, chance) => {
    const each: Segment = anyOf(map.segments, chance);
    const clips = [...each.clips, clip(`new-${chance()}`, chance() * 100)];
    return { ...map, segments: new Map(map.segments).set(each.id, { ...each, clips }) };
  },
  (map, chance) => {
    const each: MapNode = anyOf(map.nodes, chance);
    const at = { ...each.at, xMm: each.at.xMm + 20 * chance() };
    return { ...map, nodes: new Map(map.nodes).set(each.id, { ...each, at }) };
  },
  (map, chance) => {
    const each: MapNode = anyOf(map.nodes, chance);
    const kind = chance() < 0.5 ? 'branch' : 'inline-connector';
    return { ...map, nodes: new Map(map.nodes).set(each.id, { ...each, kind }) };
  },
  (map, chance) => {
    const each: RubSpot = anyOf(map.rubSpots, chance);
    const clearanceMm = chance() < 0.3 ? null : chance() * 10;
    return { ...map, rubSpots: new Map(map.rubSpots).set(each.id, { ...each, clearanceMm, severity: 3 }) };
  },
  (map, chance) => {
    const rubSpots = new Map(map.rubSpots);
    rubSpots.delete((anyOf(map.rubSpots, chance) as RubSpot).id);
    return { ...map, rubSpots };
  },
  (map, chance) => {
    const segments = new Map(map.segments);
    segments.delete((anyOf(map.segments, chance) as Segment).id);
    return { ...map, segments };
  },
  (map, chance) => {
    const through = circuit('new', [(anyOf(map.segments, chance) as Segment).id], { conductorMm2: 0.35 });
    return { ...map, circuits: new Map(map.circuits).set(through.id, through) };
  },
];

describe('the remembered hazard of a map', () => {
  test('after any edit every run stands as if worked out afresh', () => {
    const chance = seededChance(99);
    let map = randomMap(chance, 120);
    const cache = createHazardCache();
    cache.hazards(map);
    for (let i = 0; i < 80; i++) {
      const edit = edits[i % edits.length];
      if (!edit) continue;
      map = edit(map, chance);
      const remembered = cache.hazards(map);
      expect(remembered.size).toBe(map.segments.size);
      for (const segment of map.segments.values()) {
        expect(remembered.get(segment.id)?.perMm).toEqual(segmentHazard(map, segment)?.perMm);
      }
    }
  });

  test('an edit works out a handful of runs, not the map', () => {
    const chance = seededChance(3);
    const map = randomMap(chance, 2_000);
    const cache = createHazardCache();
    const before = cache.hazards(map);
    expect(cache.recomputed()).toBe(2_000);
    const edited = (edits[0] as (typeof edits)[number])(map, chance);
    const after = cache.hazards(edited);
    expect(cache.recomputed()).toBeLessThan(20);
    let same = 0;
    for (const [id, hazard] of after) if (before.get(id) === hazard) same++;
    expect(same).toBeGreaterThan(1_980);
  });

  test('an edit takes a small part of the time the whole map takes', () => {
    const chance = seededChance(17);
    let map = randomMap(chance, 800);
    const cache = createHazardCache();
    cache.hazards(map);
    const timed = (work: () => unknown): number => {
      const started = performance.now();
      work();
      return performance.now() - started;
    };
    // The least of rounds in turn: a busy machine slows both alike.
    let [whole, edited] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (let round = 0; round < 6; round++) {
      whole = Math.min(
        whole,
        timed(() => createHazardCache().hazards(map)),
      );
      const next = (edits[round % 3] as (typeof edits)[number])(map, chance);
      edited = Math.min(
        edited,
        timed(() => cache.hazards(next)),
      );
      map = next;
    }
    expect(edited / whole).toBeLessThan(0.25);
  });

  test('the same map again costs nothing', () => {
    const map = randomMap(seededChance(4), 50);
    const cache = createHazardCache();
    const first = cache.hazards(map);
    expect(cache.hazards(map)).toBe(first);
    expect(cache.recomputed()).toBe(0);
  });
});
