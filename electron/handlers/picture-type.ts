/** The kinds of picture that may lie under a drawing. */
export type PictureType = 'image/jpeg' | 'image/png' | 'image/webp';

/**
 * What kind of picture some bytes are by their first letters, whatever a file name claims; null for
 * anything else. JPEG: ITU-T T.81 annex B; PNG: W3C PNG 5.2; WebP: RFC 9649.
 */
export function pictureTypeOf(bytes: Buffer): PictureType | null {
  const letters = (from: number, to: number): string => bytes.subarray(from, to).toString('latin1');
  if (letters(0, 3) === '\xff\xd8\xff') return 'image/jpeg';
  if (letters(0, 8) === '\x89PNG\r\n\x1a\n') return 'image/png';
  if (letters(0, 4) === 'RIFF' && letters(8, 12) === 'WEBP') return 'image/webp';
  return null;
}
