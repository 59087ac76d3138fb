import { compareText } from '../quantity/compare-text.ts';
import type { CauseShare } from './cause.ts';
import type { HazardCause, HazardField } from './hazard-field.ts';

/** A cause that makes less than this of a stretch's hazard is not worth a word. */
const leastShare = 1e-4;

/**
 * Each cause's share of the hazard between two stations of a circuit, largest first, ties by name. The same
 * cause on the same thing is one entry, with the figures of its larger part. Shares sum to one but for what
 * is too small to list. `evenShare` is the part of the whole circuit's chance that is spread evenly for what
 * nobody mapped; it is listed as `anywhere`. O(causes x log cells + cells in the stretch of each).
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
  const even = evenShare > 0 ? evenCause(field, evenShare) : null;
  let total = 0;
  for (const cause of even ? [...field.causes, even] : field.causes) {
    const mass = massBetween(field.cellEdgesMm, cause, fromMm, toMm);
    if (mass <= 0) continue;
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
  }
  return [...merged.values()]
    .map(({ cause: { cause, thing, figures }, mass }) => ({ cause, thing, share: mass / total, figures }))
    .filter(({ share }) => share >= leastShare)
    .sort((a, b) => b.share - a.share || compareText(`${a.cause} ${a.thing}`, `${b.cause} ${b.thing}`));
}

const knownWhole = new WeakMap<readonly HazardCause[], number>();

function evenCause({ cellEdgesMm, causes }: HazardField, evenShare: number): HazardCause {
  const cellCount = cellEdgesMm.length - 1;
  const lengthMm = cellEdgesMm[cellCount] as number;
  let whole = knownWhole.get(causes);
  if (whole === undefined) {
    whole = 0;
    for (const cause of causes) whole += massBetween(cellEdgesMm, cause, 0, lengthMm);
    knownWhole.set(causes, whole);
  }
  const density = ((evenShare / (1 - evenShare)) * whole) / lengthMm;
  const perMm = new Float64Array(cellCount).fill(density);
  return { cause: 'anywhere', thing: null, figures: {}, firstCell: 0, perMm };
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
