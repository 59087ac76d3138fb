import type { Job } from '#core/job/job-document.ts';
import { mapToExchange } from '#core/map/exchange.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { ok } from '#core/quantity/result.ts';
import type { Connection } from '#db/connection.ts';
import { inOneTransaction } from '#db/in-one-transaction.ts';
import { addJob } from '#db/job-store.ts';
import { addMap } from '#db/map-store.ts';
import { keepPicture } from '#db/picture-store.ts';
import { wholeJob } from '#tests/core/job/closing-record.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { sample } from '#tests/sample.ts';

/** How much a shop has gathered. */
export interface ShopSize {
  readonly maps: number;
  readonly jobs: number;
  readonly photos: number;
  readonly photoBytes: number;
}

/** As much as is written down on one job. */
const remark =
  'Carpet wet under the seat rail; plug green on two pins, cleaned and sealed. Loom lay over the rail edge without a clip for a hand’s breadth. Customer says it began after the seat covers were fitted. Advised to keep the drain holes open.';

const words = ['tail lamp', 'heater', 'seat', 'mirror', 'wiper', 'horn', 'fuel gauge', 'door lock'];

/**
 * Fills a store as years of work would: half of the maps are small cars drawn by chance, the other half the
 * sample that jobs are done on, nine jobs of ten closed.
 */
export function fillShop(connection: Connection, size: ShopSize): void {
  const chance = seededChance(8);
  const drawn = [1, 2, 3, 4].map((seed) => mapToExchange(randomMap(seed, { runs: 40, panels: 12 })));
  const worked = mapToExchange(sample.map);
  const record = wholeJob();
  const open = { ...record.job, entries: [...record.job.entries] };
  record.add('note', { text: remark });
  record.add('close', { outcome: 'proved', reason: '', advice: '' });
  const closed = record.job;
  const time = (i: number): string => new Date(Date.UTC(2020, 0, 1) + i * 7_200_000).toISOString();
  inOneTransaction(connection, () => {
    for (let i = 0; i < size.maps; i++) {
      const from = i % 2 ? worked : (drawn[i % drawn.length] ?? worked);
      addMap(
        connection,
        { ...from, id: `map:m${i}`, details: { ...from.details, name: `Model ${i}` } },
        time(i),
      );
    }
    return ok(null);
  });
  inOneTransaction(connection, () => {
    for (let i = 0; i < size.jobs; i++) {
      const mapId = `map:m${(Math.floor(chance() * size.maps) | 1) % size.maps}` as const;
      const complaint = `${words[Math.floor(chance() * words.length)]} cuts out, car ${i}`;
      const from: Job = i % 10 === 0 ? open : closed;
      const vehicle = { ...from.vehicle, plate: `STOCK ${i}` };
      const pinned = { ...worked, id: mapId };
      addJob(connection, { ...from, id: `job:j${i}`, mapId, vehicle, complaint, openedAt: time(i) }, pinned);
    }
    return ok(null);
  });
  for (let at = 0; at < size.photos; at += 100) {
    inOneTransaction(connection, () => {
      for (let i = at; i < Math.min(size.photos, at + 100); i++) {
        const bytes = Buffer.alloc(size.photoBytes, i % 251);
        bytes.writeUInt32LE(i, 0);
        keepPicture(connection, 'image/jpeg', bytes);
      }
      return ok(null);
    });
  }
}
