import type { Problem } from '#core/quantity/problem.ts';

/** Why the program cannot start on a data folder, for the terminal and the desktop's start-up box. */
export function startTrouble(problem: Problem, folder: string): string {
  switch (problem.code) {
    case 'store-busy':
      return `Undertrim is already open on ${folder}. Use that window, or start with --data and another folder.`;
    case 'store-newer':
      return `The maps and jobs in ${folder} were written by a newer Undertrim (store version ${problem.found}; this one knows ${problem.known}). Nothing was changed. Start the newer program, or use --data and another folder.`;
    case 'store-damaged':
      return `The store in ${folder} is damaged (${problem.detail}). Nothing was changed. Put a copy of undertrim.db from a backup in its place, or use --data and another folder.`;
    case 'store-read-only':
      return `Undertrim may not write in ${folder}. Allow writing there, or use --data and another folder.`;
    case 'store-full':
      return `There is no room left on the disk that holds ${folder}. Free some space and start again.`;
    default:
      return `Undertrim could not start on ${folder} (${problem.code}).`;
  }
}
