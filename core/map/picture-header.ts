import type { HostProblem } from '../quantity/problem.ts';

/** What a picture file says of itself before anything is decoded. */
export interface PictureHeader {
  readonly mediaType: 'image/jpeg' | 'image/png' | 'image/webp' | 'image/gif' | 'image/bmp' | 'image/avif';
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Decoded, a pixel takes four bytes: this many take half a gigabyte, more than any phone or scanner gives. */
export const mostPicturePixels = 120_000_000;
export const longestPictureSidePx = 30_000;

/**
 * Kind and size of a picture by its own header, whatever its name says; null for any other kind of file and
 * for one whose header is cut short or gives no size. PNG: W3C PNG 11.2; JPEG: ITU-T T.81 annex B; WebP: RFC
 * 9649; GIF89a, Windows bitmaps and the `ispe` box of ISO/IEC 23008-12 from memory. O(length of the header).
 * @example
 * readPictureHeader(new Uint8Array([0x47, 0x49, 0x46, 0x38, 0x39, 0x61, 16, 0, 9, 0]))
 *   // => { mediaType: 'image/gif', widthPx: 16, heightPx: 9 }
 */
export function readPictureHeader(bytes: Uint8Array): PictureHeader | null {
  for (const read of [png, jpeg, webp, gif, bmp, avif]) {
    const header = read(bytes, new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength));
    if (header) return header.widthPx > 0 && header.heightPx > 0 ? header : null;
  }
  return null;
}

/**
 * Whether a picture is larger than can be decoded without filling the memory, as a small file may well be.
 * @example
 * isOversized({ widthPx: 60_000, heightPx: 60_000 }) // => true
 */
export function isOversized({ widthPx, heightPx }: Pick<PictureHeader, 'widthPx' | 'heightPx'>): boolean {
  return Math.max(widthPx, heightPx) > longestPictureSidePx || widthPx * heightPx > mostPicturePixels;
}

/**
 * The problem with a picture that is too large to decode, by the name the user knows it by.
 * @example
 * oversized('scan.png', { widthPx: 60_000, heightPx: 60_000 }).code // => 'picture-oversized'
 */
export function oversized(
  file: string,
  { widthPx, heightPx }: Pick<PictureHeader, 'widthPx' | 'heightPx'>,
): Extract<HostProblem, { code: 'picture-oversized' }> {
  return {
    code: 'picture-oversized',
    file,
    widthPx,
    heightPx,
    mostPixels: mostPicturePixels,
    longestSidePx: longestPictureSidePx,
  };
}

const says = (bytes: Uint8Array, at: number, letters: string): boolean =>
  [...letters].every((letter, i) => bytes[at + i] === letter.charCodeAt(0));

function png(bytes: Uint8Array, view: DataView): PictureHeader | null {
  if (bytes.length < 24 || !says(bytes, 0, '\x89PNG\r\n\x1a\n') || !says(bytes, 12, 'IHDR')) return null;
  return { mediaType: 'image/png', widthPx: view.getUint32(16), heightPx: view.getUint32(20) };
}

/** The size stands in the frame header, behind segments of any length; each one says where the next begins. */
function jpeg(bytes: Uint8Array, view: DataView): PictureHeader | null {
  if (!says(bytes, 0, '\xff\xd8\xff')) return null;
  let at = 2;
  while (at + 9 <= bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1] as number;
    if (isFrame(marker)) {
      return { mediaType: 'image/jpeg', heightPx: view.getUint16(at + 5), widthPx: view.getUint16(at + 7) };
    }
    if (marker === 0xff) at += 1;
    else if (standsAlone(marker)) at += 2;
    else if (marker === startOfScan || view.getUint16(at + 2) < 2) return null;
    else at += 2 + view.getUint16(at + 2);
  }
  return null;
}

const startOfScan = 0xda;
/** Start of frame, of whichever coding; the three others in that row define tables. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
const standsAlone = (marker: number): boolean => marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8);

function webp(bytes: Uint8Array, view: DataView): PictureHeader | null {
  if (bytes.length < 30 || !says(bytes, 0, 'RIFF') || !says(bytes, 8, 'WEBP')) return null;
  const mediaType = 'image/webp';
  const three = (at: number): number => view.getUint16(at, true) + ((bytes[at + 2] as number) << 16);
  if (says(bytes, 12, 'VP8X')) return { mediaType, widthPx: three(24) + 1, heightPx: three(27) + 1 };
  if (says(bytes, 12, 'VP8L') && bytes[20] === 0x2f) {
    const bits = view.getUint32(21, true);
    return { mediaType, widthPx: (bits & 0x3fff) + 1, heightPx: ((bits >>> 14) & 0x3fff) + 1 };
  }
  if (says(bytes, 12, 'VP8 ') && says(bytes, 23, '\x9d\x01\x2a')) {
    const side = (at: number): number => view.getUint16(at, true) & 0x3fff;
    return { mediaType, widthPx: side(26), heightPx: side(28) };
  }
  return null;
}

function gif(bytes: Uint8Array, view: DataView): PictureHeader | null {
  if (bytes.length < 10 || !says(bytes, 0, 'GIF8')) return null;
  return { mediaType: 'image/gif', widthPx: view.getUint16(6, true), heightPx: view.getUint16(8, true) };
}

function bmp(bytes: Uint8Array, view: DataView): PictureHeader | null {
  if (bytes.length < 26 || !says(bytes, 0, 'BM') || view.getUint32(14, true) < 40) return null;
  // A height below zero says that the rows come from the top.
  const side = (at: number): number => Math.abs(view.getInt32(at, true));
  return { mediaType: 'image/bmp', widthPx: side(18), heightPx: side(22) };
}

/** The properties stand near the beginning; of several sizes (a whole, its tiles, a small one) the largest counts. */
const avifHeadBytes = 100_000;

function avif(bytes: Uint8Array, view: DataView): PictureHeader | null {
  if (bytes.length < 32 || !says(bytes, 4, 'ftyp') || !says(bytes, 8, 'avi')) return null;
  let largest: PictureHeader | null = null;
  for (let at = 12; at + 16 <= Math.min(bytes.length, avifHeadBytes); at++) {
    if (bytes[at] !== 0x69 || !says(bytes, at, 'ispe')) continue;
    const found = { widthPx: view.getUint32(at + 8), heightPx: view.getUint32(at + 12) };
    if (found.widthPx * found.heightPx >= (largest ? largest.widthPx * largest.heightPx : 0)) {
      largest = { mediaType: 'image/avif', ...found };
    }
  }
  return largest;
}
