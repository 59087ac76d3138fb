import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { killRounds } from '#tests/db/kill-rounds.ts';

/**
 * `npm run bench:kills -- [KILLS] [SEED]`: kills a working program so many times, 500 unless told, and looks
 * after each that nothing it said was kept is missing. Ends with 1 at the first thing that is.
 */
const [kills = '500', seed = '8'] = process.argv.slice(2);
const folder = mkdtempSync(join(tmpdir(), 'undertrim-kills-'));
const started = performance.now();
try {
  const count = await killRounds(Number(kills), Number(seed), folder);
  const seconds = ((performance.now() - started) / 1_000).toFixed(0);
  console.log(
    `${count.kills} kills in ${seconds} s: all of ${count.told} things told as kept were there, every loss was told, ` +
      `and every backup was whole. Seen to fall in the middle of ${Object.entries(count.during)
        .map(([moment, kills]) => `${moment} ${kills}`)
        .join(', ')}.`,
  );
} finally {
  rmSync(folder, { recursive: true, force: true });
}
