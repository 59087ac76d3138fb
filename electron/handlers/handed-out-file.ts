import type { Job } from '#core/job/job-document.ts';
import { jobText } from '#core/job/job-text.ts';
import { type MapExchange, mapFromExchange, mapText } from '#core/map/exchange.ts';

/** A document as a file to hand to someone. */
export interface HandedOutFile {
  readonly fileName: string;
  readonly text: string;
}

/** A map's file, in its normal form. */
export function mapFile(map: MapExchange): HandedOutFile {
  return { fileName: `${fileStem(map.details.name)}.map.json`, text: mapText(mapFromExchange(map)) };
}

/** A job's file, in its normal form. */
export function jobFile(job: Job): HandedOutFile {
  return { fileName: `${fileStem(job.vehicle.plate)}.job.json`, text: jobText(job) };
}

/** A name as a file name every system takes: small letters, digits and dashes. */
export function fileStem(name: string): string {
  const stem = name
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '');
  return stem.slice(0, 60) || 'undertrim';
}
