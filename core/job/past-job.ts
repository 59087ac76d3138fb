import { hazardAlong } from '../chafe/hazard-along.ts';
import type { HazardCause, HazardField } from '../chafe/hazard-field.ts';
import { layStraight } from '../circuit/circuit-line.ts';
import { addTally, emptyTally, type PastJob, type Tally } from '../history/past-jobs.ts';
import type { StationRange } from '../locate/station-ranges.ts';
import { isLookOnly, type RubSpotKind } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { EntryOf, Job, JobEntry } from './job-document.ts';
import { onCircuit } from './path-stretches.ts';
import { provedFinds } from './proved-find.ts';
import { standingEntries } from './standing-entries.ts';

/**
 * What a job teaches, from the entries that stand: a find that was proved counts for whatever may have made it,
 * in the proportions of the model there, and the whole circuit for what was expected. A job without one counts for
 * what was looked at and found sound, as far as one could see; what was taken for the cause and never proved says
 * neither. Null where neither is known, or the circuit
 * cannot be laid straight. `map` is the map as it stood for the job. Takes what `hazardAlong` takes.
 * @example
 * pastJob(sample.map, sample.job) // => null
 */
export function pastJob(map: MapDocument, job: Job): PastJob | null {
  const circuit = job.circuitId === null ? null : map.circuits.get(job.circuitId);
  const laid = circuit && job.mapId === map.id ? layStraight(map, circuit) : null;
  if (!laid?.ok) return null;
  const entries = standingEntries(job);
  const { stretches: found, partNodeId } = foundAtLast(entries, isLookOnly(circuit?.duty));
  // A cause in a plug says nothing of where looms rub.
  if (partNodeId) return null;
  const foundAt = onCircuit(laid.value, found);
  if (found.length > 0 && foundAt.length === 0) return null;
  const field = hazardAlong(map, laid.value);
  const { cellEdgesMm } = field;
  const whole = massIn(field, () => 1);
  if (whole === 0) return null;
  const named = { jobId: job.id, mapId: job.mapId };
  if (foundAt.length > 0) {
    const there = cellsIn(cellEdgesMm, foundAt);
    const mass = massIn(field, (cell) => there[cell] as number);
    if (mass === 0) return null;
    return {
      ...named,
      found: tallyOf(map, field, (cell) => (there[cell] as number) / mass),
      expected: tallyOf(map, field, () => 1 / whole),
    };
  }
  const missed = new Float64Array(cellEdgesMm.length - 1).fill(1);
  for (const look of entries) {
    if (look.type !== 'inspection' || look.result === 'found') continue;
    cellsIn(cellEdgesMm, onCircuit(laid.value, look.stretches)).forEach((share, cell) => {
      missed[cell] = (missed[cell] as number) * (1 - share * look.lookQuality);
    });
  }
  if (missed.every((share) => share === 1)) return null;
  const seen = (cell: number) => (1 - (missed[cell] as number)) / whole;
  return { ...named, found: emptyTally, expected: tallyOf(map, field, seen) };
}

/** Where the cause was last proved. */
const foundAtLast = (
  entries: readonly JobEntry[],
  lookOnly: boolean,
): Pick<EntryOf<'finding'>, 'stretches' | 'partNodeId'> =>
  provedFinds(entries, lookOnly).at(-1) ?? { stretches: [] };

/** Share of each cell that lies in some ranges. */
function cellsIn(edgesMm: Float64Array, ranges: readonly StationRange[]): Float64Array {
  return Float64Array.from({ length: edgesMm.length - 1 }, (_, cell) => {
    const start = edgesMm[cell] as number;
    const end = edgesMm[cell + 1] as number;
    let share = 0;
    for (const { fromMm, toMm } of ranges) {
      share += Math.max(0, Math.min(end, toMm) - Math.max(start, fromMm)) / (end - start);
    }
    return Math.min(1, share);
  });
}

function weighted(edgesMm: Float64Array, cause: HazardCause, weight: (cell: number) => number): number {
  let mass = 0;
  for (let i = 0; i < cause.perMm.length; i++) {
    const cell = cause.firstCell + i;
    const widthMm = (edgesMm[cell + 1] as number) - (edgesMm[cell] as number);
    mass += (cause.perMm[i] as number) * widthMm * weight(cell);
  }
  return mass;
}

const massIn = ({ cellEdgesMm, causes }: HazardField, weight: (cell: number) => number) =>
  causes.reduce((sum, cause) => sum + weighted(cellEdgesMm, cause, weight), 0);

function tallyOf(map: MapDocument, field: HazardField, weight: (cell: number) => number): Tally {
  let tally = emptyTally;
  for (const cause of field.causes) {
    const mass = weighted(field.cellEdgesMm, cause, weight);
    if (mass > 0) tally = addTally(tally, oneCause(map, cause, mass));
  }
  return tally;
}

function oneCause(map: MapDocument, { cause, thing }: HazardCause, mass: number): Tally {
  const spot = thing ? map.rubSpots.get(thing as `rub-spot:${string}`) : undefined;
  if (!spot) return { ...emptyTally, causes: { [cause]: mass } };
  const kind: Partial<Record<RubSpotKind, number>> = { [spot.kind]: mass };
  return { causes: {}, rubSpotKinds: kind, rubSpots: { [spot.id]: mass } };
}
