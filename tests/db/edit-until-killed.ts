import { writeSync } from 'node:fs';
import { mapToExchange } from '#core/map/exchange.ts';
import { patchOf } from '#core/map/patch.ts';
import { commitTransaction } from '#db/map-history-store.ts';
import { addMap, readMap } from '#db/map-store.ts';
import { openStore } from '#db/open-store.ts';
import { sample } from '#tests/sample.ts';

/** Moves one node on and on, telling each kept revision, until this process is killed. */
const store = openStore(process.argv[2] ?? '');
if (!store.ok) throw new Error(store.problem.code);
addMap(store.value, mapToExchange(sample.map), '2026-01-05T09:00:00Z');
for (;;) {
  const map = readMap(store.value, sample.map.id);
  const node = map?.nodes.find(({ id }) => id === 'node:far');
  if (!map || !node) throw new Error('the map is gone');
  const after = { ...node, at: { ...node.at, yMm: node.at.yMm + 1 } };
  const kept = commitTransaction(
    store.value,
    map.id,
    map.revision,
    {
      label: 'edit.moveNode',
      origin: 'user',
      patch: patchOf({ changed: [[node, after]] }),
      selectionBefore: [],
      selectionAfter: [],
    },
    '2026-01-05T09:00:00Z',
  );
  if (!kept.ok) throw new Error(kept.problem.code);
  writeSync(1, `${kept.value}\n`);
}
