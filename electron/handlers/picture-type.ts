/** The kinds of picture that may lie under a drawing. */
export type PictureType = 'image/jpeg' | 'image/png' | 'image/webp';

/** The largest picture kept, in bytes: a 4,000 pixel scan at the best quality is a third of it. */
export const mostPictureBytes = 30_000_000;

/**
 * What kind of picture some bytes are by their first letters, whatever a file name claims; null for
 * anything else. JPEG: ITU-T T.81 annex B; PNG: W3C PNG 5.2; WebP: RFC 9649.
 */
export function pictureTypeOf(bytes: Uint8Array): PictureType | null {
  const found = foundType(bytes);
  return found === 'image/jpeg' || found === 'image/png' || found === 'image/webp' ? found : null;
}

/**
 * What some bytes are, to say so to whoever brought them: a media type, or the first bytes in
 * hexadecimal where the kind is not known. GIF89a, TIFF 6.0, boxes of ISO/IEC 14496-12
 * for camera formats, PDF 32000; all from memory.
 */
export function foundType(bytes: Uint8Array): string {
  const head = Buffer.from(bytes.buffer, bytes.byteOffset, Math.min(bytes.byteLength, 64));
  const letters = (from: number, to: number): string => head.subarray(from, to).toString('latin1');
  if (letters(0, 3) === '\xff\xd8\xff') return 'image/jpeg';
  if (letters(0, 8) === '\x89PNG\r\n\x1a\n') return 'image/png';
  if (letters(0, 4) === 'RIFF' && letters(8, 12) === 'WEBP') return 'image/webp';
  if (letters(0, 4) === 'GIF8') return 'image/gif';
  if (letters(0, 2) === 'BM') return 'image/bmp';
  if (letters(0, 4) === 'II*\0' || letters(0, 4) === 'MM\0*') return 'image/tiff';
  if (letters(4, 8) === 'ftyp')
    return /hei[cxfms]|mif1|msf1/.test(letters(8, 24)) ? 'image/heic' : 'video/mp4';
  if (letters(0, 5) === '%PDF-') return 'application/pdf';
  if (letters(0, 2) === 'PK') return 'application/zip';
  if (/^\s*<(\?xml|svg)/.test(letters(0, 64))) return 'image/svg+xml';
  return head.subarray(0, 4).toString('hex');
}
