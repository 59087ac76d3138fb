import { deflateSync } from 'node:zlib';

const u32 = (value: number): Buffer => {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32BE(value >>> 0);
  return bytes;
};

function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return (crc ^ 0xffffffff) >>> 0;
}

const chunk = (name: string, data: Uint8Array): Buffer => {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  return Buffer.concat([u32(data.length), body, u32(crc32(body))]);
};

/** A small grey PNG whose shade follows the seed; W3C PNG, 8-bit grey. */
export function randomPng(seed: number, widthPx = 8, heightPx = 6): Buffer {
  const rows = Buffer.concat(
    Array.from({ length: heightPx }, (_, y) =>
      Buffer.from([0, ...Array.from({ length: widthPx }, (_, x) => (seed * 31 + x * 7 + y * 13) & 255)]),
    ),
  );
  const head = Buffer.concat([u32(widthPx), u32(heightPx), Buffer.from([8, 0, 0, 0, 0])]);
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', new Uint8Array()),
  ]);
}
