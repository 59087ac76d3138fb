import type { Job, JobEntry } from '#core/job/job-document.ts';
import type { MapExchange } from '#core/map/exchange.ts';

/** A picture a document speaks of. */
export interface NamedPicture {
  /** Name of the map, or plate of the job, that names it. */
  readonly documentName: string;
  readonly name: string;
  readonly sha256: string;
  /** The document reads as well without it, such as a camera's own file beside the photo shown. */
  readonly spare: boolean;
}

/** The pictures under a map. */
export function picturesOfMap(map: MapExchange): readonly NamedPicture[] {
  const documentName = map.details.name;
  return map.underlays.map(({ name, imageSha256 }) => ({
    documentName,
    name,
    sha256: imageSha256,
    spare: false,
  }));
}

/** The photos in a job's entries, each with its camera's own file where that was kept. */
export function picturesOfJob(job: Job): readonly NamedPicture[] {
  const documentName = job.vehicle.plate;
  return job.entries
    .flatMap(photosOf)
    .flatMap(({ sha256, originalSha256, caption }) => [
      { documentName, name: caption, sha256, spare: false },
      ...(originalSha256 ? [{ documentName, name: caption, sha256: originalSha256, spare: true }] : []),
    ]);
}

interface PhotoInEntry {
  readonly sha256: string;
  readonly originalSha256?: string;
  readonly caption: string;
}

/** Some kinds of entry carry photos, most do not; which do is the job schema's business. */
function photosOf(entry: JobEntry): readonly PhotoInEntry[] {
  const { photos = [] } = entry as { readonly photos?: readonly PhotoInEntry[] };
  return photos;
}
