import type { ReadingsLikelihood } from '../circuit/reading-likelihood.ts';
import { type Hypotheses, noneAt } from '../locate/hypotheses.ts';
import { readingsEvidence } from '../locate/readings-evidence.ts';
import type { EntryId } from '../quantity/id.ts';
import type { HeardReadings } from './hear-readings.ts';
import type { Contradiction } from './ranking.ts';
import type { PlacedRow } from './reading-effects.ts';

/** Two pieces of evidence whose best common place is this much worse than their own best ones, in nats: 12 to 1 (judgement). */
const apartNats = 2.5;

/** Pairs are only looked at among this many readings; beyond, the whole is named. */
const mostPaired = 12;

/**
 * Whether readings miss their best common explanation by more than chance: the sum of squared misses
 * exceeds N + 4 sqrt(2 N), four standard deviations of its law (judgement).
 * @example
 * isTornApart(-12, 2) // => true
 */
export function isTornApart(bestFit: number, readings: number): boolean {
  return -2 * bestFit > readings + 4 * Math.sqrt(2 * readings);
}

/**
 * Readings that cannot both hold, strongest first: electrical ones by the fit of the circuit, those with
 * a plug pulled or a place moved by the place they leave. When no pair explains a misfit of the
 * electrical readings, those whose absence mends it are named together. Capacitances, and the same test with
 * opposite outcomes, are named too. O(readings^2) fits, only if torn.
 * @example
 * findContradictions(layHypotheses(new Float64Array([0, 10]), []), hearReadings(sample.map, sample.line, layHypotheses(new Float64Array([0, 10]), []), []), []) // => []
 */
export function findContradictions(
  cells: Hypotheses,
  heard: HeardReadings,
  placed: readonly PlacedRow[],
): Contradiction[] {
  const found: (Contradiction & { readonly nats: number })[] = [];
  const add = (entryIds: readonly EntryId[], unless: Contradiction['unless'], nats: number): void => {
    found.push({ entryIds, unless, nats });
  };
  for (const [i, a] of placed.entries())
    for (const b of placed.slice(i + 1)) {
      const nats = distanceNats(cells, a.row, b.row);
      if (nats > apartNats) add([a.entryId, b.entryId], 'two-faults-or-slip', nats);
      else if (areOpposite(a.row, b.row)) add([a.entryId, b.entryId], 'fault-changed', apartNats);
    }
  const { together, used, entries } = heard;
  if (together) {
    const idOf = (place: number): EntryId => (entries[place] as { entryId: EntryId }).entryId;
    const isTorn = isTornApart(fitOf(together), together.used);
    if (isTorn)
      for (const each of tornPairs(cells, heard)) add(each.places.map(idOf), each.unless, each.nats);
    else {
      for (const each of apartCapacitances(cells, heard)) add(each.places.map(idOf), each.unless, each.nats);
      const row = readingsEvidence(heard.some(cells, used))(cells);
      for (const each of placed) {
        const nats = distanceNats(cells, row, each.row);
        if (nats > apartNats) add([...used.map(idOf), each.entryId], 'two-faults-or-slip', nats);
      }
    }
  }
  return found.sort((a, b) => b.nats - a.nats).map(({ entryIds, unless }) => ({ entryIds, unless }));
}

/** The same test twice with opposite outcomes: under every hypothesis their chances make one. */
function areOpposite(a: Float64Array, b: Float64Array): boolean {
  let furthest = 0;
  for (let i = 0; i < a.length; i++) {
    if (Math.abs(Math.exp(a[i] as number) + Math.exp(b[i] as number) - 1) > 1e-9) return false;
    furthest = Math.max(furthest, Math.abs((a[i] as number) - (b[i] as number)));
  }
  return furthest > 0;
}

/** Capacitances have no part in the fit of the circuit: each is held against every other reading by place. */
function apartCapacitances(cells: Hypotheses, { used, entries, some }: HeardReadings): TornReadings[] {
  const isCapacitance = (place: number): boolean => entries[place]?.taken.reading.test === 'capacitance';
  const apart: TornReadings[] = [];
  if (used.length > mostPaired || !used.some(isCapacitance)) return apart;
  const rows = used.map((place) => ({ place, row: readingsEvidence(some(cells, [place]))(cells) }));
  for (const [i, a] of rows.entries())
    for (const b of rows.slice(i + 1)) {
      if (!isCapacitance(a.place) && !isCapacitance(b.place)) continue;
      const nats = distanceNats(cells, a.row, b.row);
      if (nats > apartNats) apart.push({ places: [a.place, b.place], unless: 'two-faults-or-slip', nats });
    }
  return apart;
}

interface TornReadings {
  readonly places: readonly number[];
  readonly unless: Contradiction['unless'];
  readonly nats: number;
}

function tornPairs(cells: Hypotheses, heard: HeardReadings): TornReadings[] {
  const { used } = heard;
  const torn: TornReadings[] = [];
  const rows = new Map(used.map((place) => [place, readingsEvidence(heard.some(cells, [place]))(cells)]));
  const rowOf = (place: number): Float64Array => rows.get(place) as Float64Array;
  if (used.length <= mostPaired)
    for (const [i, a] of used.entries())
      for (const b of used.slice(i + 1)) {
        const pair = heard.some(cells, [a, b]);
        const fit = fitOf(pair);
        if (!isTornApart(fit, pair.used)) continue;
        const onePlace = distanceNats(cells, rowOf(a), rowOf(b)) <= apartNats;
        torn.push({
          places: [a, b],
          unless: onePlace ? 'fault-changed' : 'two-faults-or-slip',
          nats: -fit,
        });
      }
  if (torn.length > 0) return torn;
  const mending = used.filter((place) => {
    const rest = heard.some(
      cells,
      used.filter((other) => other !== place),
    );
    return !isTornApart(fitOf(rest), rest.used);
  });
  const places = mending.length > 1 ? mending : used;
  return [{ places, unless: 'two-faults-or-slip', nats: heard.together ? -fitOf(heard.together) : 0 }];
}

/** Best fit of any wire fault or of any part. */
function fitOf(said: ReadingsLikelihood): number {
  return said.components.reduce((best, part) => Math.max(best, part.logLikelihood), said.bestFit);
}

/** How much worse the best common hypothesis is than the best of each; "none of these" explains nothing. */
function distanceNats(cells: Hypotheses, a: Float64Array, b: Float64Array): number {
  const none = noneAt(cells);
  let bestA = Number.NEGATIVE_INFINITY;
  let bestB = Number.NEGATIVE_INFINITY;
  let common = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < none; i++) {
    bestA = Math.max(bestA, a[i] as number);
    bestB = Math.max(bestB, b[i] as number);
    common = Math.max(common, (a[i] as number) + (b[i] as number));
  }
  return bestA + bestB - common;
}
