import { expect, test } from 'vitest';
import { historyJob } from '#core/job/history-job.ts';
import type { Job } from '#core/job/job-document.ts';
import { jobText } from '#core/job/job-text.ts';
import { mapText } from '#core/map/exchange.ts';
import type { Result } from '#core/quantity/result.ts';
import { packBundle } from '#electron/bundle/pack-bundle.ts';
import { wholeJob } from '#tests/core/job/closing-record.ts';
import { sample } from '#tests/sample.ts';
import { launchLoopback } from './loopback-launch.ts';

type Client = Awaited<ReturnType<typeof launchLoopback>>['client'];

function good<T>(result: Result<T>): T {
  expect(result).toMatchObject({ ok: true });
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
}

const mapId = sample.map.id;
const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');

function closed(id: Job['id'], plate: string): Job {
  const record = wholeJob();
  record.add('close', { outcome: 'proved', reason: '', advice: 'Told the owner' });
  return { ...record.job, id, vehicle: { ...record.job.vehicle, plate } };
}

/** A workshop with the sample's map and some jobs on it. */
async function workshop(...jobs: readonly Job[]): Promise<Client> {
  const { client } = await launchLoopback();
  const documents = [
    { fileName: 'tiny.map.json', text: mapText(sample.map) },
    ...jobs.map((job, i) => ({ fileName: `job-${i}.job.json`, text: jobText(job) })),
  ];
  good(await client('file.bringInBundle', { base64: base64(packBundle(documents, [])), store: true }));
  return client;
}

const handOut = async (client: Client) =>
  good(await client('file.handOutBundle', { mapId, withHistory: true }));
const merge = async (client: Client, bundle: string, store: boolean) =>
  good(await client('file.bringInBundle', { base64: bundle, store })).summary;
const causesFound = async (client: Client): Promise<number> =>
  good(await client('map.past', { mapId })).places.reduce((sum, { causes }) => sum + causes, 0);

test('two workshops merge what they found; merging again changes nothing', async () => {
  const here = await workshop(closed('job:here', 'OURS'));
  const there = await workshop(closed('job:there', 'THEIRS'));
  const handed = await handOut(there);
  expect(handed).toMatchObject({ historyJobs: 1, historyLeftOut: 0 });
  expect(await causesFound(here)).toBe(1);

  const looked = await merge(here, handed.base64, false);
  expect(looked.history).toEqual({ newJobs: 1, onOwnMap: 1, knownJobs: 0, leftOut: 0 });
  expect(await causesFound(here)).toBe(1);

  await merge(here, handed.base64, true);
  expect(await causesFound(here)).toBe(2);
  const again = await merge(here, handed.base64, true);
  expect(again.history).toEqual({ newJobs: 0, onOwnMap: 0, knownJobs: 1, leftOut: 0 });
  expect(await causesFound(here)).toBe(2);

  // Home again, with both: one's own job is known there and keeps its plate.
  const back = await merge(there, (await handOut(here)).base64, true);
  expect(back.history).toMatchObject({ newJobs: 1, knownJobs: 1 });
  expect(good(await there('job.open', { jobId: 'job:there' })).job.vehicle.plate).toBe('THEIRS');
  expect(await causesFound(there)).toBe(2);
});

test('where the other workshop drew the model further, its drawing comes in beside, and its jobs go to one’s own', async () => {
  const here = await workshop(closed('job:here', 'OURS'));
  const past = historyJob(closed('job:there', 'THEIRS'));
  if (!past) throw new Error('it is closed');
  const revision = sample.map.revision + 3;
  const theirs = { ...sample.map, revision, details: { ...sample.map.details, name: 'Theirs' } };
  const documents = [
    { fileName: 'theirs.map.json', text: mapText(theirs) },
    { fileName: 'past-0001.job.json', text: jobText({ ...past, mapRevision: revision }) },
  ];
  const bundle = base64(packBundle(documents, []));
  const looked = await merge(here, bundle, false);
  expect(looked.documents).toMatchObject([{ name: 'Theirs', alreadyHere: true, sameHere: false }]);
  expect(looked.history).toEqual({ newJobs: 1, onOwnMap: 1, knownJobs: 0, leftOut: 0 });
  await merge(here, bundle, true);
  expect(good(await here('map.open', { mapId })).map.details.name).toBe(sample.map.details.name);
  expect(await causesFound(here)).toBe(2);
});

