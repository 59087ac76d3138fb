import { readFileSync } from 'node:fs';
import type { Job } from '#core/job/job-document.ts';
import { jobFaults } from '#core/job/job-faults.ts';
import { readJob } from '#core/job/read-job.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { readMap } from '#core/map/read-map.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { fail, ok, type Result } from '#core/quantity/result.ts';

/** A problem and the file it was met in. */
export interface FileProblem {
  readonly file: string;
  readonly problem: Problem;
  /** The map, where it could be read, so that things can be called by their names. */
  readonly map: MapDocument | null;
}

/** A map and a job that fit together. */
export interface ReadDocuments {
  readonly map: MapDocument;
  readonly job: Job;
}

/**
 * Reads both documents and checks that they hang together. Stricter than the window, where a
 * half-drawn map is worked on: here any broken reference is refused.
 */
export function readDocuments(mapFile: string, jobFile: string): Result<ReadDocuments, FileProblem> {
  const mapText = textOf(mapFile);
  if (!mapText.ok) return fail({ file: mapFile, problem: mapText.problem, map: null });
  const read = readMap(mapText.value);
  if (!read.ok) return fail({ file: mapFile, problem: read.problem, map: null });
  const { map, problems } = read.value;
  if (problems[0]) return fail({ file: mapFile, problem: problems[0], map });
  const jobText = textOf(jobFile);
  if (!jobText.ok) return fail({ file: jobFile, problem: jobText.problem, map });
  const job = readJob(jobText.value);
  if (!job.ok) return fail({ file: jobFile, problem: job.problem, map });
  const [fault] = jobFaults(map, job.value);
  if (fault) return fail({ file: jobFile, problem: fault, map });
  return ok({ map, job: job.value });
}

/** What the system says when a file cannot be read, in words. */
const fileTroubles: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder',
  EACCES: 'this user may not read it',
};

function textOf(file: string): Result<string> {
  try {
    return ok(readFileSync(file, 'utf8'));
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    return fail({ code: 'file-unreadable', file, detail: fileTroubles[code] ?? String(error) });
  }
}
