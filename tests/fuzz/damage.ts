import type { Draw } from '#tests/generated/draw.ts';

/** Bytes with some of them changed, put in, taken out, doubled or cut off. */
export function damagedBytes(bytes: Uint8Array, draw: Draw): Buffer {
  let damaged = Buffer.from(bytes);
  for (let times = 1 + draw.whole(0, 5); times > 0; times--) {
    const at = draw.whole(0, damaged.length - 1);
    const end = Math.min(damaged.length, at + 1 + draw.whole(0, draw.happens(0.2) ? 400 : 8));
    const before = damaged.subarray(0, at);
    const after = damaged.subarray(end);
    const piece = damaged.subarray(at, end);
    const noise = Buffer.from(Array.from(piece, () => draw.whole(0, 255)));
    damaged = draw.pick([
      () => Buffer.concat([before, noise, after]),
      () => Buffer.concat([before, Buffer.alloc(piece.length, draw.pick([0, 0xff, 0x7f])), after]),
      () => Buffer.concat([before, after]),
      () => Buffer.concat([before, piece, piece, after]),
      () => Buffer.concat([before, noise, piece, after]),
      () => Buffer.concat([before, Buffer.from(piece.map((byte) => byte ^ (1 << draw.whole(0, 7)))), after]),
      () => (draw.happens(0.3) ? before : damaged),
    ])();
    if (damaged.length === 0) damaged = Buffer.from([draw.whole(0, 255)]);
  }
  return damaged;
}

const deep = (depth: number): string => `${'['.repeat(depth)}${']'.repeat(depth)}`;
const wide = (entry: string, count: number): string => `[${Array(count).fill(entry).join(',')}]`;

/** What may stand where a JSON value stood: numbers beyond number, other kinds, names objects inherit, too much. */
const oddValues: readonly string[] = [
  '0',
  '-0',
  '-1',
  '0.5',
  '1e308',
  '1e999',
  '-1e999',
  '5e-324',
  '9007199254740993',
  '123456789012345678901234567890',
  'null',
  'true',
  '""',
  '" "',
  '"\\u0000"',
  '"\\ud800"',
  '"\u202e"',
  '"__proto__"',
  '"constructor"',
  '"node:__proto__"',
  '"segment:constructor"',
  '"1e5"',
  '[]',
  '{}',
  '[[]]',
  '{"__proto__":{"polluted":true}}',
  '{"constructor":{"prototype":{"polluted":true}}}',
  '{"toString":1,"valueOf":1}',
  '{"length":1e9}',
  deep(30),
  deep(5_000),
  wide('0', 3_000),
  wide('{}', 3_000),
  `"${'x'.repeat(5_000)}"`,
  `"${'\\\\'.repeat(500)}"`,
];

/** What looks like a value and is none: the text is no JSON any more. */
const noValues: readonly string[] = ['00', '+1', '.5', 'NaN', 'Infinity', 'undefined', "'a'", '[,]', ''];
const oddValue = (draw: Draw): string => draw.pick(draw.happens(0.06) ? noValues : oddValues);

const oddNames: readonly string[] = ['__proto__', 'constructor', 'prototype', 'toString', 'then', '', 'id'];

/** Where values of a JSON text stand: strings, numbers, words, and the openings of lists and objects. */
const valuePattern = /"(?:[^"\\]|\\.)*"|-?\d[\d.eE+-]*|true|false|null|\[|\{/g;

/** A JSON text with some values, names or whole parts replaced by others; often no JSON any more. */
export function damagedText(text: string, draw: Draw): string {
  let damaged = text;
  for (let times = draw.happens(0.7) ? 1 : 2; times > 0; times--) {
    const places = [...damaged.matchAll(valuePattern)];
    const place = draw.pick(places);
    if (!place) return damaged;
    const [found] = place;
    const isName = damaged.slice(place.index + found.length).startsWith(':');
    const opens = found === '[' || found === '{';
    damaged = replaced(damaged, place.index, found, opens, isName, draw);
  }
  return damaged;
}

function replaced(
  text: string,
  at: number,
  found: string,
  opens: boolean,
  isName: boolean,
  draw: Draw,
): string {
  const before = text.slice(0, at);
  const after = text.slice(at + found.length);
  if (isName) return `${before}"${draw.pick(oddNames)}"${after}`;
  if (found === '{') {
    // A field before the others, which may be there already: the same name twice.
    const name = draw.happens(0.5) ? draw.pick(oddNames) : (/"(\w+)":/.exec(after)?.[1] ?? 'id');
    return `${before}{"${name}":${oddValue(draw)},${after}`;
  }
  if (opens) return `${before}[${oddValue(draw)},${after}`;
  // Another value of the same document now and then: the right kind of thing in the wrong place.
  const other = draw.pick([...text.matchAll(valuePattern)].slice(0, 400))?.[0] ?? '0';
  const value = draw.happens(0.5) && other !== '[' && other !== '{' ? other : oddValue(draw);
  return `${before}${value}${after}`;
}
