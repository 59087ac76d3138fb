import { strToU8, type Zippable, zipSync } from 'fflate';
import type { Draw } from '#tests/generated/draw.ts';

/** The packer cannot write an entry called `__proto__`; this one of the same length becomes it afterwards. */
const protoStandIn = 'zzprotozz';

/** Pieces names of entries are made of, harmless and not. */
const pieces: readonly string[] = [
  '..',
  '.',
  '/',
  '/',
  '\\',
  'C:',
  'c:',
  '\0',
  'documents/',
  'pictures/',
  'tiny.map.json',
  'stock.job.json',
  'bundle.json',
  '%2e%2e',
  '%2f',
  '~',
  'CON',
  '\u202e',
  'a'.repeat(300),
  protoStandIn,
  'constructor',
  ' ',
  '\n',
  `${'0'.repeat(64)}.png`,
];

/** A name as someone who means harm might give an entry. */
export function craftedName(draw: Draw): string {
  return Array.from({ length: draw.whole(1, 4) }, () => draw.pick(pieces)).join('');
}

/** A zip with some parts of a good bundle and some entries of crafted names, sizes and contents. */
export function craftedZip(good: Readonly<Record<string, Uint8Array>>, draw: Draw): Uint8Array {
  const parts: Zippable = {};
  for (const [name, bytes] of Object.entries(good)) if (draw.happens(0.8)) parts[name] = bytes;
  for (let more = draw.whole(0, 2); more >= 0; more--) {
    const content = draw.pick([
      () => strToU8('{}'),
      () => new Uint8Array(draw.whole(0, 20_000)),
      () => new Uint8Array(),
      () => draw.pick(Object.values(good)),
    ])();
    parts[craftedName(draw)] = content;
  }
  const zip = Buffer.from(zipSync(parts, { level: draw.happens(0.5) ? 0 : 6 }));
  for (let at = zip.indexOf(protoStandIn); at >= 0; at = zip.indexOf(protoStandIn))
    zip.write('__proto__', at);
  return zip;
}
