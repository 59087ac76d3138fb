/** The beginnings of pictures of any claimed size: headers alone, as a bomb has them. */

export function pngHead(widthPx: number, heightPx: number): Buffer {
  const bytes = Buffer.alloc(33);
  bytes.write('\x89PNG\r\n\x1a\n\0\0\0\rIHDR', 'latin1');
  bytes.writeUInt32BE(widthPx, 16);
  bytes.writeUInt32BE(heightPx, 20);
  bytes.writeUInt8(8, 24);
  return bytes;
}

/** With an APP1 segment of so many bytes before the frame, as a camera writes its own notes. */
export function jpegHead(widthPx: number, heightPx: number, app1: Uint8Array = new Uint8Array()): Buffer {
  const notes = Buffer.from([0xff, 0xe1, (app1.length + 2) >> 8, (app1.length + 2) & 255, ...app1]);
  const frame = Buffer.from([0xff, 0xc0, 0, 11, 8, 0, 0, 0, 0, 1, 1, 0x11, 0]);
  frame.writeUInt16BE(heightPx, 5);
  frame.writeUInt16BE(widthPx, 7);
  return Buffer.concat([Buffer.from([0xff, 0xd8]), app1.length > 0 ? notes : Buffer.alloc(0), frame]);
}

export function webpHead(kind: 'VP8 ' | 'VP8L' | 'VP8X', widthPx: number, heightPx: number): Buffer {
  const bytes = Buffer.alloc(32);
  bytes.write('RIFF', 0, 'latin1');
  bytes.write(`WEBP${kind}`, 8, 'latin1');
  if (kind === 'VP8X') {
    bytes.writeUIntLE(widthPx - 1, 24, 3);
    bytes.writeUIntLE(heightPx - 1, 27, 3);
  } else if (kind === 'VP8L') {
    bytes.writeUInt8(0x2f, 20);
    bytes.writeUInt32LE(((widthPx - 1) | ((heightPx - 1) << 14)) >>> 0, 21);
  } else {
    bytes.write('\x9d\x01\x2a', 23, 'latin1');
    bytes.writeUInt16LE(widthPx, 26);
    bytes.writeUInt16LE(heightPx, 28);
  }
  return bytes;
}

export function gifHead(widthPx: number, heightPx: number): Buffer {
  const bytes = Buffer.from('GIF89a\0\0\0\0', 'latin1');
  bytes.writeUInt16LE(widthPx, 6);
  bytes.writeUInt16LE(heightPx, 8);
  return bytes;
}

export function bmpHead(widthPx: number, heightPx: number): Buffer {
  const bytes = Buffer.alloc(54);
  bytes.write('BM', 'latin1');
  bytes.writeUInt32LE(40, 14);
  bytes.writeInt32LE(widthPx, 18);
  bytes.writeInt32LE(heightPx, 22);
  return bytes;
}

/** With the size of each of its parts, as a file made of tiles has them. */
export function avifHead(...sizes: readonly (readonly [number, number])[]): Buffer {
  const head = Buffer.from('\0\0\0\x14ftypavif\0\0\0\0avif', 'latin1');
  const boxes = sizes.map(([widthPx, heightPx]) => {
    const box = Buffer.from('\0\0\0\x14ispe\0\0\0\0\0\0\0\0\0\0\0\0', 'latin1');
    box.writeUInt32BE(widthPx, 12);
    box.writeUInt32BE(heightPx, 16);
    return box;
  });
  return Buffer.concat([head, ...boxes]);
}
