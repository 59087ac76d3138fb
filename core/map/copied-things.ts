import { compareText } from '../quantity/compare-text.ts';
import { type IdKind, idKind } from '../quantity/id.ts';
import { fail, ok, type Result } from '../quantity/result.ts';
import { type MapDocument, type MapRecord, tableOfKind } from './map-document.ts';
import { recordOf } from './map-draft.ts';
import type { Circuit, Segment } from './records.ts';
import { referencesOf } from './references.ts';

/** What was copied: whole records as they stood, so that it can cross to another map as text. */
export interface CopiedThings {
  readonly records: readonly MapRecord[];
}

/** Things others name come before those that name them. */
const kindOrder: readonly IdKind[] = [
  'outline',
  'underlay',
  'panel',
  'node',
  'segment',
  'rub-spot',
  'circuit',
];

/**
 * A copy of some things to paste here or on another map. A run brings its end nodes, its clips and its
 * tags; a picked circuit keeps its trace only when all runs of it are copied too, and its ends and pins
 * only at copied nodes. What the copies say about panels that are not copied stays for pasting to judge.
 * A clip alone is no thing of its own and is left out. Refuses `not-found`. O(things).
 * @example
 * copiedThings(sample.map, ['segment:rear', 'panel:seat']).value.records.map((record) => record.id) // => ['panel:seat', 'node:east', 'node:far', 'segment:rear']
 */
export function copiedThings(map: MapDocument, ids: readonly string[]): Result<CopiedThings> {
  const records = new Map<string, MapRecord>();
  for (const id of ids) {
    if (idKind(id) === 'clip') continue;
    const record = recordOf(map, id);
    if (!record || !Object.hasOwn(tableOfKind, idKind(id))) return fail({ code: 'not-found', thing: id });
    records.set(id, record);
    if (idKind(id) !== 'segment') continue;
    const { fromNodeId, toNodeId } = record as Segment;
    for (const nodeId of [fromNodeId, toNodeId]) {
      const node = map.nodes.get(nodeId);
      if (node) records.set(nodeId, node);
    }
  }
  const copied = [...records.values()].map((record) =>
    idKind(record.id) === 'circuit' ? circuitWithin(record as Circuit, records) : record,
  );
  const rank = (record: MapRecord): number => kindOrder.indexOf(idKind(record.id));
  return ok({ records: copied.sort((a, b) => rank(a) - rank(b) || compareText(a.id, b.id)) });
}

/** The circuit with only what it says about copied things. */
function circuitWithin(circuit: Circuit, copied: ReadonlyMap<string, MapRecord>): Circuit {
  const whole = circuit.path.every((step) => copied.has(step.segmentId));
  const [first, last] = circuit.ends;
  const end = (each: typeof first): typeof first =>
    each.nodeId !== null && !copied.has(each.nodeId) ? { ...each, nodeId: null } : each;
  return {
    ...circuit,
    path: whole ? circuit.path : [],
    pins: circuit.pins.filter((pin) => copied.has(pin.nodeId)),
    ends: [end(first), end(last)],
  };
}

/**
 * Ids the copied things name that are not among them: panels left behind.
 * @example
 * namedOutside(copiedThings(sample.map, ['segment:front']).value) // => ['panel:tread']
 */
export function namedOutside(things: CopiedThings): readonly string[] {
  const within = new Set(things.records.map((record) => record.id as string));
  const outside = new Set<string>();
  for (const record of things.records) {
    for (const { id } of referencesOf(record)) if (!within.has(id)) outside.add(id);
  }
  return [...outside].sort(compareText);
}
