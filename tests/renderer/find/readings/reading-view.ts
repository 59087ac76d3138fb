import { layStraight } from '#core/circuit/circuit-line.ts';
import type { Job, JobEntry } from '#core/job/job-document.ts';
import { rank } from '#core/job/rank.ts';
import { standingEntries } from '#core/job/standing-entries.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { assert } from '#core/quantity/assert.ts';
import { sayWhere } from '#renderer/language/say-where.ts';
import type { FindView, ReadingStart } from '#renderer/places/find/find-context.ts';
import { jobSession } from '#renderer/session/job-session.ts';
import { sample } from '#tests/sample.ts';

const nothing = (): void => {};

/** The Find place with a job open and ranked, its tests worked out as well, and nothing yet pointed at. */
export function readingView(changes: {
  readonly map?: MapDocument;
  readonly job?: Job;
  readonly entries?: readonly JobEntry[];
  readonly reading?: ReadingStart;
  readonly picked?: FindView['picked'];
}): FindView {
  const map = changes.map ?? sample.map;
  const base = changes.job ?? sample.job;
  const job = { ...base, entries: [...base.entries, ...(changes.entries ?? [])] };
  const circuit = job.circuitId === null ? undefined : map.circuits.get(job.circuitId);
  const laid = circuit ? layStraight(map, circuit) : null;
  assert(laid?.ok, 'the circuit under search lies straight');
  const line = laid.value;
  const ranked = rank(map, job, { withTests: true });
  return {
    session: jobSession(job.id, {
      client: async () => ({ ok: false, problem: { code: 'no-answer', detail: '' } }),
    }),
    open: {
      job,
      map,
      line,
      ranking: ranked.ok ? ranked.value : null,
      rankingBefore: null,
      changedBy: [],
      firmness: null,
      past: null,
      rankProblem: null,
      thinking: false,
      saving: 'saved',
      saveProblem: null,
    },
    standing: standingEntries(job),
    lengths: 'metric',
    say: (name) => name,
    where: ({ fromMm, toMm }) => sayWhere(map, line, fromMm, toMm, 'metric'),
    pointed: [],
    pointedEntry: null,
    point: nothing,
    picked: changes.picked ?? null,
    pick: nothing,
    cautionsRead: new Set(),
    reading: changes.reading ?? null,
    openReading: nothing,
    closeReading: nothing,
  };
}
