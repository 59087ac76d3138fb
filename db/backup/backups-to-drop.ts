import type { Backup } from './list-backups.ts';

const dayMs = 86_400_000;
const newestKept = 4;
const daysKept = 7;
const weeksKept = 5;

/**
 * The backups that may go: all but the newest four, the newest of each of the last seven days and of each of
 * the last five weeks. So at most sixteen stay, and one from about a month ago is among them.
 */
export function backupsToDrop(backups: readonly Backup[], now: string): Backup[] {
  const newestFirst = [...backups].sort((a, b) => b.takenAt.localeCompare(a.takenAt));
  const kept = new Set<Backup>(newestFirst.slice(0, newestKept));
  for (const [lengthMs, most] of [
    [dayMs, daysKept],
    [7 * dayMs, weeksKept],
  ] as const) {
    const seen = new Set<number>();
    for (const backup of newestFirst) {
      const age = Math.max(0, Math.floor((Date.parse(now) - Date.parse(backup.takenAt)) / lengthMs));
      if (age >= most || seen.has(age)) continue;
      seen.add(age);
      kept.add(backup);
    }
  }
  return newestFirst.filter((backup) => !kept.has(backup));
}
