import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jobText } from '#core/job/job-text.ts';
import { readJob } from '#core/job/read-job.ts';
import { mapText } from '#core/map/exchange.ts';
import { emptyMap, type MapDocument } from '#core/map/map-document.ts';
import { invertPatch, type Patch, patchOf } from '#core/map/patch.ts';
import { readMap } from '#core/map/read-map.ts';
import { ok } from '#core/quantity/result.ts';
import { edited } from '#tests/generated/edited.ts';
import { randomEdit, verbNames } from '#tests/generated/random-edit.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { sample } from '#tests/sample.ts';

const seeds = fc.integer({ min: 0, max: 1_000_000 });

/** Draws a whole map from nothing and goes on editing it; every patch made, in turn. */
function drawnFromNothing(seed: number): { start: MapDocument; end: MapDocument; patches: Patch[] } {
  const goal = randomMap(seed);
  const start = { ...emptyMap(goal.id, 'New', 'hatch', 'left'), details: goal.details };
  const { outlines, underlays, panels, nodes, segments, rubSpots, circuits } = goal;
  const patches = [outlines, underlays, panels, nodes, segments, rubSpots, circuits].map((table) =>
    patchOf({ added: [...table.values()] }),
  );
  let end = patches.reduce((map, patch) => edited(map, ok(patch)), start as MapDocument);
  for (let i = 0; i < 25; i++) {
    const verb = verbNames[(seed + i * 11) % verbNames.length] as string;
    const patch = randomEdit(end, verb, seed + i);
    if (!patch?.ok) continue;
    patches.push(patch.value);
    end = edited(end, patch);
  }
  return { start, end, patches };
}

describe('nothing is lost on the way', () => {
  test('a map reads back from its file to the same file, byte for byte, after any edits', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { end } = drawnFromNothing(seed);
        const text = mapText(end);
        const read = readMap(text);
        expect(read.ok && read.value.problems).toEqual([]);
        expect(read.ok && mapText(read.value.map)).toBe(text);
      }),
      { seed: 21, numRuns: 25 },
    );
  });

  test('the order in which records and fields stand in a file makes no difference', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const map = randomMap(seed);
        const turned = JSON.stringify(turnedRound(JSON.parse(mapText(map))));
        const read = readMap(turned);
        expect(read.ok && mapText(read.value.map)).toBe(mapText(map));
      }),
      { seed: 22, numRuns: 20 },
    );
  });

  test('taking every edit back leads to the empty map, and doing all again to the same map', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { start, end, patches } = drawnFromNothing(seed);
        expect(patches.length).toBeGreaterThan(12);
        const back = patches.toReversed().map(invertPatch);
        const empty = back.reduce((map, patch) => edited(map, ok(patch)), end);
        expect(mapText(empty)).toBe(mapText(start));
        const again = patches.reduce((map, patch) => edited(map, ok(patch)), empty);
        expect(mapText(again)).toBe(mapText(end));
      }),
      { seed: 23, numRuns: 25 },
    );
  });

  test('a job reads back from its file to the same file', () => {
    const text = jobText(sample.job);
    const read = readJob(text);
    expect(read.ok && jobText(read.value)).toBe(text);
    const turned = readJob(JSON.stringify(turnedRound(JSON.parse(text), false)));
    expect(turned.ok && jobText(turned.value)).toBe(text);
  });
});

/** Record lists backwards, and the fields of everything backwards. */
function turnedRound(value: unknown, lists = true): unknown {
  if (Array.isArray(value)) return value.map((each) => fieldsTurned(each));
  const fields = Object.entries(value as object).toReversed();
  return Object.fromEntries(
    fields.map(([name, each]) => [
      name,
      Array.isArray(each) && lists ? each.toReversed().map(fieldsTurned) : fieldsTurned(each),
    ]),
  );
}

function fieldsTurned(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(fieldsTurned);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .toReversed()
      .map(([name, each]) => [name, fieldsTurned(each)]),
  );
}
