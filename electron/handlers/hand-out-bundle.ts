import { jobText } from '#core/job/job-text.ts';
import type { MapExchange } from '#core/map/exchange.ts';
import type { JobId, MapId } from '#core/quantity/id.ts';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import { readJob } from '#db/job-store.ts';
import { readPinnedMap } from '#db/map-snapshot-store.ts';
import { readMap } from '#db/map-store.ts';
import { readPicture } from '#db/picture-store.ts';
import { bundleLimits } from '../bundle/bundle-manifest.ts';
import { type BundledDocument, type BundledPicture, packBundle } from '../bundle/pack-bundle.ts';
import type { BundleSummary } from '../contract/contract.ts';
import { fileStem, jobFile, mapFile } from './handed-out-file.ts';
import { type HistoryOut, historyOf } from './history-jobs.ts';
import type { HostMeans } from './host-means.ts';
import { type NamedPicture, picturesOfJob, picturesOfMap } from './named-pictures.ts';
import { pictureTypeOf } from './picture-type.ts';

export interface HandedOutBundle {
  readonly fileName: string;
  readonly bytes: Uint8Array;
  readonly missingPictures: BundleSummary['missingPictures'];
  readonly historyJobs: number;
  readonly historyLeftOut: number;
}

/**
 * A map with its pictures and, when asked for, what its past jobs found without their customers; or a job with its photos, the map it was opened on and that map's pictures, as one zip. A
 * picture that is no longer kept, or damaged, is named, and the rest handed out without it. Problems: `not-found`,
 * `too-large`.
 */
export function handOutBundle(
  means: HostMeans,
  what: { readonly mapId: MapId; readonly withHistory?: boolean | undefined } | { readonly jobId: JobId },
): Result<HandedOutBundle> {
  const { connection } = means;
  const documents: BundledDocument[] = [];
  let history: HistoryOut = { jobs: [], leftOut: 0 };
  const named: NamedPicture[] = [];
  let map: MapExchange | null;
  let name: string;
  if ('mapId' in what) {
    map = readMap(connection, what.mapId);
    if (!map) return fail({ code: 'not-found', thing: what.mapId });
    name = map.details.name;
    if (what.withHistory) history = historyOf(means, map);
    documents.push(
      ...history.jobs.map((job, i) => ({
        fileName: `past-${String(i + 1).padStart(4, '0')}.job.json`,
        text: jobText(job),
      })),
    );
  } else {
    const job = readJob(connection, what.jobId);
    map = job && readPinnedMap(connection, job.mapId, job.mapRevision);
    if (!job || !map) return fail({ code: 'not-found', thing: what.jobId });
    documents.push(jobFile(job));
    named.push(...picturesOfJob(job));
    name = job.vehicle.plate;
  }
  documents.unshift(mapFile(map));
  named.push(...picturesOfMap(map));
  const pictures = new Map<string, BundledPicture>();
  const missingPictures: BundleSummary['missingPictures'] = [];
  for (const { documentName, name, sha256, spare } of named) {
    const kept = readPicture(connection, sha256);
    const bytes = kept.ok ? kept.value.bytes : null;
    const mediaType = bytes && pictureTypeOf(bytes);
    if (mediaType) pictures.set(sha256, { sha256, mediaType, bytes });
    else if (!spare) missingPictures.push({ documentName, name, sha256 });
  }
  const bytes = packBundle(documents, [...pictures.values()]);
  if (bytes.length > bundleLimits.packedBytes) {
    return fail({
      code: 'too-large',
      thing: map.id,
      bytes: bytes.length,
      mostBytes: bundleLimits.packedBytes,
    });
  }
  return ok({
    fileName: `${fileStem(name)}.undertrim.zip`,
    bytes,
    missingPictures,
    historyJobs: history.jobs.length,
    historyLeftOut: history.leftOut,
  });
}
