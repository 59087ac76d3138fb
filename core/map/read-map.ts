import type { MapProblem } from '../quantity/problem.ts';
import { fail, ok, type Result } from '../quantity/result.ts';
import { checkedDocument } from './checked-document.ts';
import { mapExchangeSchema, mapFormat, mapFromExchange, mapVersion } from './exchange.ts';
import type { MapDocument } from './map-document.ts';
import { mapFaults } from './map-faults.ts';
import { parseJson } from './parse-json.ts';

/** One step of bringing an older file up: from the version it is listed under to the next. */
type Migration = (document: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>;

/** By the version they start from. Version 1 is the first, so there is none yet. */
const migrations: ReadonlyMap<number, Migration> = new Map();

/** A map that was read, with whatever on it does not hang together. */
export interface ReadMap {
  readonly map: MapDocument;
  readonly problems: readonly MapProblem[];
}

/**
 * Reads the text of a map file. Refuses what cannot be a map (`not-json`, `wrong-format`,
 * `newer-version`), the first field that is not as it should be (`bad-field` with its path) and two
 * records with one id (`duplicate-id`). A half-drawn map is read, and what does not hang together on it
 * is told beside it. O(length of the text).
 * @example
 * readMap('{"format": "undertrim.map", "version": 99}') // => { ok: false, problem: { code: 'newer-version', found: 99, known: 1 } }
 */
export function readMap(text: string): Result<ReadMap> {
  const parsed = parseJson(text);
  if (!parsed.ok) return parsed;
  const current = broughtUp(parsed.value);
  if (!current.ok) return current;
  const checked = checkedDocument(mapExchangeSchema, current.value);
  if (!checked.ok) return checked;
  const exchange = checked.value;
  const seen = new Set<string>();
  for (const list of [
    exchange.outlines,
    exchange.underlays,
    exchange.nodes,
    exchange.segments,
    exchange.segments.flatMap((segment) => segment.clips),
    exchange.panels,
    exchange.rubSpots,
    exchange.circuits,
  ]) {
    for (const { id } of list) {
      if (seen.has(id)) return fail({ code: 'duplicate-id', thing: id });
      seen.add(id);
    }
  }
  const map = mapFromExchange(exchange);
  return ok({ map, problems: mapFaults(map) });
}

/** The document in today's version, its format and version checked. */
function broughtUp(parsed: unknown): Result<object> {
  if (typeof parsed !== 'object' || parsed === null || Array.isArray(parsed)) {
    return fail({ code: 'wrong-format', expected: mapFormat, found: typeof parsed });
  }
  let document = parsed as Readonly<Record<string, unknown>>;
  const { format, version } = document;
  if (format !== mapFormat) {
    return fail({
      code: 'wrong-format',
      expected: mapFormat,
      found: typeof format === 'string' ? format.slice(0, 80) : '',
    });
  }
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return fail({ code: 'bad-field', path: 'version', expected: `1 .. ${mapVersion}` });
  }
  if (version > mapVersion) return fail({ code: 'newer-version', found: version, known: mapVersion });
  for (let from = version; from < mapVersion; from++) {
    document = migrations.get(from)?.(document) ?? document;
  }
  return ok(document);
}
