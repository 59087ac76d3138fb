/** A picture of the icon at one size, as PNG bytes. */
export interface IconPicture {
  readonly sidePx: number;
  readonly png: Uint8Array;
}

/** Sizes drawn: every one that any of the three systems asks for. */
export const iconSidesPx = [16, 32, 48, 64, 128, 256, 512, 1024] as const;

/**
 * A Windows icon file of PNG pictures up to 256 pixels: a directory of six and sixteen bytes a picture, then
 * the pictures. The layout is from memory.
 */
export function icoFile(pictures: readonly IconPicture[]): Buffer {
  const taken = pictures.filter(({ sidePx }) => sidePx <= 256);
  const head = Buffer.alloc(6 + 16 * taken.length);
  head.writeUInt16LE(1, 2);
  head.writeUInt16LE(taken.length, 4);
  let offset = head.length;
  for (const [i, { sidePx, png }] of taken.entries()) {
    const at = 6 + 16 * i;
    // 256 does not fit into its byte and is written as nought.
    head.writeUInt8(sidePx % 256, at);
    head.writeUInt8(sidePx % 256, at + 1);
    head.writeUInt16LE(1, at + 4);
    head.writeUInt16LE(32, at + 6);
    head.writeUInt32LE(png.length, at + 8);
    head.writeUInt32LE(offset, at + 12);
    offset += png.length;
  }
  return Buffer.concat([head, ...taken.map(({ png }) => png)]);
}

/** What macOS calls each size, plain and for a screen of double density. */
const icnsTypes: Readonly<Record<number, readonly string[]>> = {
  16: ['icp4'],
  32: ['icp5', 'ic11'],
  64: ['ic12'],
  128: ['ic07'],
  256: ['ic08', 'ic13'],
  512: ['ic09', 'ic14'],
  1024: ['ic10'],
};

/** A macOS icon file of PNG pictures: chunks of type, length and bytes in one of type `icns`. From memory. */
export function icnsFile(pictures: readonly IconPicture[]): Buffer {
  const chunks = pictures.flatMap(({ sidePx, png }) =>
    (icnsTypes[sidePx] ?? []).map((type) => chunk(type, png)),
  );
  return chunk('icns', Buffer.concat(chunks));
}

function chunk(type: string, bytes: Uint8Array): Buffer {
  const head = Buffer.from(`${type}\0\0\0\0`, 'latin1');
  head.writeUInt32BE(bytes.length + 8, 4);
  return Buffer.concat([head, bytes]);
}
