import { join } from 'node:path';
import { jobText } from '#core/job/job-text.ts';
import { mapText } from '#core/map/exchange.ts';
import { parseJson } from '#core/map/parse-json.ts';
import { assert } from '#core/quantity/assert.ts';
import { packBundle } from '#electron/bundle/pack-bundle.ts';
import { contract, type RequestInput, type RequestName } from '#electron/contract/contract.ts';
import { openWorkshop, type Workshop } from '#electron/open-workshop.ts';
import { randomPng } from '#tests/generated/random-picture.ts';
import { sample } from '#tests/sample.ts';
import { damagedText } from './damage.ts';
import type { FuzzTarget } from './fuzz-run.ts';
import { outcomeOf } from './fuzz-targets.ts';

const mapId = sample.map.id;
const jobId = sample.job.id;
const { id: _, format, version, mapId: __, mapRevision, openedAt, entries, ...intake } = sample.job;
const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');

/** One good message for every request. What copies the store is left out: it works on beside the run. */
const messages: { readonly [N in Exclude<RequestName, 'backup.take' | 'store.compact'>]: RequestInput<N> } = {
  'library.list': {},
  'map.create': { name: 'Van', bodyStyle: 'van', driveSide: 'right' },
  'map.open': { mapId, revision: 0 },
  'map.revisions': { mapId },
  'map.commit': {
    mapId,
    expectedRevision: 0,
    joins: false,
    transaction: {
      label: 'edit.changeSegment',
      origin: 'user',
      patch: {
        added: [],
        removed: [],
        changed: [[sample.tread, { ...sample.tread, note: 'changed' }]],
      },
      selectionBefore: [],
      selectionAfter: [sample.tread.id],
    },
  },
  'map.copy': { mapId, name: 'Copy', mirrored: true, mirrorIds: ['segment:front'] },
  'map.remove': { mapId: 'map:none' },
  'job.create': { mapId, ...intake },
  'job.open': { jobId },
  'job.append': {
    jobId,
    expectedEntries: entries.length,
    entries: [{ id: 'entry:more', at: '2026-01-05T09:00:00Z', type: 'note', text: 'More' }],
  },
  'job.changeIntake': { jobId, ...intake },
  'jobs.search': { words: [{ text: 'seat', codes: ['sharp-edge'] }], mapId },
  'shop.figures': {},
  'jobs.taught': { jobId },
  'map.past': { mapId },
  'file.bringIn': { text: mapText(sample.map), store: false },
  'file.handOut': { jobId },
  'file.bringInBundle': {
    base64: base64(packBundle([{ fileName: 'tiny.map.json', text: mapText(sample.map) }], [])),
    store: false,
  },
  'file.handOutBundle': { mapId, withHistory: true },
  'picture.keep': { base64: base64(randomPng(7)) },
  'picture.read': { sha256: 'a'.repeat(64) },
  'place.read': { key: 'draw' },
  'place.keep': { key: 'draw', text: '{"zoom":2}' },
  'backup.list': {},
  'backup.restore': { fileName: '../../undertrim.db' },
  'loss.read': {},
  'loss.noted': {},
  'page.print': { fileName: 'report.pdf', paper: 'a4' },
};
const names = Object.keys(messages) as (keyof typeof messages)[];

/**
 * The whole host under messages of every kind, damaged: each is answered, in the contract's own terms or with a
 * problem that is not our slip. Close the workshop afterwards.
 */
export function contractTarget(folder: string): { readonly target: FuzzTarget; readonly workshop: Workshop } {
  const opened = openWorkshop(join(folder, 'data'), join(folder, 'no-samples'));
  assert(opened.ok, 'the workshop opens');
  const workshop = opened.value;
  for (const text of [mapText(sample.map), jobText(sample.job)]) {
    const kept = workshop.answer('file.bringIn', { text, store: true });
    assert(kept.ok, `the sample is brought in: ${JSON.stringify(kept)}`);
  }
  const read: FuzzTarget['read'] = (draw) => {
    const named = draw.pick(names);
    const name = draw.happens(0.97) ? named : draw.pick(['__proto__', 'constructor', 'map.steal', '']);
    const sent = parseJson(damagedText(JSON.stringify(messages[named]), draw));
    if (!sent.ok) return outcomeOf(sent);
    const reply = workshop.answer(name, sent.value);
    if (!reply.ok) return outcomeOf(reply);
    const output = contract[name as RequestName].output.safeParse(reply.value);
    assert(output.success, `${name} answered out of contract: ${output.error?.message}`);
    return 'taken';
  };
  return { target: { name: 'message to the host', share: 10, read }, workshop };
}
