import { readdirSync, readFileSync } from 'node:fs';
import { type Job, jobSchema } from '#core/job/job-document.ts';
import { mapExchangeSchema, mapFromExchange } from '#core/map/exchange.ts';
import type { MapDocument } from '#core/map/map-document.ts';

const folder = new URL('../../sample-vehicles/', import.meta.url);

/** Names of the sample vehicles, from the files that are there. */
export const sampleNames: readonly string[] = readdirSync(folder)
  .filter((file) => file.endsWith('.map.json'))
  .map((file) => file.slice(0, -'.map.json'.length))
  .sort();

export function sampleText(name: string, kind: 'map' | 'job'): string {
  return readFileSync(new URL(`${name}.${kind}.json`, folder), 'utf8');
}

export function sampleMap(name: string): MapDocument {
  return mapFromExchange(mapExchangeSchema.parse(JSON.parse(sampleText(name, 'map'))));
}

export function sampleJob(name: string): Job {
  return jobSchema.parse(JSON.parse(sampleText(name, 'job')));
}
