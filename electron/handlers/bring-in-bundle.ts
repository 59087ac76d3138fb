import type { Job } from '#core/job/job-document.ts';
import { type MapExchange, mapFromExchange, mapText } from '#core/map/exchange.ts';
import type { JobId, MapId } from '#core/quantity/id.ts';
import { ok, type Result } from '#core/quantity/result.ts';
import { inOneTransaction, rehearsed } from '#db/in-one-transaction.ts';
import { readMapAt } from '#db/map-history-store.ts';
import { readPinnedMap } from '#db/map-snapshot-store.ts';
import { mapRevision } from '#db/map-store.ts';
import { hasPicture, keepPicture } from '#db/picture-store.ts';
import { type UnpackedBundle, unpackBundle } from '../bundle/unpack-bundle.ts';
import type { BundleSummary, WhenOther } from '../contract/contract.ts';
import { bringInBeside, bringInJob, bringInMap, mapSummary } from './bring-in.ts';
import { mergeHistory } from './history-jobs.ts';
import type { HostMeans } from './host-means.ts';
import { picturesOfJob, picturesOfMap } from './named-pictures.ts';
import { type BroughtDocument, readDocument } from './read-document.ts';

export interface BroughtInBundle {
  readonly summary: BundleSummary;
  readonly mapIds: MapId[];
  readonly jobIds: JobId[];
}

/**
 * Brings in a bundle: its maps, then its jobs, and its pictures; all of it, or nothing when any part is
 * refused. A map that is here in just that state is not stored again; another one under its id comes in
 * beside it, and the bundle's jobs go with it, unless told that ours stays or becomes theirs; that is offered
 * where no job of the bundle rests on the map. Past jobs without their customers are merged into what is known.
 * Without `store` the same is done and taken back.
 */
export function bringInBundle(
  means: HostMeans,
  zip: Uint8Array,
  store: boolean,
  whenOther: WhenOther = 'both',
): Result<BroughtInBundle> {
  const unpacked = unpackBundle(zip);
  if (!unpacked.ok) return unpacked;
  const documents: (BroughtDocument & { readonly entry: string })[] = [];
  for (const { entry, text } of unpacked.value.documents) {
    const read = readDocument(text);
    if (!read.ok) return read;
    documents.push({ ...read.value, entry });
  }
  const work = (): Result<BroughtInBundle> => bringInParts(means, unpacked.value, documents, whenOther);
  return store ? inOneTransaction(means.connection, work) : rehearsed(means.connection, work);
}

function bringInParts(
  means: HostMeans,
  { pictures, ignored }: UnpackedBundle,
  documents: readonly (BroughtDocument & { readonly entry: string })[],
  whenOther: WhenOther,
): Result<BroughtInBundle> {
  const { connection } = means;
  const known = pictures.filter(({ sha256 }) => hasPicture(connection, sha256)).length;
  for (const { mediaType, bytes } of pictures) keepPicture(connection, mediaType, bytes);
  const summaries: BundleSummary['documents'] = [];
  const missingPictures = documents
    .flatMap((document) =>
      document.kind === 'map' ? picturesOfMap(document.map) : picturesOfJob(document.job),
    )
    .filter(({ sha256, spare }) => !spare && !hasPicture(connection, sha256))
    .map(({ documentName, name, sha256 }) => ({ documentName, name, sha256 }));
  const mapIds: MapId[] = [];
  const jobIds: JobId[] = [];
  const jobDocuments = documents.filter((document) => document.kind === 'job');
  const jobs = jobDocuments.filter(({ job }) => !job.handedOn);
  const past = jobDocuments.flatMap(({ job }) => (job.handedOn ? [job] : []));
  const brought: { map: MapExchange; broughtAs: MapId }[] = [];
  const keptAs = new Map<string, MapId>();
  for (const document of documents) {
    if (document.kind !== 'map') continue;
    const { map, entry } = document;
    const ownJobs = jobs.map(({ job }) => job);
    const sameState = isSameHere(means, map, ownJobs);
    // A job rests on the very state it was opened on, so its map comes in as it is or not at all.
    const bound = ownJobs.some((job) => job.mapId === map.id);
    const taken = sameState
      ? ok({ summary: mapSummary(map, true, 'same'), mapId: map.id })
      : bound
        ? bringInBeside(means, map)
        : bringInMap(means, map, true, whenOther);
    if (!taken.ok) return taken;
    const { summary, mapId } = taken.value;
    const { sameHere } = summary;
    if (mapId) {
      keptAs.set(stateOf(map.id, map.revision), mapId);
      brought.push({ map, broughtAs: mapId });
    }
    if (mapId && !sameHere && !(summary.differs && whenOther === 'ours')) mapIds.push(mapId);
    summaries.push({ ...summary, entry });
  }
  const history = past.length > 0 ? mergeHistory(means, past, brought) : ok(null);
  if (!history.ok) return history;
  for (const { job, entry } of jobs) {
    const mapId = keptAs.get(stateOf(job.mapId, job.mapRevision)) ?? job.mapId;
    const taken = bringInJob(means, { ...job, mapId }, true);
    if (!taken.ok) return taken;
    if (taken.value.jobId) jobIds.push(taken.value.jobId);
    summaries.push({ ...taken.value.summary, entry });
  }
  const newPictures = pictures.length - known;
  const summary = {
    documents: summaries,
    history: history.value,
    newPictures,
    knownPictures: known,
    missingPictures,
    ignored: [...ignored],
  };
  return ok({ summary, mapIds, jobIds });
}

const stateOf = (mapId: MapId, revision: number): string => `${mapId} ${revision}`;

/**
 * Whether the store has this map in this very state. One that only jobs still keep counts when it came
 * for a job: its own line in the list was removed on purpose.
 */
function isSameHere({ connection }: HostMeans, map: MapExchange, jobs: readonly Job[]): boolean {
  const listed = mapRevision(connection, map.id) !== null;
  const forJob = jobs.some((job) => job.mapId === map.id && job.mapRevision === map.revision);
  if (!listed && !forJob) return false;
  const pinned = readPinnedMap(connection, map.id, map.revision);
  const at = pinned ? ok(pinned) : readMapAt(connection, map.id, map.revision);
  return at.ok && normal(at.value) === normal(map);
}

const normal = (map: MapExchange): string => mapText(mapFromExchange(map));