test('a map drawn further elsewhere is known again: ours stays, becomes theirs in one edit, or both are kept', async () => {
  const past = historyJob(closed('job:there', 'THEIRS'));
  if (!past) throw new Error('it is closed');
  const revision = sample.map.revision + 3;
  const [panel, ...others] = [...sample.map.panels.values()];
  if (!panel) throw new Error('the sample has panels');
  const renamed = { ...panel, name: 'Their name' };
  const panels = new Map([renamed, ...others].map((each) => [each.id, each]));
  const documents = [
    { fileName: 'theirs.map.json', text: mapText({ ...sample.map, revision, panels }) },
    { fileName: 'past-0001.job.json', text: jobText({ ...past, mapRevision: revision }) },
  ];
  const bundle = base64(packBundle(documents, []));
  const maps = async (client: Client) => good(await client('library.list', {})).maps.length;
  const nameHere = async (client: Client) =>
    good(await client('map.open', { mapId })).map.panels.find(({ id }) => id === panel.id)?.name;
  const bring = async (client: Client, whenOther: 'ours' | 'theirs' | 'both', store = true) =>
    good(await client('file.bringInBundle', { base64: bundle, store, whenOther }));

  const here = await workshop(closed('job:here', 'OURS'));
  const before = await maps(here);
  const looked = (await bring(here, 'theirs', false)).summary;
  expect(looked.documents[0]?.differs).toMatchObject({
    changed: 1,
    added: 0,
    removed: 0,
    things: [{ how: 'changed', kind: 'panel', name: 'Their name', fields: ['name'] }],
    oursEdited: false,
  });
  expect(await nameHere(here)).toBe(panel.name);

  const ours = await bring(here, 'ours');
  expect(ours.mapIds).toEqual([]);
  expect(ours.summary.history).toMatchObject({ newJobs: 1, onOwnMap: 1 });
  expect([await maps(here), await nameHere(here)]).toEqual([before, panel.name]);

  await bring(here, 'theirs');
  expect([await maps(here), await nameHere(here)]).toEqual([before, 'Their name']);
  const { map, history } = good(await here('map.open', { mapId }));
  expect(map.revision).toBe(sample.map.revision + 1);
  expect(history.done.at(-1)).toMatchObject({ label: 'edit.takeTheirs', origin: 'import' });
  expect((await bring(here, 'both', false)).summary.documents[0]).toMatchObject({
    sameHere: true,
    differs: null,
  });
  // The job opened before keeps the map it was opened on.
  const { map: opened } = good(await here('job.open', { jobId: 'job:here' }));
  expect(opened.panels.find(({ id }) => id === panel.id)?.name).toBe(panel.name);

  const elsewhere = await workshop();
  await bring(elsewhere, 'both');
  expect(await maps(elsewhere)).toBe(before + 1);
});

test('a bundle with history says nothing of the customer, and an open job stays at home', async () => {
  const open: Job = { ...wholeJob().job, id: 'job:open' };
  const there = await workshop(closed('job:there', 'THEIRS'), open);
  const handed = await handOut(there);
  expect(handed.historyJobs).toBe(1);
  const here = await workshop();
  await merge(here, handed.base64, true);
  const { job } = good(await here('job.open', { jobId: 'job:there' }));
  expect(job).toMatchObject({ handedOn: true, complaint: '', vehicle: { plate: '', odometer: null } });
  expect(JSON.stringify(job)).not.toMatch(/THEIRS|Told the owner/);
});

test('another workshop’s jobs teach, but are not counted among one’s own figures', async () => {
  const here = await workshop(closed('job:here', 'OURS'));
  const there = await workshop(closed('job:there', 'THEIRS'));
  await merge(here, (await handOut(there)).base64, true);
  expect(good(await here('shop.figures', {})).overall.jobs).toBe(1);
  expect(good(await here('map.past', { mapId })).figures.jobs).toBe(1);
  const taught = good(await here('jobs.taught', { jobId: 'job:here' }));
  expect(taught.sums.onMap.jobs).toBe(1);
});

test('without asking for it a bundle holds no history', async () => {
  const there = await workshop(closed('job:there', 'THEIRS'));
  const plain = good(await there('file.handOutBundle', { mapId }));
  expect(plain.historyJobs).toBe(0);
  const here = await workshop();
  expect((await merge(here, plain.base64, false)).history).toBeNull();
});
