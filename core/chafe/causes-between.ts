import { compareText } from '../quantity/compare-text.ts';
import type { CauseShare } from './cause.ts';
import type { HazardCause, HazardField } from './hazard-field.ts';

/** A cause that makes less than this of a stretch's hazard is not worth a word. */
const leastShare = 1e-4;

/**
 * Each cause's share of the hazard between two stations of a circuit, largest first, ties by name. The same
 * cause on the same thing is one entry, with the figures of its larger part. Shares sum to one but for what
 * is too small to list. `evenShare` is the part of the whole circuit's chance that is spread evenly for what
 * nobody mapped; it is listed as `anywhere`. O(causes + cells in the stretch of each).
 * @example
 * causesBetween(hazardAlong(sample.map, sample.line), 700, 800)[0].thing // => 'rub-spot:edge'
 */
export function causesBetween(
  field: HazardField,
  fromMm: number,
  toMm: number,
  evenShare = 0,
): readonly CauseShare[] {
  const merged = new Map<string, { cause: HazardCause; largest: number; mass: number }>();
  let total = 0;
  const add = (cause: HazardCause, mass: number): void => {
    if (mass <= 0) return;
    total += mass;
    const key = `${cause.cause} ${cause.thing}`;
    const held = merged.get(key);
    if (!held) merged.set(key, { cause, largest: mass, mass });
    else {
      held.mass += mass;
      if (mass > held.largest) {
        held.largest = mass;
        held.cause = cause;
      }
    }
  };
  const { cellEdgesMm, causes } = field;
  for (const cause of causes) {
    // Most causes lie elsewhere on the circuit; that is told without searching their cells.
    const { firstCell, perMm } = cause;
    if ((cellEdgesMm[firstCell] as number) >= toMm) continue;
    if ((cellEdgesMm[firstCell + perMm.length] as number) <= fromMm) continue;
    add(cause, massBetween(cellEdgesMm, cause, fromMm, toMm));
  }
  if (evenShare > 0) {
    const lengthMm = cellEdgesMm.at(-1) as number;
    const within = Math.min(toMm, lengthMm) - Math.max(fromMm, 0);
    add(anywhere, evenPerMm(field, evenShare) * within);
  }
  return [...merged.values()]
    .map(({ cause: { cause, thing, figures }, mass }) => ({ cause, thing, share: mass / total, figures }))
    .filter(({ share }) => share >= leastShare)
    .sort((a, b) => b.share - a.share || compareText(`${a.cause} ${a.thing}`, `${b.cause} ${b.thing}`));
}

const knownWhole = new WeakMap<readonly HazardCause[], number>();

const anywhere: HazardCause = {
  cause: 'anywhere',
  thing: null,
  figures: {},
  firstCell: 0,
  perMm: new Float64Array(0),
};

/** Hazard per mm of what nobody mapped, spread evenly over the circuit. */
function evenPerMm({ cellEdgesMm, causes }: HazardField, evenShare: number): number {
  const lengthMm = cellEdgesMm.at(-1) as number;
  let whole = knownWhole.get(causes);
  if (whole === undefined) {
    whole = 0;
    for (const cause of causes) whole += massBetween(cellEdgesMm, cause, 0, lengthMm);
    knownWhole.set(causes, whole);
  }
  return ((evenShare / (1 - evenShare)) * whole) / lengthMm;
}

/**
 * Hazard of one cause between two stations, per hour.
 * @example
 * massBetween(new Float64Array([0, 10, 20]), { firstCell: 1, perMm: new Float64Array([2]) }, 5, 15) // => 10
 */
export function massBetween(
  edgesMm: Float64Array,
  cause: Pick<HazardCause, 'firstCell' | 'perMm'>,
  fromMm: number,
  toMm: number,
): number {
  let mass = 0;
  for (let i = cellsBefore(edgesMm, cause, fromMm); i < cause.perMm.length; i++) {
    const start = edgesMm[cause.firstCell + i] as number;
    if (start >= toMm) break;
    const from = Math.max(fromMm, start);
    const to = Math.min(toMm, edgesMm[cause.firstCell + i + 1] as number);
    if (to > from) mass += (to - from) * (cause.perMm[i] as number);
  }
  return mass;
}

/** How many of a cause's cells end at or before a station. O(log cells). */
function cellsBefore(
  edgesMm: Float64Array,
  cause: Pick<HazardCause, 'firstCell' | 'perMm'>,
  stationMm: number,
): number {
  let low = 0;
  let high = cause.perMm.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((edgesMm[cause.firstCell + middle + 1] as number) <= stationMm) low = middle + 1;
    else high = middle;
  }
  return low;
}
