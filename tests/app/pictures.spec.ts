import { join } from 'node:path';
import { expect, type Page, test } from '@playwright/test';
import { build } from 'vite';
import { mapSvg } from '#renderer/drawing-export/map-svg.ts';
import { boardColours } from '#renderer/theme/tokens.ts';
import { jpegHead, pngHead, webpHead } from '#tests/generated/picture-heads.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import type { PictureTools } from './picture-tools.ts';

let script = '';

test.beforeAll(async () => {
  const built = await build({
    configFile: false,
    logLevel: 'silent',
    build: {
      write: false,
      lib: { entry: join(import.meta.dirname, 'picture-tools.ts'), formats: ['iife'], name: 'tools' },
    },
  });
  const [first] = Array.isArray(built) ? built : [built];
  if (!first || !('output' in first)) throw new Error('nothing was built');
  script = first.output[0].code;
});

/** An empty page that knows the picture tools and can make pictures of its own to try them on. */
async function pageWithTools(page: Page): Promise<void> {
  await page.goto('about:blank');
  await page.addScriptTag({ content: script });
  await page.addScriptTag({ content: `window.picture = ${picture.toString()}` });
}

declare global {
  interface Window {
    picture: typeof picture;
    pictureTools: PictureTools;
  }
}

/** A picture, left half red and right half blue, as a file; with `turn`, an EXIF orientation is written into it. */
async function picture(type: string, width: number, height: number, turn = 0): Promise<File> {
  const canvas = new OffscreenCanvas(width, height);
  const c = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
  c.fillStyle = '#f00';
  c.fillRect(0, 0, width / 2, height);
  c.fillStyle = '#00f';
  c.fillRect(width / 2, 0, width / 2, height);
  const bytes = new Uint8Array(await (await canvas.convertToBlob({ type })).arrayBuffer());
  // An APP1 segment with one entry, Orientation (0x0112), big-endian; Exif 2.32, from memory.
  const exif = [
    0xff,
    0xe1,
    0,
    34,
    0x45,
    0x78,
    0x69,
    0x66,
    0,
    0,
    0x4d,
    0x4d,
    0,
    42,
    0,
    0,
    0,
    8,
    0,
    1,
    0x01,
    0x12,
    0,
    3,
    0,
    0,
    0,
    1,
    0,
    turn,
    0,
    0,
    0,
    0,
    0,
    0,
  ];
  const parts = turn === 0 ? [bytes] : [bytes.slice(0, 2), new Uint8Array(exif), bytes.slice(2)];
  return new File(parts, 'photo', { type });
}

test('a photo taken on its side is kept upright, and the bytes say no more of how it was held', async ({
  page,
}) => {
  await pageWithTools(page);
  const kept = await page.evaluate(async () => {
    const file = await window.picture('image/jpeg', 400, 200, 6);
    const scaled = await window.pictureTools.scalePicture(file);
    if (!scaled.ok) return scaled.problem.code;
    const { bytes, mediaType, widthPx, heightPx } = scaled.value;
    const blob = new Blob([bytes as Uint8Array<ArrayBuffer>], { type: mediaType });
    const bitmap = await createImageBitmap(blob, { imageOrientation: 'none' } as ImageBitmapOptions);
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
    const c = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
    c.drawImage(bitmap, 0, 0);
    const top = [...c.getImageData(100, 50, 1, 1).data];
    const bottom = [...c.getImageData(100, 350, 1, 1).data];
    return { widthPx, heightPx, mediaType, size: [bitmap.width, bitmap.height], top, bottom };
  });
  expect(kept).toMatchObject({ widthPx: 200, heightPx: 400, mediaType: 'image/jpeg', size: [200, 400] });
  if (typeof kept === 'string') throw new Error(kept);
  // Turned a quarter clockwise, what was left comes to the top.
  expect(kept.top[0]).toBeGreaterThan(200);
  expect(kept.bottom[2]).toBeGreaterThan(200);
});

