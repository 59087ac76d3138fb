import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { hazardAlong } from '#core/chafe/hazard-along.ts';
import { createHazardCache } from '#core/chafe/hazard-cache.ts';
import { planDig } from '#core/dig/plan-dig.ts';
import type { Job } from '#core/job/job-document.ts';
import { rank, searchedLine } from '#core/job/rank.ts';
import { rankOnLine } from '#core/job/rank-on-line.ts';
import { changeSegment } from '#core/map/commands/change-segment.ts';
import { mapFromExchange, mapToExchange } from '#core/map/exchange.ts';
import { applyPatch } from '#core/map/patch.ts';
import type { Segment } from '#core/map/records.ts';
import { seededChance } from '#core/quantity/chance.ts';
import type { PanelId } from '#core/quantity/id.ts';
import { commitTransaction } from '#db/map-history-store.ts';
import { addMap, readMap } from '#db/map-store.ts';
import { openStore } from '#db/open-store.ts';
import { carShaped } from '#tests/core/dig/car-shaped.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { drawingVerbs } from './drawing-verbs.ts';
import { longCircuit } from './long-circuit.ts';
import { type Measured, measure, tableLine } from './measure.ts';

/** `npm run bench`: how fast the answers come on this machine. Prints a table; misses an aim with exit code 1. */
const results: Measured[] = [...ranking(), ...digging(), ...hazard(), ...database(), ...drawingVerbs()];
console.log(`${'measured'.padEnd(58)}${'median'.padStart(10)}${'95 %'.padStart(10)}`);
for (const each of results) console.log(tableLine(each));
process.exit(results.some(({ medianMs, aimMs }) => aimMs !== null && medianMs > aimMs) ? 1 : 0);

function ranking(): Measured[] {
  const { map, job } = longCircuit(5_000, 60);
  const line = searchedLine(map, job);
  if (!line.ok) throw new Error(line.problem.code);
  const field = hazardAlong(map, line.value);
  const first = map.segments.values().next().value as Segment;
  const looked: Job = {
    ...job,
    entries: [
      {
        id: 'entry:look',
        at: '2026-01-05T09:30:00Z',
        type: 'inspection',
        stretches: [{ segmentId: first.id, fromMm: 0, toMm: 400 }],
        result: 'seen-sound',
        lookQuality: 0.9,
        note: '',
      },
    ],
  };
  return [
    measure('rank, 5,000 cells, 60 panels, from nothing', 15, 50, () => rank(map, job)),
    measure('rank after one inspection, hazard kept', 15, 16, () =>
      rankOnLine(map, line.value, field, looked),
    ),
  ];
}

function digging(): Measured[] {
  const { looks, panels } = carShaped(seededChance(5_000), 60, 5_000);
  const off = new Set<PanelId>();
  const lookedAt = planDig(looks, panels, off).openings[0];
  const seenSound = looks.map((look) =>
    lookedAt?.looks.includes(look) ? { ...look, probability: look.probability * (1 - look.quality) } : look,
  );
  const offNow = new Set(lookedAt?.takeOff);
  return [
    measure('first plan, 5,000 looks, 60 panels', 15, 30, () => planDig(looks, panels, off)),
    measure('plan after one opening, 5,000 looks, 60 panels', 15, 12, () =>
      planDig(seenSound, panels, offNow),
    ),
  ];
}

function hazard(): Measured[] {
  const map = randomMap(7, { runs: 5_000, bendsPerRun: 4, panels: 60, rubSpots: 300, circuits: 12 });
  const run = map.segments.values().next().value as Segment;
  const cache = createHazardCache();
  cache.hazards(map);
  return [
    measure('hazard of 5,000 runs, from nothing', 8, 100, () => createHazardCache().hazards(map)),
    measure('hazard after one edit', 20, 5, (round) => {
      const patch = changeSegment(map, {
        segmentId: run.id,
        changes: { covering: round % 2 ? 'bare' : 'convoluted-tube' },
      });
      if (!patch.ok) throw new Error(patch.problem.code);
      const after = applyPatch(map, patch.value);
      if (after.ok) cache.hazards(after.value);
    }),
  ];
}

function database(): Measured[] {
  const folder = mkdtempSync(join(tmpdir(), 'undertrim-bench-'));
  const store = openStore(join(folder, 'bench.db'));
  if (!store.ok) throw new Error(store.problem.code);
  const map = mapToExchange(
    randomMap(7, { runs: 5_000, bendsPerRun: 4, panels: 60, rubSpots: 300, circuits: 12 }),
  );
  const added = addMap(store.value, map, '2026-01-05T09:00:00Z');
  if (!added.ok) throw new Error(added.problem.code);
  let segment = map.segments[0] as Segment;
  let revision = map.revision;
  const measured = [
    measure('open a map of 5,000 runs and 20,000 bends from disk', 10, 300, () => {
      const read = readMap(store.value, map.id);
      if (read) mapFromExchange(read);
    }),
    measure('one edit to disk', 40, 20, (round) => {
      const after: Segment = { ...segment, note: `round ${round}` };
      const kept = commitTransaction(
        store.value,
        map.id,
        revision,
        {
          label: 'edit.changeSegment',
          origin: 'user',
          patch: { added: [], removed: [], changed: [[segment, after]] },
          selectionBefore: [],
          selectionAfter: [],
        },
        '2026-01-05T09:00:00Z',
      );
      if (!kept.ok) throw new Error(kept.problem.code);
      segment = after;
      revision = kept.value;
    }),
  ];
  console.log(`The map takes ${(statSync(join(folder, 'bench.db')).size / 1e6).toFixed(1)} MB on disk.`);
  store.value.close();
  rmSync(folder, { recursive: true, force: true });
  return measured;
}
