import { expect, test } from 'vitest';
import { freshFolder } from '#tests/hosts/fresh-folder.ts';
import { killRounds } from './kill-rounds.ts';

test('a program killed in the middle of work has everything it said was kept', async () => {
  const count = await killRounds(8, 7, freshFolder());
  expect(count.kills).toBe(8);
  expect(count.told).toBeGreaterThan(8);
}, 120_000);
