import type { JobId, MapId } from '#core/quantity/id.ts';
import type { Connection } from '../connection.ts';
import { jobProgress } from '../job-progress.ts';
import { readJob } from '../job-store.ts';
import { readMapAt } from '../map-history-store.ts';
import { pinMap } from '../map-snapshot-store.ts';
import { saveRows } from './save-rows.ts';
import { historyHolds, jobWholeness, mapWholeness } from './whole-things.ts';

/** What was saved, by the names a person knows; an id that no name goes with is itself what went wrong. */
export interface Salvaged {
  /** The damaged store could not be opened at all. */
  readonly nothingRead: boolean;
  readonly keptMaps: number;
  readonly keptJobs: number;
  readonly keptPictures: number;
  readonly fromBackup: { readonly maps: string[]; readonly jobs: string[] };
  readonly incomplete: { readonly maps: string[]; readonly jobs: string[] };
  readonly withoutHistory: string[];
  readonly lost: { readonly maps: string[]; readonly jobs: string[]; readonly pictures: number };
}

/**
 * Fills a new store with what can be read of a damaged one, and takes what is not whole there from a backup
 * where it is whole. Null for the damaged store when nothing of it can be opened. Afterwards every reference
 * in the new store holds.
 */
export function salvageStore(
  damaged: Connection | null,
  backup: Connection | null,
  target: Connection,
): Salvaged {
  target.pragma('foreign_keys = OFF');
  const troubled = damaged ? saveRows(damaged, target).troubled : new Set(['map', 'map_record', 'job']);
  const names = namesIn([damaged, backup, target]);
  rebuildMapRows(target);
  const fromBackup = backup ? takeFrom(backup, target, troubled, damaged === null) : { maps: [], jobs: [] };
  for (const job of idsOf<JobId>(target, 'job', 'id')) pinAgain(target, job);

  const maps = sorted<MapId>(target, damaged, backup, troubled.has('map') || troubled.has('map_record'), {
    table: 'map',
    others: ['map_record', 'map_id'],
    wholeness: mapWholeness,
  });
  for (const id of maps.gone) dropMap(target, id);
  const withoutHistory = maps.there.filter((id) => !historyHolds(target, id));
  for (const id of withoutHistory) dropHistory(target, id);

  const jobs = sorted<JobId>(target, damaged, backup, troubled.has('job') || troubled.has('map_snapshot'), {
    table: 'job',
    others: ['job_entry', 'job_id'],
    wholeness: jobWholeness,
  });
  for (const id of jobs.gone) dropJob(target, id);
  for (const id of jobs.incomplete) closeRanks(target, id);
  target.exec(`DELETE FROM map_record WHERE map_id NOT IN (SELECT id FROM map);
    DELETE FROM map_transaction WHERE map_id NOT IN (SELECT id FROM map);
    DELETE FROM job_entry WHERE job_id NOT IN (SELECT id FROM job);
    DELETE FROM job_to_index WHERE job_id NOT IN (SELECT id FROM job)`);
  target.pragma('foreign_keys = ON');

  const called = (ids: readonly string[]): string[] => ids.map((id) => names.get(id) ?? id).sort();
  return {
    nothingRead: damaged === null,
    keptMaps: maps.there.length,
    keptJobs: jobs.there.length,
    keptPictures: target.prepare('SELECT count(*) FROM picture_bytes').pluck().get() as number,
    fromBackup: { maps: called(fromBackup.maps), jobs: called(fromBackup.jobs) },
    incomplete: { maps: called(maps.incomplete), jobs: called(jobs.incomplete) },
    withoutHistory: called(withoutHistory),
    lost: {
      maps: called(maps.gone.filter((id) => names.has(id))),
      jobs: called(jobs.gone.filter((id) => names.has(id))),
      pictures: missingPictures(damaged, target),
    },
  };
}

const idsOf = <I extends string>(connection: Connection | null, table: string, column: string): I[] => {
  try {
    return (connection?.prepare(`SELECT DISTINCT ${column} FROM ${table}`).pluck().all() ?? []) as I[];
  } catch {
    return [];
  }
};

/** The name of every map and job any of the stores can still tell. */
function namesIn(connections: readonly (Connection | null)[]): Map<string, string> {
  const names = new Map<string, string>();
  for (const connection of connections) {
    for (const sql of [
      'SELECT map_id AS id, name FROM map_snapshot',
      'SELECT id, name FROM map',
      `SELECT id, coalesce(nullif(head ->> '$.vehicle.plate', ''), head ->> '$.complaint') AS name FROM job`,
    ]) {
      try {
        const rows = connection?.prepare(sql).iterate() as Iterable<{ id: string; name: string }> | undefined;
        for (const { id, name } of rows ?? []) if (name) names.set(id, name);
      } catch {
        // What this one cannot tell, another may.
      }
    }
  }
  return names;
}

/** A map whose line in the list was lost is known by its records. */
function rebuildMapRows(target: Connection): void {
  target.exec(`INSERT OR IGNORE INTO map (id, name, body_style, drive_side, first_revision, revision, changed_at)
    SELECT map_id, body ->> '$.name', body ->> '$.bodyStyle', body ->> '$.driveSide', 0,
      coalesce((SELECT max(revision) FROM map_transaction AS t WHERE t.map_id = r.map_id),
        (SELECT max(revision) FROM map_snapshot AS s WHERE s.map_id = r.map_id), 0),
      coalesce((SELECT max(changed_at) FROM map_transaction AS t WHERE t.map_id = r.map_id),
        '1970-01-01T00:00:00.000Z')
    FROM map_record AS r WHERE kind = 'details'`);
}

