import type { MapId, NodeId } from '../quantity/id.ts';
import { minutesBetween } from '../quantity/minutes-between.ts';
import type { CloseOutcome, DamageCause, DamageType } from './closing-words.ts';
import { jobClock } from './job-clock.ts';
import type { Job, JobEntry } from './job-document.ts';
import { closingOf } from './job-stage.ts';
import { provedFinds } from './proved-find.ts';
import type { Stretch } from './reading.ts';
import { standingEntries } from './standing-entries.ts';

/** What a find turned out to be; one taken for the cause whose proof is missing or refused is neither. */
export type FoundPlaceKind = 'proved-cause' | 'not-proved' | 'other-damage';

/** One place where something was found. */
export interface FoundPlaceFact {
  readonly stretches: readonly Stretch[];
  /** The plug or other part it was in. Absent: in the wire. */
  readonly partNodeId?: NodeId;
  readonly is: FoundPlaceKind;
  /** Null where only the look was entered. */
  readonly damage: DamageType | null;
  readonly cause: DamageCause | null;
}

/** What a past job is worth to the next one, without anything about its owner. */
export interface JobFacts {
  readonly mapId: MapId;
  readonly outcome: CloseOutcome | null;
  readonly found: readonly FoundPlaceFact[];
  /** Stretches seen sound. */
  readonly soundStretches: readonly Stretch[];
  /** Minutes from taking the job in until the cause was proved; null while it is not. */
  readonly minutesToFind: number | null;
  /** Openings until the cause was proved, itself counted; null while it is not. */
  readonly openings: number | null;
  /** Another workshop's job. Absent: one's own. */
  readonly handedOn?: true;
}

/**
 * The facts of one job. Minutes to find are those on the find and reach clocks when they ran, else the time
 * from entry to entry, pauses of more than an hour left out. Looks without a panel coming off between them
 * are one opening. Only a find with its whole proof is a cause.
 * @example
 * jobFacts(sample.job).minutesToFind // => null
 */
export function jobFacts(job: Job): JobFacts {
  const entries = standingEntries(job);
  const findings = entries.filter((entry) => entry.type === 'finding');
  const looks = entries.filter((entry) => entry.type === 'inspection');
  const looksAtDamage = looks.filter(({ result }) => result !== 'seen-sound');
  // A finding says more than the look it began with, so a look it covers is not counted again.
  const bareLooks = looksAtDamage.filter(
    (look) => !findings.some((finding) => overlap(finding.stretches, look.stretches)),
  );
  const proved = provedFinds(entries);
  // It was found when it was seen; the proof may come an hour later.
  const foundAt = entries.findIndex(
    (entry) =>
      (entry.type === 'inspection' &&
        entry.result === 'found' &&
        proved.some(({ stretches }) => overlap(stretches, entry.stretches))) ||
      (entry.type === 'finding' && proved.includes(entry)),
  );
  const untilFound = foundAt < 0 ? null : entries.slice(0, foundAt + 1);
  return {
    mapId: job.mapId,
    outcome: closingOf(entries)?.outcome ?? null,
    found: [
      ...findings
        .filter(({ result }) => result !== 'sound')
        .map((finding): FoundPlaceFact => {
          const { stretches, partNodeId, result, damage, cause } = finding;
          const isProved = proved.includes(finding);
          return {
            stretches,
            ...(partNodeId ? { partNodeId } : {}),
            is: isProved ? 'proved-cause' : result === 'proved-cause' ? 'not-proved' : 'other-damage',
            damage,
            cause,
          };
        }),
      ...bareLooks.map(
        ({ stretches, partNodeId, result }): FoundPlaceFact => ({
          stretches,
          ...(partNodeId ? { partNodeId } : {}),
          is: result === 'found' ? 'not-proved' : 'other-damage',
          damage: null,
          cause: null,
        }),
      ),
    ],
    soundStretches: looks.flatMap(({ result, stretches }) => (result === 'seen-sound' ? stretches : [])),
    minutesToFind: untilFound && minutesUntil(job, untilFound),
    openings: untilFound && openingsIn(untilFound),
    ...(job.handedOn ? { handedOn: true } : {}),
  };
}

/** A longer silence than this between two entries is a break, not work. Common practice, no source. */
const longestPauseMinutes = 60;

/**
 * Minutes worked on a job by its entries alone: from its opening from entry to entry, pauses of more than an
 * hour left out.
 * @example
 * minutesWorked('2026-01-05T09:00:00Z', [{ at: '2026-01-05T09:20:00Z' }, { at: '2026-01-05T14:00:00Z' }]) // => 20
 */
export function minutesWorked(openedAt: string, entries: readonly Pick<JobEntry, 'at'>[]): number {
  const times = [openedAt, ...entries.map(({ at }) => at)].sort((a, b) => minutesBetween(b, a));
  let minutes = 0;
  for (let i = 1; i < times.length; i++) {
    const gap = minutesBetween(times[i - 1] as string, times[i] as string);
    if (gap <= longestPauseMinutes) minutes += gap;
  }
  return Math.round(minutes);
}

function minutesUntil(job: Job, entries: readonly JobEntry[]): number {
  const { minutes } = jobClock(entries, entries.at(-1)?.at ?? job.openedAt);
  const clocked = minutes.find + minutes.reach;
  // A clock started only at the end says nothing of the search before it.
  return clocked >= 1 ? Math.round(clocked) : minutesWorked(job.openedAt, entries);
}

function openingsIn(entries: readonly JobEntry[]): number {
  let openings = 0;
  let looking = false;
  for (const { type } of entries) {
    if (type === 'panel-off') looking = false;
    if (type !== 'inspection') continue;
    if (!looking) openings += 1;
    looking = true;
  }
  return Math.max(1, openings);
}

function overlap(a: readonly Stretch[], b: readonly Stretch[]): boolean {
  return a.some((x) =>
    b.some((y) => x.segmentId === y.segmentId && x.fromMm <= y.toMm && y.fromMm <= x.toMm),
  );
}