test('a photo whose notes make no sense is taken as it lies, and a bomb is refused unopened', async ({
  page,
}) => {
  await pageWithTools(page);
  const heads = [pngHead(60_000, 60_000), jpegHead(60_000, 60_000), webpHead('VP8X', 60_000, 60_000)];
  const seen = await page.evaluate(
    async (bombs) => {
      const { scalePicture } = window.pictureTools;
      const jpeg = new Uint8Array(await (await window.picture('image/jpeg', 400, 200)).arrayBuffer());
      // Big-endian notes: turns that do not exist, a directory beyond the end, one that leads to itself, one of
      // 65,535 entries, and notes cut off after their name.
      const notes = [
        [0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 0],
        [0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 9, 0, 0, 0, 0, 0, 0],
        [0xff, 0xff, 0, 1],
        [0, 8, 0, 0, 0, 0, 0, 8],
        [0, 8, 0xff, 0xff, 0x01, 0x12, 0, 3],
        [],
      ].map((rest) => {
        const tiff = rest.length > 0 ? [0x4d, 0x4d, 0, 42, 0, 0, ...rest] : [];
        const body = [0x45, 0x78, 0x69, 0x66, 0, 0, ...tiff];
        return new Uint8Array([0xff, 0xe1, 0, body.length + 2, ...body]);
      });
      const outcome = async (file: File): Promise<unknown> => {
        const scaled = await scalePicture(file);
        return scaled.ok ? [scaled.value.widthPx, scaled.value.heightPx] : scaled.problem;
      };
      const file = (...parts: Uint8Array[]): File =>
        new File(parts as BlobPart[], 'photo.png', { type: 'image/png' });
      return {
        odd: await Promise.all(notes.map((note) => outcome(file(jpeg.slice(0, 2), note, jpeg.slice(2))))),
        bombs: await Promise.all(bombs.map((bytes) => outcome(file(new Uint8Array(bytes))))),
        cut: await outcome(file(jpeg.slice(0, 120))),
      };
    },
    heads.map((head) => [...head]),
  );
  // A JPEG under a PNG's name, too: what it is is told by its bytes.
  expect(seen.odd).toEqual(Array(6).fill([400, 200]));
  const bomb = { code: 'picture-oversized', file: 'photo.png', widthPx: 60_000, heightPx: 60_000 };
  expect(seen.bombs).toEqual(Array(3).fill(expect.objectContaining(bomb)));
  expect(seen.cut).toMatchObject({ code: 'picture-unreadable' });
});

test('a large scan comes down to 4,000 pixels in its shape, and says how far it is', async ({ page }) => {
  await pageWithTools(page);
  const { shares, size } = await page.evaluate(async () => {
    const shares: number[] = [];
    const file = await window.picture('image/png', 9_000, 3_000);
    const scaled = await window.pictureTools.scalePicture(file, {
      onProgress: (share) => shares.push(share),
    });
    return {
      shares,
      size: scaled.ok ? [scaled.value.widthPx, scaled.value.heightPx, scaled.value.mediaType] : [],
    };
  });
  expect(size).toEqual([4_000, 1_333, 'image/png']);
  expect(shares[0]).toBe(0);
  expect(shares.at(-1)).toBe(1);
  expect(shares.length).toBeGreaterThan(4);
  expect(shares).toEqual(shares.toSorted((a, b) => a - b));
});

test('a scan small enough is kept byte for byte', async ({ page }) => {
  await pageWithTools(page);
  const same = await page.evaluate(async () => {
    const file = await window.picture('image/png', 300, 200);
    const scaled = await window.pictureTools.scalePicture(file);
    const before = new Uint8Array(await file.arrayBuffer());
    return scaled.ok && scaled.value.bytes.every((byte, i) => byte === before[i]);
  });
  expect(same).toBe(true);
});

test('what is no picture, and a stop, are told apart', async ({ page }) => {
  await pageWithTools(page);
  const problems = await page.evaluate(async () => {
    const { scalePicture } = window.pictureTools;
    const text = await scalePicture(new File(['not a picture'], 'notes.txt', { type: 'text/plain' }));
    const empty = await scalePicture(new File([], 'empty.png', { type: 'image/png' }));
    const stop = new AbortController();
    const file = await window.picture('image/jpeg', 5_000, 5_000);
    const stopped = await scalePicture(file, {
      signal: stop.signal,
      onProgress: (share) => share > 0.5 && stop.abort(),
    });
    return [text, empty, stopped].map((each) => (each.ok ? null : each.problem));
  });
  expect(problems).toEqual([
    { code: 'picture-unreadable', file: 'notes.txt', mediaType: 'text/plain' },
    { code: 'picture-unreadable', file: 'empty.png', mediaType: 'image/png' },
    { code: 'stopped' },
  ]);
});

test('a drawing is taken as well-formed SVG by the browser and comes out as a PNG of its size', async ({
  page,
}) => {
  await pageWithTools(page);
  const svg = mapSvg(randomMap(3), boardColours.day, { longSidePx: 900, subtitle: '5 < 6 & "so"' });
  const seen = await page.evaluate(async (text) => {
    const root = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
    const made = await window.pictureTools.mapPng(text, 2);
    if (!made.ok) return made.problem.code;
    const bitmap = await createImageBitmap(made.value);
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
    const c = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
    c.drawImage(bitmap, 0, 0);
    const { data } = c.getImageData(0, 0, bitmap.width, bitmap.height);
    let dark = 0;
    for (let i = 0; i < data.length; i += 4) if ((data[i] as number) < 90) dark++;
    const width = Number(root.getAttribute('width'));
    return { name: root.nodeName, twice: bitmap.width === width * 2, type: made.value.type, dark };
  }, svg);
  expect(seen).toMatchObject({ name: 'svg', twice: true, type: 'image/png' });
  expect(typeof seen === 'string' ? 0 : seen.dark).toBeGreaterThan(2_000);
  const refused = await page.evaluate(async () => {
    const { mapPng } = window.pictureTools;
    const broken = await mapPng('<svg xmlns="http://www.w3.org/2000/svg"><g>');
    const huge = await mapPng('<svg xmlns="http://www.w3.org/2000/svg" width="900" height="900"/>', 100);
    return [broken, huge].map((each) => (each.ok ? null : each.problem.code));
  });
  expect(refused).toEqual(['picture-unreadable', 'bad-value']);
});
