import { proposedRubSpot, type UndrawnFind } from '#core/job/proposed-rub-spots.ts';
import { addRubSpot } from '#core/map/commands/add-rub-spot.ts';
import { mapFromExchange } from '#core/map/exchange.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { RubSpot } from '#core/map/records.ts';
import type { Transaction } from '#core/map/transaction.ts';
import { type MapId, newId } from '#core/quantity/id.ts';
import { ok, type Result } from '#core/quantity/result.ts';
import type { Client } from '#electron/contract/client.ts';

/** What the user says of a spot when it is added. */
export type SaidSpot = Pick<RubSpot, 'name' | 'kind'>;

/** The rub spot of a find, as the user names it. */
export function foundSpot(find: UndrawnFind, said: SaidSpot, chance: () => number): RubSpot {
  return { ...proposedRubSpot(find, newId('rub-spot', chance)), ...said };
}

/**
 * Adds the rub spot of a find to a vehicle map that is not open for drawing, as one edit that Draw can undo.
 * Tries once more when somebody else changed the map meanwhile. Gives the map's newest revision.
 */
export async function addFoundSpot(
  client: Client,
  mapId: MapId,
  find: UndrawnFind,
  said: SaidSpot,
  chance: () => number = Math.random,
): Promise<Result<number>> {
  let added = await tryOnce(client, mapId, foundSpot(find, said, chance));
  if (!added.ok && added.problem.code === 'stale-revision') {
    added = await tryOnce(client, mapId, foundSpot(find, said, chance));
  }
  return added;
}

async function tryOnce(client: Client, mapId: MapId, rubSpot: RubSpot): Promise<Result<number>> {
  const opened = await openMap(client, mapId);
  if (!opened.ok) return opened;
  const patch = addRubSpot(opened.value, { rubSpot });
  if (!patch.ok) return patch;
  const transaction: Transaction = {
    label: 'edit.addRubSpot',
    origin: 'user',
    patch: patch.value,
    selectionBefore: [],
    selectionAfter: [rubSpot.id],
  };
  const expectedRevision = opened.value.revision;
  const kept = await client('map.commit', { mapId, expectedRevision, transaction });
  return kept.ok ? ok(kept.value.revision) : kept;
}

/** A vehicle map as it is now. */
export async function openMap(client: Client, mapId: MapId): Promise<Result<MapDocument>> {
  const opened = await client('map.open', { mapId });
  return opened.ok ? ok(mapFromExchange(opened.value.map)) : opened;
}
