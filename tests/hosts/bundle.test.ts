import { strToU8, unzipSync, type Zippable, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { jobText } from '#core/job/job-text.ts';
import { mapText, mapToExchange } from '#core/map/exchange.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { type Patch, patchOf } from '#core/map/patch.ts';
import type { Underlay } from '#core/map/records.ts';
import type { Result } from '#core/quantity/result.ts';
import { packBundle, sha256Of } from '#electron/bundle/pack-bundle.ts';
import { unpackBundle } from '#electron/bundle/unpack-bundle.ts';
import { leadsOut, mostUnpacked } from '#electron/bundle/unzip-within.ts';
import { picturesOfJob } from '#electron/handlers/named-pictures.ts';
import { jpegHead, pngHead } from '#tests/generated/picture-heads.ts';
import { randomPng } from '#tests/generated/random-picture.ts';
import { sample } from '#tests/sample.ts';
import { launchLoopback } from './loopback-launch.ts';

function good<T>(result: Result<T>): T {
  expect(result).toMatchObject({ ok: true });
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
}

const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');
const png = randomPng(7);

const underlay: Underlay = {
  id: 'underlay:floor',
  name: 'Floor photo',
  imageSha256: sha256Of(png),
  mediaType: 'image/png',
  widthPx: 8,
  heightPx: 6,
  origin: { xMm: 0, yMm: 0 },
  mmPerPx: 5,
  turnRad: 0,
  opacity: 0.5,
  hidden: false,
  order: 0,
};
const pictured: MapDocument = { ...sample.map, underlays: new Map([[underlay.id, underlay]]) };
const mapDocument = { fileName: 'tiny.map.json', text: mapText(pictured) };
const jobDocument = { fileName: 'stock-1.job.json', text: jobText(sample.job) };
const picture = { sha256: underlay.imageSha256, mediaType: 'image/png', bytes: png } as const;
const bundle = packBundle([mapDocument, jobDocument], [picture]);

/** The same bundle with some of its entries changed, added or left out. */
function changed(change: (parts: Record<string, Uint8Array>) => void): Uint8Array {
  const parts = unzipSync(bundle);
  change(parts);
  return zipSync(parts as Zippable);
}

const withPart = (name: string, bytes: Uint8Array): Uint8Array =>
  changed((parts) => {
    parts[name] = bytes;
  });

describe('a bundle', () => {
  test('goes to another workshop and comes out the same, to the byte', async () => {
    const here = await launchLoopback();
    const brought = good(await here.client('file.bringInBundle', { base64: base64(bundle), store: true }));
    expect(brought.mapIds).toEqual([sample.map.id]);
    expect(brought.jobIds).toEqual([sample.job.id]);
    const jobId = sample.job.id;
    const handed = good(await here.client('file.handOutBundle', { jobId }));
    expect(handed.fileName).toBe('stock-1.undertrim.zip');
    const there = await launchLoopback();
    good(await there.client('file.bringInBundle', { base64: handed.base64, store: true }));
    const again = good(await there.client('file.handOutBundle', { jobId }));
    expect(again.base64).toBe(handed.base64);
    const kept = good(await there.client('picture.read', { sha256: underlay.imageSha256 }));
    expect(kept).toEqual({ mediaType: 'image/png', base64: png.toString('base64') });
  });

  test('says what it would bring in before anything is stored', async () => {
    const { client } = await launchLoopback();
    const looked = good(await client('file.bringInBundle', { base64: base64(bundle), store: false }));
    expect(looked.summary).toMatchObject({
      documents: [
        { kind: 'map', name: 'Tiny sample', segments: 3, alreadyHere: false, sameHere: false },
        { kind: 'job', name: 'STOCK 1', alreadyHere: false },
      ],
      newPictures: 1,
      knownPictures: 0,
      missingPictures: [],
      ignored: [],
    });
    expect(good(await client('library.list', {}))).toEqual({ maps: [], jobs: [] });
    expect(await client('picture.read', { sha256: underlay.imageSha256 })).toMatchObject({ ok: false });
  });

  test('brought in twice adds no second map, and a changed map comes in beside with its job', async () => {
    const { client } = await launchLoopback();
    const justMap = packBundle([mapDocument], [picture]);
    good(await client('file.bringInBundle', { base64: base64(justMap), store: true }));
    const twice = good(await client('file.bringInBundle', { base64: base64(justMap), store: true }));
    expect(twice.summary.documents).toMatchObject([{ alreadyHere: true, sameHere: true }]);
    expect(twice.summary).toMatchObject({ newPictures: 0, knownPictures: 1 });
    expect(good(await client('library.list', {})).maps).toHaveLength(1);
    const other = {
      ...mapDocument,
      text: mapText({ ...pictured, panels: new Map(), segments: new Map(), circuits: new Map() }),
    };
    const lone = packBundle([other], [picture]);
    const beside = good(await client('file.bringInBundle', { base64: base64(lone), store: true }));
    expect(beside.summary.documents).toMatchObject([{ alreadyHere: true, sameHere: false }]);
    expect(beside.mapIds[0]).not.toBe(sample.map.id);
    const renamed = { ...pictured, details: { ...pictured.details, name: 'Changed elsewhere' } };
    const both = packBundle([{ ...mapDocument, text: mapText(renamed) }, jobDocument], [picture]);
    const { mapIds, jobIds } = good(
      await client('file.bringInBundle', { base64: base64(both), store: true }),
    );
    const opened = good(await client('job.open', { jobId: jobIds[0] as `job:${string}` }));
    expect(opened.job.mapId).toBe(mapIds[0]);
    expect(opened.map.details.name).toBe('Changed elsewhere');
  });

  test('with a picture left out comes in and names it', async () => {
    const { client } = await launchLoopback();
    const bare = packBundle([mapDocument], []);
    const { summary, mapIds } = good(
      await client('file.bringInBundle', { base64: base64(bare), store: true }),
    );
    const missing = [{ documentName: 'Tiny sample', name: 'Floor photo', sha256: underlay.imageSha256 }];
    expect(summary.missingPictures).toEqual(missing);
    const mapId = mapIds[0] as `map:${string}`;
    expect(good(await client('file.handOutBundle', { mapId })).missingPictures).toEqual(missing);
  });

  test('is brought in whole or not at all', async () => {
    const { client } = await launchLoopback();
    const stray = { ...sample.job, circuitId: 'circuit:not-there' } as const;
    const bad = packBundle([mapDocument, { ...jobDocument, text: jobText(stray) }], [picture]);
    const refused = await client('file.bringInBundle', { base64: base64(bad), store: true });
    expect(refused).toMatchObject({ ok: false, problem: { missing: 'circuit:not-there' } });
    expect(good(await client('library.list', {}))).toEqual({ maps: [], jobs: [] });
    expect(await client('picture.read', { sha256: underlay.imageSha256 })).toMatchObject({ ok: false });
  });
});

describe('a bundle that cannot be trusted is refused with what is wrong', () => {
  const problemOf = (zip: Uint8Array): unknown => {
    const read = unpackBundle(zip);
    return read.ok ? 'taken' : read.problem;
  };

  test('names that lead out of a folder', () => {
    for (const name of ['../evil.map.json', 'documents/../../x', '/etc/x', 'C:\\x', 'c:/x', 'a\\b']) {
      expect(leadsOut(name)).toBe(true);
      const zip = withPart(name, strToU8('x'));
      expect(problemOf(zip)).toMatchObject({ code: 'bundle-entry', fault: 'path' });
    }
    expect(leadsOut('documents/a..b.map.json')).toBe(false);
  });

  test('a bomb, whatever size it claims, is stopped while it unpacks', () => {
    const name = (letter: string): string => `pictures/${letter.repeat(64)}.png`;
    const bomb = withPart(name('0'), new Uint8Array(12_000_000));
    const most = mostUnpacked(bomb.length);
    expect(bomb.length * 500).toBeLessThan(12_000_000);
    expect(problemOf(bomb)).toMatchObject({ code: 'too-large', thing: name('0'), mostBytes: most });
    // The claimed size in every header of the large entry set to ten bytes: what comes out still counts.
    const lying = Buffer.from(bomb);
    for (let at = 0; at + 4 < lying.length; at++) {
      if (lying.readUInt32LE(at) === 12_000_000) lying.writeUInt32LE(10, at);
    }
    expect(problemOf(lying)).toMatchObject({ code: 'too-large', mostBytes: most });
    // In many entries of which each is small enough.
    const many = changed((parts) => {
      for (const letter of 'abcdef') parts[name(letter)] = new Uint8Array(2_500_000);
    });
    expect(problemOf(many)).toMatchObject({ code: 'too-large', mostBytes: mostUnpacked(many.length) });
    const manifest = withPart('bundle.json', new Uint8Array(2_100_000));
    expect(problemOf(manifest)).toMatchObject({ code: 'too-large', mostBytes: 2_000_000 });
  });

  test('a large zip may come out as what a bundle may hold and no more', () => {
    expect(mostUnpacked(1_000)).toBe(10_100_000);
    expect(mostUnpacked(70_000_000)).toBe(200_000_000);
  });

  test('too many entries, and the same one twice', () => {
    const crowd = changed((parts) => {
      for (let i = 0; i < 2_001; i++) parts[`extra/${i}`] = new Uint8Array(1);
    });
    expect(problemOf(crowd)).toEqual({ code: 'too-many-entries', found: 2_001, most: 2_000 });
    const name = 'documents/tiny.map.json';
    const twin = Buffer.from(withPart('documents/tiny.mop.json', strToU8('{}')));
    for (
      let at = twin.indexOf('documents/tiny.mop.json');
      at >= 0;
      at = twin.indexOf('documents/tiny.mop.json')
    ) {
      twin.write(name, at);
    }
    expect(problemOf(twin)).toEqual({ code: 'bundle-entry', entry: name, fault: 'twice' });
  });

  test('parts that are damaged, cut short, missing or another kind of thing', () => {
    const entry = 'documents/tiny.map.json';
    const pictureName = `pictures/${underlay.imageSha256}.png`;
    expect(problemOf(withPart(entry, strToU8('{}')))).toEqual({
      code: 'bundle-entry',
      entry,
      fault: 'damaged',
    });
    expect(problemOf(changed((parts) => void delete parts[pictureName]))).toEqual({
      code: 'bundle-entry',
      entry: pictureName,
      fault: 'missing',
    });
    for (const share of [0.2, 0.4, 0.6]) {
      const cut = bundle.subarray(0, Math.floor(bundle.length * share));
      expect(problemOf(cut)).not.toBe('taken');
    }
    expect(problemOf(strToU8('%PDF-1.7'))).toEqual({
      code: 'wrong-format',
      expected: 'undertrim.bundle',
      found: 'application/pdf',
    });
    expect(problemOf(zipSync({ 'notes.txt': strToU8('x') }))).toMatchObject({ found: 'application/zip' });
    const newer = strToU8('{"format":"undertrim.bundle","version":2}');
    expect(problemOf(withPart('bundle.json', newer))).toEqual({
      code: 'newer-version',
      found: 2,
      known: 1,
    });
  });

  test('files a file manager left in it are named and ignored', () => {
    const read = unpackBundle(withPart('__MACOSX/x', strToU8('x')));
    expect(read).toMatchObject({ ok: true, value: { ignored: ['__MACOSX/x'] } });
  });
});

describe('pictures', () => {
  test('of another kind are refused with what they are, and too large ones with their size', async () => {
    const { client } = await launchLoopback();
    const keep = (bytes: Uint8Array) => client('picture.keep', { base64: base64(bytes) });
    expect(await keep(strToU8('GIF89a......'))).toEqual({
      ok: false,
      problem: { code: 'wrong-format', expected: 'image/jpeg, image/png, image/webp', found: 'image/gif' },
    });
    const heic = Buffer.concat([Buffer.from([0, 0, 0, 24]), Buffer.from('ftypheic....mif1heic')]);
    expect(await keep(heic)).toMatchObject({ problem: { found: 'image/heic' } });
    expect(await keep(Buffer.from([1, 2, 3, 4, 5]))).toMatchObject({ problem: { found: '01020304' } });
    const large = Buffer.alloc(30_000_001);
    png.copy(large);
    expect(await keep(large)).toEqual({
      ok: false,
      problem: { code: 'too-large', thing: 'image/png', bytes: 30_000_001, mostBytes: 30_000_000 },
    });
    expect(good(await keep(large.subarray(0, 30_000_000))).mediaType).toBe('image/png');
  });

  test('that would fill the memory once decoded, or whose beginning is all there is, are refused', async () => {
    const { client } = await launchLoopback();
    const keep = (bytes: Uint8Array) => client('picture.keep', { base64: base64(bytes) });
    expect(await keep(jpegHead(60_000, 60_000))).toMatchObject({
      problem: { code: 'picture-oversized', file: 'image/jpeg', widthPx: 60_000, heightPx: 60_000 },
    });
    expect(await keep(png.subarray(0, 20))).toMatchObject({ problem: { code: 'picture-unreadable' } });
    const bomb = pngHead(60_000, 60_000);
    const zip = packBundle([mapDocument], [{ sha256: sha256Of(bomb), mediaType: 'image/png', bytes: bomb }]);
    expect(unpackBundle(zip)).toMatchObject({ problem: { code: 'picture-oversized', widthPx: 60_000 } });
  });
});

describe('revisions of a map', () => {
  test('are listed newest first, and each can be opened and compared', async () => {
    const { client } = await launchLoopback();
    const { mapIds } = good(
      await client('file.bringInBundle', { base64: base64(packBundle([mapDocument], [])), store: true }),
    );
    const mapId = mapIds[0] as `map:${string}`;
    const commit = (patch: Patch, origin: 'user' | 'undo', expectedRevision: number) =>
      client('map.commit', {
        mapId,
        expectedRevision,
        transaction: { label: 'edit.removeThings', origin, patch, selectionBefore: [], selectionAfter: [] },
      });
    good(await commit(patchOf({ removed: [sample.rubSpot] }), 'user', 0));
    good(await commit(patchOf({ added: [sample.rubSpot] }), 'undo', 1));
    const { revisions } = good(await client('map.revisions', { mapId }));
    expect(revisions.map(({ revision, origin, label }) => [revision, origin, label])).toEqual([
      [2, 'undo', 'edit.removeThings'],
      [1, 'user', 'edit.removeThings'],
      [0, null, null],
    ]);
    const spots = [];
    for (const { revision } of revisions) {
      spots.push(good(await client('map.open', { mapId, revision })).map.rubSpots.length);
    }
    expect(spots).toEqual([1, 0, 1]);
    expect(await client('map.revisions', { mapId: 'map:none' })).toEqual({
      ok: false,
      problem: { code: 'not-found', thing: 'map:none' },
    });
  });

  test('that only jobs keep are still listed after the map was removed', async () => {
    const { client } = await launchLoopback();
    const { mapIds } = good(await client('file.bringInBundle', { base64: base64(bundle), store: true }));
    const mapId = mapIds[0] as `map:${string}`;
    good(await client('map.remove', { mapId }));
    const { revisions } = good(await client('map.revisions', { mapId }));
    expect(revisions).toEqual([{ revision: 0, at: null, label: null, origin: null, jobs: 1 }]);
    const { map } = good(await client('map.open', { mapId, revision: 0 }));
    expect(map).toEqual(mapToExchange(pictured));
  });
});

test('photos in a job’s entries go with its bundle, whichever kinds of entry carry them', () => {
  const photo = { sha256: 'a'.repeat(64), originalSha256: 'b'.repeat(64), caption: 'Strands showing' };
  const entries = [{ photos: [photo] }, { text: 'no photo' }] as unknown as typeof sample.job.entries;
  expect(picturesOfJob({ ...sample.job, entries })).toEqual([
    { documentName: 'STOCK 1', name: 'Strands showing', sha256: photo.sha256, spare: false },
    { documentName: 'STOCK 1', name: 'Strands showing', sha256: photo.originalSha256, spare: true },
  ]);
});
