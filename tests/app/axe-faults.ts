import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds wrong with a page as it stands; an empty list when nothing. */
export async function axeFaults(page: Page): Promise<readonly string[]> {
  // The page's own policy keeps foreign scripts out, so axe comes in through the debugger.
  await page.evaluate(source);
  return page.evaluate(async () => {
    const { axe } = window as unknown as {
      axe: { run(): Promise<{ violations: { id: string; nodes: { target: unknown[] }[] }[] }> };
    };
    const { violations } = await axe.run();
    return violations.map(
      ({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`,
    );
  });
}
