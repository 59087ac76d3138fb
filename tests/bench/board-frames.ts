import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright';
import { mapToExchange } from '#core/map/exchange.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { addMap } from '#db/map-store.ts';
import { openStore } from '#db/open-store.ts';
import { startApp } from '#tests/app/app-host.ts';
import { type FrameRecord, installFrameWatch } from './frame-watch.ts';

/** How one gesture on the board went. */
export interface GestureFrames extends FrameRecord {
  readonly gesture: string;
}

export interface BoardFrames {
  /** From asking for the map to its first drawing on the screen, in ms. */
  readonly openMs: number;
  readonly gestures: readonly GestureFrames[];
}

const viewport = { width: 1440, height: 900 };
const paceMs = 16;

/** Opens a map in a browser as a user would and works the board with the mouse: pan, zoom, drag, point. */
export async function boardFrames(
  map: MapDocument,
  browserPath: string,
  rounds: number,
): Promise<BoardFrames> {
  const folder = mkdtempSync(join(tmpdir(), 'undertrim-frames-'));
  const store = openStore(join(folder, 'undertrim.db'));
  if (!store.ok) throw new Error(store.problem.code);
  const added = addMap(store.value, mapToExchange(map), '2026-01-05T09:00:00Z');
  store.value.close();
  if (!added.ok) throw new Error(added.problem.code);
  const app = await startApp(folder);
  let browser: Browser | null = null;
  try {
    browser = await chromium.launch({
      executablePath: browserPath,
      args: ['--no-sandbox', '--disable-background-networking', '--disable-quic'],
    });
    const page = await browser.newPage({ viewport });
    await page.addInitScript(installFrameWatch);
    const openMs = await openMap(page, app.address, map.id);
    const gestures: GestureFrames[] = [];
    for (let round = 0; round < rounds; round++) gestures.push(...(await allGestures(page, map)));
    return { openMs, gestures };
  } finally {
    await browser?.close();
    await app.end();
  }
}

async function openMap(page: Page, address: string, mapId: string): Promise<number> {
  await page.goto(address);
  await page.waitForLoadState('networkidle');
  return page.evaluate(async (id) => {
    const asked = performance.now();
    const drawn = new Promise<number>((resolve) => {
      new PerformanceObserver((list) => {
        const first = list.getEntriesByName('board-draw')[0];
        if (first) resolve(first.startTime + first.duration);
      }).observe({ entryTypes: ['measure'] });
    });
    location.hash = `#/map/${id}`;
    return (await drawn) - asked;
  }, mapId);
}

async function allGestures(page: Page, map: MapDocument): Promise<GestureFrames[]> {
  const board = page.locator('[data-board]');
  const box = await board.boundingBox();
  if (!box) throw new Error('no board');
  const middle = { x: Math.round(box.x + box.width / 2), y: Math.round(box.y + box.height / 2) };
  const still = async (): Promise<void> => page.waitForTimeout(600);
  const showAll = async (): Promise<void> => {
    await page.mouse.move(middle.x, middle.y);
    await board.focus();
    await page.keyboard.press('f');
    await still();
  };
  const closer = async (): Promise<void> => {
    await showAll();
    for (let i = 0; i < 6; i++) await page.mouse.wheel(0, -120);
    await still();
  };
  const gestures: GestureFrames[] = [];
  const watch = async (gesture: string, work: () => Promise<void>): Promise<void> => {
    await page.evaluate(() => (globalThis as unknown as Watched).frameWatchStart());
    await work();
    const record = await page.evaluate(() => (globalThis as unknown as Watched).frameWatchStop());
    gestures.push({ gesture, ...record });
    await still();
  };

  await showAll();
  await watch('nothing happens', () => page.waitForTimeout(1_500));
  await watch('pan, all in view', () => pan(page, middle));
  await closer();
  await watch('pan, close up', () => pan(page, middle));
  await showAll();
  await watch('zoom', () => zoom(page, middle));
  await closer();
  await watch('point', () => sweep(page, middle));
  await closer();
  const node = await nodeOnScreen(page, map);
  await watch('drag a node, close up', () => dragNode(page, node));
  await showAll();
  const far = await nodeOnScreen(page, map);
  await watch('drag a node, all in view', () => dragNode(page, far));
  return gestures;
}

interface Watched {
  readonly frameWatchStart: () => void;
  readonly frameWatchStop: () => FrameRecord;
}
interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Moves at a hand's pace: one place a frame. */
async function along(page: Page, places: readonly Spot[]): Promise<void> {
  for (const place of places) {
    const started = performance.now();
    await page.mouse.move(place.x, place.y);
    const left = paceMs - (performance.now() - started);
    if (left > 0) await new Promise((resolve) => setTimeout(resolve, left));
  }
}

/** Round the middle and across, 120 places. */
const loop = (middle: Spot, reachPx: number): Spot[] =>
  Array.from({ length: 120 }, (_, i) => ({
    x: middle.x + Math.round(Math.sin(i / 13) * reachPx),
    y: middle.y + Math.round(Math.sin(i / 9) * reachPx * 0.5),
  }));

async function pan(page: Page, middle: Spot): Promise<void> {
  await page.mouse.move(middle.x, middle.y);
  await page.mouse.down({ button: 'middle' });
  await along(page, loop(middle, 300));
  await page.mouse.up({ button: 'middle' });
}

const sweep = (page: Page, middle: Spot): Promise<void> => along(page, loop(middle, 300));

/** In and out again, a little at a time as a wheel that turns freely. */
async function zoom(page: Page, middle: Spot): Promise<void> {
  await page.mouse.move(middle.x, middle.y);
  for (let i = 0; i < 120; i++) {
    const started = performance.now();
    await page.mouse.wheel(0, i % 60 < 30 ? -30 : 30);
    const left = paceMs - (performance.now() - started);
    if (left > 0) await new Promise((resolve) => setTimeout(resolve, left));
  }
}

async function dragNode(page: Page, at: Spot): Promise<void> {
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await along(page, loop(at, 120));
  await page.mouse.up();
}

/** Where on the screen the node nearest to the board's middle lies. */
async function nodeOnScreen(page: Page, map: MapDocument): Promise<Spot> {
  const board = page.locator('[data-board]');
  const box = await board.boundingBox();
  const read = async (name: string): Promise<number> =>
    Number(await board.getAttribute(`data-camera-${name}`));
  const [pxPerMm, xPx, yPx] = [await read('px-per-mm'), await read('x-px'), await read('y-px')];
  if (!box) throw new Error('no board');
  const spots = [...map.nodes.values()].map(({ at }) => ({
    x: box.x + xPx + at.xMm * pxPerMm,
    y: box.y + yPx - at.yMm * pxPerMm,
  }));
  const off = (spot: Spot): number =>
    Math.hypot(spot.x - box.x - box.width / 2, spot.y - box.y - box.height / 2);
  return spots.reduce((best, spot) => (off(spot) < off(best) ? spot : best));
}
