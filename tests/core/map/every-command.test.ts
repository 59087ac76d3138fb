import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { circuitFaults } from '#core/circuit/circuit-faults.ts';
import { mapToExchange } from '#core/map/exchange.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { mapFaults } from '#core/map/map-faults.ts';
import { applyPatch, invertPatch, type Patch, squashPatches } from '#core/map/patch.ts';
import { readMap } from '#core/map/read-map.ts';
import { randomEdit, verbNames } from '#tests/generated/random-edit.ts';
import { randomMap } from '#tests/generated/random-map.ts';

const seeds = fc.integer({ min: 0, max: 1_000_000 });

function applied(map: MapDocument, patch: Patch): MapDocument {
  const after = applyPatch(map, patch);
  if (!after.ok) throw new Error(`a command's own patch does not apply: ${JSON.stringify(after.problem)}`);
  return after.value;
}

/** Three edits in turn on one map, as far as they were not refused. */
function threeEdits(seed: number): { map: MapDocument; patches: Patch[] } {
  let map = randomMap(seed);
  const start = map;
  const patches: Patch[] = [];
  for (let i = 0; patches.length < 3; i++) {
    const verb = verbNames[(seed + i * 7) % verbNames.length] as string;
    const patch = randomEdit(map, verb, seed + i);
    if (!patch?.ok) continue;
    patches.push(patch.value);
    map = applied(map, patch.value);
  }
  return { map: start, patches };
}

describe('every drawing verb', () => {
  test.each(verbNames)('%s: undoing puts back exactly what was there', (verb) => {
    let worked = 0;
    fc.assert(
      fc.property(seeds, (seed) => {
        const map = randomMap(seed);
        const patch = randomEdit(map, verb, seed);
        if (!patch?.ok) return;
        worked++;
        const after = applied(map, patch.value);
        expect(mapToExchange(applied(after, invertPatch(patch.value)))).toEqual(mapToExchange(map));
      }),
      { seed: 7, numRuns: 30 },
    );
    expect(worked).toBeGreaterThan(2);
  });

  test.each(verbNames)('%s: leaves a map that hangs together and reads back from its file', (verb) => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const map = randomMap(seed);
        const patch = randomEdit(map, verb, seed);
        if (!patch?.ok) return;
        const after = applied(map, patch.value);
        expect(mapFaults(after)).toEqual([]);
        if (verb !== 'changeCircuit') expect(circuitFaults(after)).toEqual(circuitFaults(map));
        const read = readMap(JSON.stringify(mapToExchange(after)));
        expect(read.ok && mapToExchange(read.value.map)).toEqual(mapToExchange(after));
      }),
      { seed: 11, numRuns: 20 },
    );
  });

  test('two edits made into one do the same as both in turn', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { map, patches } = threeEdits(seed);
        const [a, b] = patches as [Patch, Patch, Patch];
        const inTurn = applied(applied(map, a), b);
        expect(mapToExchange(applied(map, squashPatches(a, b)))).toEqual(mapToExchange(inTurn));
      }),
      { seed: 13, numRuns: 100 },
    );
  });

  test('it does not matter which two of three edits are made into one first', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { patches } = threeEdits(seed);
        const [a, b, c] = patches as [Patch, Patch, Patch];
        const left = squashPatches(squashPatches(a, b), c);
        const right = squashPatches(a, squashPatches(b, c));
        expect(sorted(left)).toEqual(sorted(right));
      }),
      { seed: 17, numRuns: 100 },
    );
  });
});

function sorted(patch: Patch): Patch {
  const byId = (a: { id: string }, b: { id: string }): number => (a.id < b.id ? -1 : 1);
  return {
    added: patch.added.toSorted(byId),
    removed: patch.removed.toSorted(byId),
    changed: patch.changed.toSorted((a, b) => byId(a[1], b[1])),
  };
}