/** Takes what is not whole from a backup where it is; gives what was taken. */
function takeFrom(
  backup: Connection,
  target: Connection,
  troubled: ReadonlySet<string>,
  everything: boolean,
): { readonly maps: MapId[]; readonly jobs: JobId[] } {
  const mapsTroubled = everything || troubled.has('map') || troubled.has('map_record');
  const jobsTroubled = everything || troubled.has('job') || troubled.has('map_snapshot');
  // Where nothing of a kind was unreadable, what is missing was removed by the user and stays away.
  const here = (table: string, id: string): boolean =>
    target.prepare(`SELECT 1 FROM ${table} WHERE id = ?`).get(id) !== undefined;
  const maps = idsOf<MapId>(backup, 'map', 'id').filter((id) =>
    here('map', id) ? mapWholeness(target, id) !== 'whole' : mapsTroubled,
  );
  const all = (): boolean => true;
  saveRows(backup, target, {
    map_snapshot: all,
    place_state: all,
    sample_offered: all,
    ...(everything || troubled.has('picture_bytes') ? { picture_bytes: all } : {}),
  });
  const jobs = idsOf<JobId>(backup, 'job', 'id').filter((id) =>
    here('job', id) ? jobWholeness(target, id) !== 'whole' : jobsTroubled,
  );
  for (const id of maps) dropMap(target, id);
  for (const id of jobs) dropJob(target, id);
  const wanted = new Set<unknown>([...maps, ...jobs]);
  saveRows(backup, target, {
    map: ({ id }) => wanted.has(id),
    map_record: (row) => wanted.has(row.map_id),
    map_transaction: (row) => wanted.has(row.map_id),
    job: ({ id }) => wanted.has(id),
    job_entry: (row) => wanted.has(row.job_id),
  });
  return { maps, jobs };
}

/** A job whose pinned map was lost gets it again from the map's own list of changes. */
function pinAgain(target: Connection, jobId: JobId): void {
  const job = readJob(target, jobId);
  if (!job) return;
  try {
    const map = readMapAt(target, job.mapId, job.mapRevision);
    if (map.ok) pinMap(target, map.value);
  } catch {
    // The changes do not lead back that far; the job is then told as lost.
  }
}

interface Kind<I> {
  readonly table: string;
  /** A table and its column that speak of the same things. */
  readonly others: readonly [string, string];
  wholeness(connection: Connection, id: I): 'whole' | 'incomplete' | 'gone';
}

function sorted<I extends string>(
  target: Connection,
  damaged: Connection | null,
  backup: Connection | null,
  troubled: boolean,
  { table, others: [other, column], wholeness }: Kind<I>,
): { readonly there: I[]; readonly incomplete: I[]; readonly gone: I[] } {
  const known = new Set<I>([
    ...idsOf<I>(target, table, 'id'),
    ...idsOf<I>(target, other, column),
    ...(troubled ? [...idsOf<I>(damaged, table, 'id'), ...idsOf<I>(backup, table, 'id')] : []),
  ]);
  const found = [...known].sort().map((id) => [id, wholeness(target, id)] as const);
  const of = (...states: string[]): I[] => found.flatMap(([id, state]) => (states.includes(state) ? id : []));
  return { there: of('whole', 'incomplete'), incomplete: of('incomplete'), gone: of('gone') };
}

function dropMap(target: Connection, id: MapId): void {
  for (const table of ['map_record', 'map_transaction']) {
    target.prepare(`DELETE FROM ${table} WHERE map_id = ?`).run(id);
  }
  target.prepare('DELETE FROM map WHERE id = ?').run(id);
}

function dropHistory(target: Connection, id: MapId): void {
  target.prepare('DELETE FROM map_transaction WHERE map_id = ?').run(id);
  target.prepare('UPDATE map SET first_revision = revision WHERE id = ?').run(id);
}

function dropJob(target: Connection, id: JobId): void {
  target.prepare('DELETE FROM job_entry WHERE job_id = ?').run(id);
  target.prepare('DELETE FROM job WHERE id = ?').run(id);
}

/** Numbers the entries that are left anew and works out what rests on them. */
function closeRanks(target: Connection, id: JobId): void {
  const seqs = target.prepare('SELECT seq FROM job_entry WHERE job_id = ? ORDER BY seq').pluck().all(id);
  const move = target.prepare('UPDATE job_entry SET seq = ? WHERE job_id = ? AND seq = ?');
  for (const [i, seq] of seqs.entries()) move.run(i, id, seq);
  const job = readJob(target, id);
  if (!job) return;
  const { stage, minutesSpent, findCount } = jobProgress(job);
  target
    .prepare('UPDATE job SET entry_count = ?, stage = ?, minutes_spent = ?, find_count = ? WHERE id = ?')
    .run(seqs.length, stage, minutesSpent, findCount, id);
}

/** Pictures whose names can be read in the damaged store but not their bytes. */
function missingPictures(damaged: Connection | null, target: Connection): number {
  const kept = new Set(idsOf<string>(target, 'picture_bytes', 'sha256'));
  return idsOf<string>(damaged, 'picture_bytes', 'sha256').filter((each) => !kept.has(each)).length;
}
