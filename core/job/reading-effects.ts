import type { ElectricalReading } from '../circuit/car-state.ts';
import type { CircuitLine } from '../circuit/circuit-line.ts';
import { isSeriesClass } from '../circuit/fault-response.ts';
import type { Hypotheses } from '../locate/hypotheses.ts';
import { learnedBits } from '../locate/information.ts';
import { ownInterval } from '../locate/own-interval.ts';
import { readingsEvidence } from '../locate/readings-evidence.ts';
import type { FaultClass } from '../map/kinds.ts';
import type { EntryId } from '../quantity/id.ts';
import { logSumExp } from '../quantity/sums.ts';
import type { HeardReadings } from './hear-readings.ts';
import type { ReadingEffect, UnusedReading } from './ranking.ts';
import { sharperWay } from './sharper-way.ts';

/** Told beside the rest at least this much about the place, a reading flat by itself helps all the same, in bits (judgement). */
const leastPlaceBits = 0.1;

/** A reading judged by place, as log-likelihoods on the coarse cells. */
export interface PlacedRow {
  readonly entryId: EntryId;
  readonly row: Float64Array;
}

/** What the effects are worked out from, all on the same coarse cells. */
export interface EffectGrounds {
  readonly cells: Hypotheses;
  /** Log prior with everything that is not a reading. */
  readonly base: Float64Array;
  readonly placed: readonly PlacedRow[];
  readonly heard: HeardReadings;
  readonly unused: readonly UnusedReading[];
  /** Entries of readings in the order of the record. */
  readonly order: readonly EntryId[];
}

/**
 * What each reading did: where it alone puts the fault, what it taught on top of all else, and for an
 * electrical one that tells no place, why and what would. O(readings x cells), and one likelihood with
 * and one without each electrical reading the first time.
 * @example
 * readingEffects(sample.line, { cells: layHypotheses(new Float64Array([0, 10]), []), base: new Float64Array(6), placed: [], heard: hearReadings(sample.map, sample.line, layHypotheses(new Float64Array([0, 10]), []), []), unused: [{ entryId: 'entry:1', why: 'nothing-apart' }], order: ['entry:1'] })[0].bits // => 0
 */
export function readingEffects(line: CircuitLine, grounds: EffectGrounds): ReadingEffect[] {
  const { cells, base, placed, heard } = grounds;
  const said = (places: readonly number[]): Float64Array =>
    places.length > 0 ? readingsEvidence(heard.some(cells, places))(cells) : new Float64Array(cells.size);
  const together = said(heard.used);
  const rows = placed.map(({ row }) => row);
  const posterior = normalised(added([base, together, ...rows]));
  const shares = cells.classes.map((_, k) => {
    let sum = 0;
    for (let i = 0; i < cells.cellCount; i++) sum += posterior[k * cells.cellCount + i] as number;
    return sum;
  });
  const effects = new Map<EntryId, ReadingEffect>();
  const places = placeShares(cells, posterior);
  const likeliest = cells.classes[shares.indexOf(Math.max(...shares))] as FaultClass;
  const put = (
    entryId: EntryId,
    own: Float64Array,
    without: Float64Array,
    reading: ElectricalReading | null,
  ): void => {
    const interval = ownInterval(cells, own, shares);
    const before = normalised(without);
    const tellsPlace =
      interval !== 'everywhere' || learnedBits(places, placeShares(cells, before)) > leastPlaceBits;
    const isFlat = reading !== null && !tellsPlace && !(isOpenLine(reading) && !isSeriesClass(likeliest));
    effects.set(entryId, {
      entryId,
      interval,
      bits: learnedBits(posterior, before),
      flat: isFlat ? sharperWay(line, likeliest, reading.test) : null,
      unused: null,
    });
  };
  for (const [i, { entryId, row }] of placed.entries())
    put(entryId, row, added([base, together, ...rows.filter((_, k) => k !== i)]), null);
  for (const place of heard.used) {
    const entry = heard.entries[place] as HeardReadings['entries'][number];
    const others = heard.used.filter((other) => other !== place);
    put(entry.entryId, said([place]), added([base, said(others), ...rows]), entry.taken.reading);
  }
  for (const { entryId, why } of grounds.unused)
    effects.set(entryId, { entryId, interval: 'everywhere', bits: 0, flat: null, unused: why });
  return grounds.order.flatMap((entryId) => effects.get(entryId) ?? []);
}

/** No way through at all speaks of the kind of fault; no other meter would make more of it. */
function isOpenLine(reading: ElectricalReading): boolean {
  return reading.test === 'ohms' && typeof reading.ohms !== 'number';
}

/** Probability per cell, classes together, given that the fault is on the wire. */
function placeShares({ cellCount, classes }: Hypotheses, probability: Float64Array): Float64Array {
  const places = new Float64Array(cellCount);
  let sum = 0;
  for (let i = 0; i < classes.length * cellCount; i++) {
    places[i % cellCount] = (places[i % cellCount] as number) + (probability[i] as number);
    sum += probability[i] as number;
  }
  return sum > 0 ? places.map((value) => value / sum) : places;
}

function added(rows: readonly Float64Array[]): Float64Array {
  const sum = new Float64Array(rows[0]?.length ?? 0);
  for (const row of rows)
    for (let i = 0; i < sum.length; i++) sum[i] = (sum[i] as number) + (row[i] as number);
  return sum;
}

function normalised(log: Float64Array): Float64Array {
  const total = logSumExp(log);
  return total === Number.NEGATIVE_INFINITY ? log.map(() => 0) : log.map((value) => Math.exp(value - total));
}
