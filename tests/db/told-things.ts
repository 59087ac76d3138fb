import type { JobId, MapId } from '#core/quantity/id.ts';
import type { Connection } from '#db/connection.ts';
import { readJob } from '#db/job-store.ts';
import { readMap } from '#db/map-store.ts';
import { readPicture } from '#db/picture-store.ts';

/** Lines that are no thing kept. */
const marks = new Set(['ready', 'opened', 'backup', 'going-back', 'went-back', 'anew-begun', 'anew-done']);
const firstWord = (line: string): string => line.split(' ')[0] ?? '';

/** What a program told as kept over many runs, and what that comes to where it went back to a backup. */
export class TellTale {
  private told: readonly string[] = [];
  /** What must be there instead, when a kill fell between two states of everything. */
  private or: readonly string[] | null = null;
  private readonly atBackup = new Map<string, readonly string[]>();

  /** Hears one run out; gives what it was killed in the middle of. */
  hear(lines: readonly string[]): 'going-back' | 'anew' | null {
    let unfinished: 'going-back' | 'anew' | null = null;
    for (const line of lines) {
      const [word = '', ...rest] = line.split(' ');
      const name = rest.join(' ');
      if (word === 'backup') this.atBackup.set(name, this.told);
      else if (word === 'going-back') {
        this.or = this.atBackup.get(name) ?? null;
        unfinished = 'going-back';
      } else if (word === 'went-back') {
        this.told = this.atBackup.get(name) ?? [];
        this.or = null;
        unfinished = null;
      } else if (word === 'anew-begun') unfinished = 'anew';
      else if (word === 'anew-done') unfinished = null;
      else if (!marks.has(word)) this.told = [...this.told, line];
    }
    return unfinished;
  }

  /** How many things a run told. */
  toldSince(lines: readonly string[]): number {
    return lines.filter((line) => !marks.has(firstWord(line))).length;
  }

  /** Looks for all of it, or for all of what a change of store leads to; gives the first that is missing. */
  settle(missing: (told: readonly string[]) => string | null): string | null {
    const first = missing(this.told);
    if (first === null || this.or === null || missing(this.or) !== null) {
      this.or = null;
      return first;
    }
    this.told = this.or;
    this.or = null;
    return null;
  }
}

/** The first of the things told that is not in a store; null when all are. */
export function missingOf(connection: Connection, told: readonly string[]): string | null {
  return told.find((line) => !isThere(connection, line.split(' '))) ?? null;
}

function isThere(connection: Connection, [kind, id, ...figures]: readonly string[]): boolean {
  if (kind === 'photo') return readPicture(connection, id as string).ok;
  if (kind === 'job') return (readJob(connection, id as JobId)?.entries.length ?? -1) >= Number(figures[0]);
  const map = readMap(connection, id as MapId);
  if (kind === 'map') return map?.nodes.length === Number(figures[0]);
  const far = map?.nodes.find((node) => node.id === 'node:far');
  return (map?.revision ?? -1) >= Number(figures[0]) && (far?.at.yMm ?? -1) >= Number(figures[1]);
}
