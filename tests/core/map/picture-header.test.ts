import { describe, expect, test } from 'vitest';
import { isOversized, readPictureHeader } from '#core/map/picture-header.ts';
import { avifHead, bmpHead, gifHead, jpegHead, pngHead, webpHead } from '#tests/generated/picture-heads.ts';
import { randomPng } from '#tests/generated/random-picture.ts';

const sizeOf = (bytes: Uint8Array): unknown => {
  const header = readPictureHeader(bytes);
  return header && [header.mediaType, header.widthPx, header.heightPx];
};

describe('a picture’s size is read from its header', () => {
  test('whichever kind it is', () => {
    expect(sizeOf(randomPng(7, 40, 30))).toEqual(['image/png', 40, 30]);
    expect(sizeOf(jpegHead(4_032, 3_024))).toEqual(['image/jpeg', 4_032, 3_024]);
    expect(sizeOf(webpHead('VP8 ', 800, 600))).toEqual(['image/webp', 800, 600]);
    expect(sizeOf(webpHead('VP8L', 16_384, 9))).toEqual(['image/webp', 16_384, 9]);
    expect(sizeOf(webpHead('VP8X', 800, 600))).toEqual(['image/webp', 800, 600]);
    expect(sizeOf(gifHead(800, 600))).toEqual(['image/gif', 800, 600]);
    expect(sizeOf(bmpHead(800, -600))).toEqual(['image/bmp', 800, 600]);
    expect(sizeOf(avifHead([512, 512], [4_000, 3_000], [320, 240]))).toEqual(['image/avif', 4_000, 3_000]);
  });

  test('in a view that starts in the middle of other bytes', () => {
    const within = Buffer.concat([Buffer.alloc(13, 1), pngHead(70, 50), Buffer.alloc(9)]);
    expect(sizeOf(within.subarray(13))).toEqual(['image/png', 70, 50]);
  });

  test('behind a camera’s notes, whatever they hold', () => {
    const notes = [
      new Uint8Array(65_533),
      new Uint8Array(60_000).fill(0xff),
      // A frame header of another size within the notes, as the small picture in them has one.
      jpegHead(160, 120),
    ];
    for (const note of notes)
      expect(sizeOf(jpegHead(4_032, 3_024, note))).toEqual(['image/jpeg', 4_032, 3_024]);
  });
});

describe('a picture is refused before it is decoded', () => {
  test('when a few bytes claim more pixels than there is memory', () => {
    const bombs = [
      pngHead(60_000, 60_000),
      jpegHead(60_000, 60_000),
      webpHead('VP8X', 60_000, 60_000),
      webpHead('VP8L', 16_384, 16_384),
      gifHead(60_000, 60_000),
      bmpHead(60_000, -60_000),
      avifHead([64, 64], [60_000, 60_000]),
      pngHead(1, 2_000_000_000),
    ];
    for (const bomb of bombs) {
      const header = readPictureHeader(bomb);
      expect(header && isOversized(header), String(sizeOf(bomb))).toBe(true);
    }
  });

  test('but not what a good camera or scanner gives', () => {
    for (const [widthPx, heightPx] of [
      [12_000, 9_000],
      [30_000, 4_000],
      [1, 1],
    ] as const) {
      expect(isOversized({ widthPx, heightPx })).toBe(false);
    }
  });

  test('when it has no size, is cut short, or is something else under a picture’s name', () => {
    const whole = [randomPng(7), jpegHead(400, 300), webpHead('VP8X', 40, 30), gifHead(4, 3), bmpHead(4, 3)];
    for (const bytes of whole) {
      expect(sizeOf(bytes)).not.toBeNull();
      for (let length = 0; length < 10; length++) expect(sizeOf(bytes.subarray(0, length))).toBeNull();
    }
    expect(sizeOf(pngHead(0, 30))).toBeNull();
    expect(sizeOf(jpegHead(400, 0))).toBeNull();
    expect(sizeOf(Buffer.from('not a picture at all, though it is long enough to be one'))).toBeNull();
    expect(sizeOf(Buffer.from('%PDF-1.7 and more, and more, and more, and more'))).toBeNull();
    expect(sizeOf(Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>'))).toBeNull();
  });

  test('when its segments lead nowhere or in circles', () => {
    const scan = Buffer.from([0xff, 0xd8, 0xff, 0xda, 0, 12, ...Array(40).fill(0xff)]);
    const noLength = Buffer.from([0xff, 0xd8, 0xff, 0xe1, 0, 0, 0xff, 0xe1, 0, 0, 0, 0, 0, 0]);
    const onlyFill = Buffer.concat([Buffer.from([0xff, 0xd8]), Buffer.alloc(5_000_000, 0xff)]);
    const beyond = Buffer.from([0xff, 0xd8, 0xff, 0xe1, 0xff, 0xff, 1, 2, 3, 4, 5, 6, 7, 8]);
    for (const bytes of [scan, noLength, onlyFill, beyond]) expect(sizeOf(bytes)).toBeNull();
  });
});
