import { unzipSync } from 'fflate';
import { jobText } from '#core/job/job-text.ts';
import { readJob } from '#core/job/read-job.ts';
import { copiedText, readCopied } from '#core/map/copied-text.ts';
import { mapText } from '#core/map/exchange.ts';
import { readPictureHeader } from '#core/map/picture-header.ts';
import { readMap } from '#core/map/read-map.ts';
import { assert } from '#core/quantity/assert.ts';
import type { Result } from '#core/quantity/result.ts';
import { documentEntry, pictureEntry } from '#electron/bundle/bundle-manifest.ts';
import { packBundle, sha256Of } from '#electron/bundle/pack-bundle.ts';
import { unpackBundle } from '#electron/bundle/unpack-bundle.ts';
import { leadsOut } from '#electron/bundle/unzip-within.ts';
import { readDocument } from '#electron/handlers/read-document.ts';
import { problemSentence } from '#renderer/language/problems.ts';
import type { Draw } from '#tests/generated/draw.ts';
import { avifHead, bmpHead, gifHead, jpegHead, webpHead } from '#tests/generated/picture-heads.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { randomPng } from '#tests/generated/random-picture.ts';
import { sample } from '#tests/sample.ts';
import { craftedZip } from './crafted-zip.ts';
import { damagedBytes, damagedText } from './damage.ts';
import type { FuzzTarget } from './fuzz-run.ts';

const png = randomPng(7);
const tiny = mapText(sample.map);
const job = jobText(sample.job);
const drawn = mapText(randomMap(5, { runs: 12, panels: 6, rubSpots: 5, circuits: 2 }));
const copied = copiedText({ records: [sample.tread, sample.rubSpot, sample.segment] });
const zip = packBundle(
  [
    { fileName: 'tiny.map.json', text: tiny },
    { fileName: 'stock-1.job.json', text: job },
  ],
  [{ sha256: sha256Of(png), mediaType: 'image/png', bytes: png }],
);
const parts = unzipSync(zip);
const pictures = [
  png,
  jpegHead(400, 300, new Uint8Array(200).fill(0xff)),
  webpHead('VP8X', 40, 30),
  webpHead('VP8 ', 40, 30),
  webpHead('VP8L', 40, 30),
  gifHead(40, 30),
  bmpHead(40, 30),
  avifHead([40, 30]),
];

/** How a reading came out; a problem must be one a person can be told in a sentence that fits a screen. */
export function outcomeOf(result: Result<unknown>): string {
  if (result.ok) return 'taken';
  const { message, hint } = problemSentence(result.problem);
  assert(message !== '' && hint !== '', `no sentence for ${result.problem.code}`);
  assert(JSON.stringify(result.problem).length < 3_000, `${result.problem.code} says too much`);
  assert(result.problem.code !== 'our-bug', JSON.stringify(result.problem));
  return result.problem.code;
}

/** Text damaged as text, or as the bytes it is stored in. */
function hurt(text: string, draw: Draw): string {
  if (draw.happens(0.7)) return damagedText(text, draw);
  return damagedBytes(Buffer.from(text), draw).toString('utf8');
}

/** The readers that take what comes from outside and need no store. */
export const readerTargets: readonly FuzzTarget[] = [
  {
    name: 'map document',
    share: 30,
    read: (draw) => {
      const read = readMap(hurt(draw.happens(0.85) ? tiny : drawn, draw));
      if (read.ok) {
        for (const problem of read.value.problems) outcomeOf({ ok: false, problem });
        const again = readMap(mapText(read.value.map));
        assert(again.ok && mapText(again.value.map) === mapText(read.value.map), 'what was taken reads back');
      }
      return outcomeOf(read);
    },
  },
  {
    name: 'job document',
    share: 20,
    read: (draw) => {
      const read = readJob(hurt(job, draw));
      assert(!read.ok || readJob(jobText(read.value)).ok, 'what was taken reads back');
      return outcomeOf(read);
    },
  },
  {
    name: 'any document',
    share: 5,
    read: (draw) => outcomeOf(readDocument(hurt(draw.pick([tiny, job]), draw))),
  },
  {
    name: 'copied things',
    share: 5,
    read: (draw) => outcomeOf(readCopied(hurt(copied, draw))),
  },
  {
    name: 'bundle, damaged',
    share: 15,
    read: (draw) => outcomeOfBundle(damagedBytes(zip, draw)),
  },
  {
    name: 'bundle, crafted',
    share: 10,
    read: (draw) => outcomeOfBundle(craftedZip(parts, draw)),
  },
  {
    name: 'picture header',
    share: 5,
    read: (draw) => {
      const header = readPictureHeader(damagedBytes(draw.pick(pictures), draw));
      assert(!header || (header.widthPx > 0 && header.heightPx > 0), 'a picture that is taken has a size');
      return header ? 'taken' : 'refused';
    },
  },
];

/** Whatever comes out of a bundle lies where it should and is bounded. */
function outcomeOfBundle(bytes: Uint8Array): string {
  const unpacked = unpackBundle(bytes);
  if (unpacked.ok) {
    const { documents, pictures: shown, ignored } = unpacked.value;
    for (const { entry, text } of documents) {
      assert(documentEntry.test(entry) && !leadsOut(entry), `entry ${entry}`);
      outcomeOf(readDocument(text));
    }
    for (const { sha256 } of shown) assert(pictureEntry.test(`pictures/${sha256}.png`), `picture ${sha256}`);
    assert(!ignored.some(leadsOut), 'no name that leads out is even told');
  }
  return outcomeOf(unpacked);
}
