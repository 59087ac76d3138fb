import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mapFromExchange, mapText, mapToExchange } from '#core/map/exchange.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { invertPatch } from '#core/map/patch.ts';
import { readMap as readMapText } from '#core/map/read-map.ts';
import type { Transaction } from '#core/map/transaction.ts';
import type { MapId } from '#core/quantity/id.ts';
import type { Connection } from '#db/connection.ts';
import { commitTransaction, readHistory, readMapAt } from '#db/map-history-store.ts';
import { addMap, readMap } from '#db/map-store.ts';
import { packBundle, sha256Of } from '#electron/bundle/pack-bundle.ts';
import { unpackBundle } from '#electron/bundle/unpack-bundle.ts';
import { openAt, openFreshStore } from '#tests/db/open-fresh-store.ts';
import { edited } from '#tests/generated/edited.ts';
import { randomEdit, verbNames } from '#tests/generated/random-edit.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { randomPng } from '#tests/generated/random-picture.ts';

const seeds = fc.integer({ min: 0, max: 1_000_000 });
const now = '2026-01-05T09:00:00Z';

/** A generated map whose picture, if it has one, is a real one. */
function pictured(seed: number): { map: MapDocument; png: Buffer } {
  const map = randomMap(seed);
  const png = randomPng(seed);
  const underlays = new Map(
    [...map.underlays].map(([id, each]) => [
      id,
      { ...each, imageSha256: sha256Of(png), mediaType: 'image/png' as const },
    ]),
  );
  return { map: { ...map, underlays }, png };
}

const transaction = (origin: Transaction['origin'], patch: Transaction['patch']): Transaction => ({
  label: 'edit.any',
  origin,
  patch,
  selectionBefore: [],
  selectionAfter: [],
});

const keptText = (connection: Connection, mapId: MapId): string => {
  const kept = readMap(connection, mapId);
  if (!kept) throw new Error('the map is gone');
  return mapText(mapFromExchange(kept));
};

describe('a generated map', () => {
  test('comes out of a bundle as it went in, pictures and all, and into the same bundle again', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { map, png } = pictured(seed);
        const document = { fileName: 'car.map.json', text: mapText(map) };
        const pictures = [...map.underlays.values()].map(({ imageSha256 }) => ({
          sha256: imageSha256,
          mediaType: 'image/png' as const,
          bytes: png,
        }));
        const zip = packBundle([document], pictures);
        const read = unpackBundle(zip);
        if (!read.ok) throw new Error(JSON.stringify(read.problem));
        expect(read.value.documents).toEqual([{ entry: 'documents/car.map.json', text: document.text }]);
        const back = readMapText(read.value.documents[0]?.text ?? '');
        expect(back.ok && mapText(back.value.map)).toBe(document.text);
        expect(Buffer.compare(packBundle([document], read.value.pictures), zip)).toBe(0);
      }),
      { seed: 31, numRuns: 25 },
    );
  });

  test('is the same in the store after any edits and after a restart, and every undo leads back and every redo on', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { connection, file } = openFreshStore();
        let map = randomMap(seed);
        const id = map.id;
        addMap(connection, mapToExchange(map), now);
        const texts = [mapText(map)];
        for (let i = 0; i < 12; i++) {
          const patch = randomEdit(map, verbNames[(seed + i * 13) % verbNames.length] as string, seed + i);
          if (!patch?.ok) continue;
          const kept = commitTransaction(connection, id, map.revision, transaction('user', patch.value), now);
          if (!kept.ok) throw new Error(JSON.stringify(kept.problem));
          map = { ...edited(map, patch), revision: kept.value };
          texts.push(mapText(map));
        }
        connection.close();
        const again = openAt(file);
        expect(keptText(again, id)).toBe(texts.at(-1));
        for (const [revision, text] of texts.entries()) {
          const at = readMapAt(again, id, revision);
          expect(at.ok && mapText(mapFromExchange(at.value))).toBe(text);
        }
        const edits = readHistory(again, id).done;
        let revision = map.revision;
        for (const { patch } of edits.toReversed()) {
          const undone = commitTransaction(again, id, revision, transaction('undo', invertPatch(patch)), now);
          if (!undone.ok) throw new Error(JSON.stringify(undone.problem));
          revision = undone.value;
        }
        expect(keptText(again, id)).toBe(texts[0]?.replace('"revision": 0', `"revision": ${revision}`));
        const last = map.revision;
        for (const { patch } of edits) {
          const redone = commitTransaction(again, id, revision, transaction('redo', patch), now);
          if (!redone.ok) throw new Error(JSON.stringify(redone.problem));
          revision = redone.value;
        }
        expect(keptText(again, id)).toBe(
          texts.at(-1)?.replace(`"revision": ${last}`, `"revision": ${revision}`),
        );
        again.close();
      }),
      { seed: 33, numRuns: 12 },
    );
    // Every commit is a transaction on disk; on a busy machine some hundreds of them take their time.
  }, 90_000);
});
