import { z } from 'zod';
import { compareText } from '../quantity/compare-text.ts';
import { idSchema } from '../quantity/id.ts';
import { documentText } from './document-text.ts';
import type { MapDocument } from './map-document.ts';
import {
  circuitSchema,
  mapDetailsSchema,
  nodeSchema,
  outlineSchema,
  panelSchema,
  rubSpotSchema,
  segmentSchema,
  underlaySchema,
} from './records.ts';

export const mapFormat = 'undertrim.map';
export const mapVersion = 1;

/** The JSON document of one map: the same records as in memory, as lists sorted by id. */
export const mapExchangeSchema = z.strictObject({
  format: z.literal(mapFormat),
  version: z.literal(mapVersion),
  id: idSchema('map'),
  revision: z.number().int().min(0),
  details: mapDetailsSchema,
  outlines: z.array(outlineSchema),
  underlays: z.array(underlaySchema),
  nodes: z.array(nodeSchema),
  segments: z.array(segmentSchema),
  panels: z.array(panelSchema),
  rubSpots: z.array(rubSpotSchema),
  circuits: z.array(circuitSchema),
});
export type MapExchange = z.infer<typeof mapExchangeSchema>;

const byId = <T extends { readonly id: string }>(records: Iterable<T>): T[] =>
  [...records].sort((a, b) => compareText(a.id, b.id));

const table = <T extends { readonly id: string }>(records: readonly T[]): ReadonlyMap<T['id'], T> =>
  new Map(records.map((record) => [record.id, record]));

/**
 * A map as lists sorted by id. Fields stand as they do in memory; `mapText` puts them in order too.
 * @example
 * mapToExchange(sample.map).format // => 'undertrim.map'
 */
export function mapToExchange(document: MapDocument): MapExchange {
  return {
    format: mapFormat,
    version: mapVersion,
    id: document.id,
    revision: document.revision,
    details: document.details,
    outlines: byId(document.outlines.values()),
    underlays: byId(document.underlays.values()),
    nodes: byId(document.nodes.values()),
    segments: byId(document.segments.values()),
    panels: byId(document.panels.values()),
    rubSpots: byId(document.rubSpots.values()),
    circuits: byId(document.circuits.values()),
  };
}

/**
 * The in-memory map of a checked exchange document. References are not followed here: a half-drawn
 * map is legal, and `mapFaults` tells what does not hang together.
 * @example
 * mapFromExchange(mapToExchange(sample.map)).nodes.size === sample.map.nodes.size // => true
 */
export function mapFromExchange(exchange: MapExchange): MapDocument {
  return {
    id: exchange.id,
    revision: exchange.revision,
    details: exchange.details,
    outlines: table(exchange.outlines),
    underlays: table(exchange.underlays),
    nodes: table(exchange.nodes),
    segments: table(exchange.segments),
    panels: table(exchange.panels),
    rubSpots: table(exchange.rubSpots),
    circuits: table(exchange.circuits),
  };
}

/**
 * The text of a map's file in its normal form: one record a line, records by id, fields in the order of
 * the schema, so that the same map always gives the same text, to the byte.
 * @example
 * mapText(sample.map) === mapText(mapFromExchange(JSON.parse(mapText(sample.map)))) // => true
 */
export function mapText(document: MapDocument): string {
  const exchange = mapToExchange(document);
  const checked = mapExchangeSchema.safeParse(exchange);
  return documentText(checked.success ? checked.data : exchange);
}
