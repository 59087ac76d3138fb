import type { Problem } from '#core/quantity/problem.ts';
import type { Loss } from '#db/salvage/loss-store.ts';

/** What a start says when a damaged store was set aside, before the page says which things it cost. */
export function lossAtStart(loss: Loss): string {
  const { lost, asideFolder } = loss;
  if (loss.nothingRead) {
    const from = loss.backupAt
      ? `what is here is from the backup of ${loss.backupAt}`
      : 'there was no backup';
    return `The store was damaged and nothing in it could be read; ${from}. It is set aside in ${asideFolder}. The first page says more.`;
  }
  return `The store was damaged. It is set aside in ${asideFolder}, and what could be read is saved: ${loss.keptMaps} maps and ${loss.keptJobs} jobs are here; ${lost.maps.length} maps, ${lost.jobs.length} jobs and ${lost.pictures} pictures are lost. The first page says which.`;
}

/** Why the program cannot start on a data folder, for the terminal and the desktop's start-up box. */
export function startTrouble(problem: Problem, folder: string): string {
  switch (problem.code) {
    case 'store-busy':
      return `Undertrim is already open on ${folder}. Use that window, or start with --data and another folder.`;
    case 'store-newer':
      return `The maps and jobs in ${folder} were written by a newer Undertrim (store version ${problem.found}; this one knows ${problem.known}). Nothing was changed. Start the newer program, or use --data and another folder.`;
    case 'store-damaged':
      return `The store in ${folder} could not be read (${problem.detail}). Nothing was changed. Check the disk; then start again, or put a copy from the folder “backups” in place of undertrim.db, or use --data and another folder.`;
    case 'store-read-only':
      return `Undertrim may not write in ${folder}. Allow writing there, or use --data and another folder.`;
    case 'store-full':
      return `There is no room left on the disk that holds ${folder}. Free some space and start again.`;
    default:
      return `Undertrim could not start on ${folder} (${problem.code}).`;
  }
}
