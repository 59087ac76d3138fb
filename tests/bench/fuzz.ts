import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { contractTarget } from '#tests/fuzz/contract-target.ts';
import { fuzz } from '#tests/fuzz/fuzz-run.ts';
import { readerTargets } from '#tests/fuzz/fuzz-targets.ts';

/**
 * `npm run bench:fuzz -- [CASES] [SEED]`: gives every reader of files and messages so many damaged and crafted
 * ones, 120,000 unless told. Ends with 1 at the first that crashes, hangs, grows or escapes.
 */
const [cases = '120000', seed = '8'] = process.argv.slice(2);
const folder = mkdtempSync(join(tmpdir(), 'undertrim-fuzz-'));
const { target, workshop } = contractTarget(folder);
const started = performance.now();
try {
  const report = fuzz([...readerTargets, target], Number(cases), Number(seed));
  for (const [name, outcomes] of report.outcomes) {
    const counts = [...outcomes].sort((a, b) => b[1] - a[1]).map(([code, count]) => `${code} ${count}`);
    console.log(`${name.padEnd(20)} ${counts.join(', ')}`);
  }
  const { slowest, heldMb } = report;
  const seconds = ((performance.now() - started) / 1_000).toFixed(0);
  console.log(
    `${report.cases} cases in ${seconds} s; slowest ${slowest.cpuMs.toFixed(0)} ms of processor ` +
      `(${slowest.name}, seed ${slowest.seed}); at most ${heldMb.toFixed(0)} MB held.`,
  );
} finally {
  workshop.close();
  rmSync(folder, { recursive: true, force: true });
}
