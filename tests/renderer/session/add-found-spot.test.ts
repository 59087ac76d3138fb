import { describe, expect, test } from 'vitest';
import { mapToExchange } from '#core/map/exchange.ts';
import type { Transaction } from '#core/map/transaction.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { clientOver } from '#electron/contract/client.ts';
import { addFoundSpot } from '#renderer/session/add-found-spot.ts';
import { sample } from '#tests/sample.ts';

const find = { segmentId: 'segment:rear', stationMm: 320, at: { xMm: 1320, yMm: 0, zMm: 0 } } as const;
const said = { name: 'Jack hook', kind: 'bracket' } as const;

/** A host of one map that refuses the first commits as stale. */
function host(stale: number) {
  const commits: { readonly expectedRevision: number; readonly transaction: Transaction }[] = [];
  const client = clientOver(async (name, input) => {
    if (name === 'map.open') {
      const map = mapToExchange({ ...sample.map, revision: 4 + commits.length });
      return { ok: true, value: { map, history: { done: [], undone: [] } } };
    }
    commits.push(input as (typeof commits)[number]);
    if (commits.length <= stale) {
      return { ok: false, problem: { code: 'stale-revision', expected: 4, found: 5 } };
    }
    return { ok: true, value: { revision: 4 + commits.length } };
  });
  return { commits, client };
}

describe('a rub spot added from a find', () => {
  test('is one edit of the map as it is now, found once, as the user names it', async () => {
    const { client, commits } = host(0);
    const added = await addFoundSpot(client, 'map:tiny', find, said, seededChance(1));
    expect(added).toEqual({ ok: true, value: 5 });
    expect(commits).toHaveLength(1);
    expect(commits[0]).toMatchObject({ expectedRevision: 4, transaction: { label: 'edit.addRubSpot' } });
    const [spot] = commits[0]?.transaction.patch.added ?? [];
    expect(spot).toMatchObject({ ...said, timesFound: 1, points: [find.at], shape: 'point' });
  });

  test('tries once more when the map was changed meanwhile, and then says so', async () => {
    const once = host(1);
    expect((await addFoundSpot(once.client, 'map:tiny', find, said, seededChance(1))).ok).toBe(true);
    expect(once.commits.map(({ expectedRevision }) => expectedRevision)).toEqual([4, 5]);
    const twice = host(2);
    expect(await addFoundSpot(twice.client, 'map:tiny', find, said, seededChance(1))).toMatchObject({
      problem: { code: 'stale-revision' },
    });
  });
});
