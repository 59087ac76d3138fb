import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, type Page, test } from '@playwright/test';
import { mapExchangeSchema, mapFromExchange, mapText } from '#core/map/exchange.ts';
import { drawWords } from '#renderer/language/draw.ts';
import { compareWords } from '#renderer/language/draw-compare.ts';
import { handoverWords } from '#renderer/language/handover.ts';
import { type AppHost, startApp } from './app-host.ts';
import { detailsHand } from './details-hand.ts';
import { drawMeasuredBody, drawOutlines, drawPanels } from './estate/draw-body.ts';
import { layRuns, layTailgate, setParts } from './estate/lay-loom.ts';
import { markRubSpots, traceCircuits } from './estate/mark-and-trace.ts';
import { namedAfterThings } from './estate/normal-form.ts';
import { paintPanel, setFixings } from './estate/set-fixings.ts';
import { bumpers, scan, scannedAt, underlayPicture } from './estate/underlay-picture.ts';
import { quickHand } from './quick-hand.ts';

const sample = join(import.meta.dirname, '../../sample-vehicles/varnholt-aldine.map.json');
/** Writes what was drawn as the sample instead of comparing it with the one that is kept. */
const rewrites = process.env.UNDERTRIM_REWRITE_SAMPLE === '1';

/** Wide enough to see a quarter of the car at a scale whose grid is ten millimetres. */
const viewport = { width: 1_920, height: 1_080 };
test.use({ viewport });

let app: AppHost;
let page: Page;

test.beforeAll(async ({ browser }) => {
  app = await startApp();
  page = await browser.newPage({ viewport });
  await page.goto(app.address);
});

test.afterAll(async () => {
  await page.close();
  await app.end();
});

test('the estate of the third demo job is drawn from a scanned plan, and is the sample', async ({
  browser,
}) => {
  // Minutes on two idle cores; a busy machine must not make it fail.
  test.setTimeout(2_400_000);
  const hand = quickHand(page);
  const details = detailsHand(page);
  const hands = { hand, details };

  await test.step('a new map', async () => {
    await page.getByRole('button', { name: 'New map' }).click();
    const form = page.getByRole('form', { name: 'New map' });
    await form.getByLabel('Name of the map').fill('Varnholt Aldine, estate, 2016');
    await form.getByLabel('Body').selectOption({ label: 'Estate' });
    await form.getByRole('radio', { name: 'LHD' }).check();
    await form.getByRole('button', { name: 'Make the map and draw' }).click();
    await hand.board.waitFor();
  });

  await test.step('a scanned plan is laid under it, straightened by the two bumpers', async () => {
    const easel = await browser.newPage();
    const buffer = await underlayPicture(easel);
    await easel.close();
    const chosen = page.waitForEvent('filechooser');
    await page.getByText('Lay a picture under it').click();
    await (await chosen).setFiles({ name: 'estate plan.png', mimeType: 'image/png', buffer });
    await details.show('Details');
    // Where the picture lies at first, as the details say it.
    const read = async (label: string): Promise<number> => Number(await details.field(label).inputValue());
    const xMm = await read('Top left corner, rearward (x)');
    const yMm = await read('Top left corner, to the right (y)');
    const mmPerPx = await read('Size of a picture point');
    for (const bumper of [bumpers.front, bumpers.rear]) {
      const { xPx, yPx } = scannedAt(bumper);
      await hand.trace([[xMm + xPx * mmPerPx, yMm - yPx * mmPerPx]]);
    }
    const known = page.getByRole('form', { name: 'Place it by two points' });
    await known.getByRole('radio', { name: 'Where both are' }).check();
    for (const [place, [x, y]] of [
      ['First place', bumpers.front],
      ['Second place', bumpers.rear],
    ] as const) {
      await known.getByLabel(`${place}: Rearward (x), mm`).fill(String(x));
      await known.getByLabel(`${place}: To the right (y), mm`).fill(String(y));
    }
    await known.getByRole('button', { name: 'Place the picture' }).click();
    await expect.poll(() => read('Size of a picture point')).toBeCloseTo(scan.mmPerPx, 1);
    // Turned back by as much as it lay askew.
    expect(await read('Turned by')).toBeCloseTo((scan.turnRad * 180) / Math.PI, 1);
  });

  await test.step('the body to measure, and what the map is of', async () => {
    await hand.board.focus();
    await hand.strike('Escape');
    await details.enter(
      drawWords.fields.note,
      'An invented vehicle for trying things out. Fits no real car. Panel minutes are common practice, no source.',
    );
    await drawMeasuredBody(hands);
  });
  await test.step('lines of the body, by hand on the grid', async () => {
    await hand.zoom(7);
    await hand.strike('S');
    await hand.strike('G');
    await drawOutlines(hands);
  });
  await test.step('panels with minutes, order and cautions', () => drawPanels(hands));
  await test.step('parts, plugs and branches', () => setParts(hands));
  await test.step('runs with bends, heights, covers, fixings and what hides them', () => layRuns(hands));
  await test.step('the tailgate, with a branch out of a run', () => layTailgate(hands));
  await test.step('fixings one by one, and the one that is missing', () => setFixings(hands));
  await test.step('a panel painted along the loom', () => paintPanel(hands));
  await test.step('rub spots', () => markRubSpots(hands));
  await test.step('circuits traced by their ends, with pins', () => traceCircuits(hands));

  await test.step('the checklist asks for nothing more', async () => {
    await details.show(/^Checklist/);
    await expect(details.side.getByText(drawWords.ready)).toBeVisible();
    await expect(details.side.locator('[data-ready][data-done=false]')).toHaveCount(0);
    await expect(page.getByText(drawWords.onDisk)).toBeVisible();
  });

  await test.step('handed out as a document, it is the sample', async () => {
    await page.getByRole('button', { name: compareWords.tasks }).click();
    await page.getByRole('tab', { name: handoverWords.handOut.title }).click();
    const download = page.waitForEvent('download');
    const { make, document } = handoverWords.handOut;
    await page.getByRole('button', { name: `${make}: ${document}` }).click();
    const text = readFileSync(await (await download).path(), 'utf8');
    const drawn = mapExchangeSchema.parse(JSON.parse(text));
    expect(drawn.underlays.map(({ name }) => name)).toEqual(['estate plan']);
    const named = mapExchangeSchema.parse(namedAfterThings(drawn, 'map:varnholt-aldine'));
    const normal = mapText(mapFromExchange(named));
    if (rewrites) writeFileSync(sample, normal);
    expect(normal).toBe(readFileSync(sample, 'utf8'));
  });
});
