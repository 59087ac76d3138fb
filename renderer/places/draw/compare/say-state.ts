import { editWords } from '../../../language/draw.ts';
import { compareWords } from '../../../language/draw-compare.ts';
import type { MapStateLine } from './notable-states.ts';

/** A state of a map as a line to choose: when it came about, by what edit, and which jobs rest on it. */
export function sayState(state: MapStateLine): string {
  const when =
    state.at === null
      ? compareWords.first
      : new Date(state.at).toLocaleString('en-GB', {
          day: 'numeric',
          month: 'short',
          hour: '2-digit',
          minute: '2-digit',
          second: '2-digit',
        });
  const turn =
    state.origin === 'undo' ? compareWords.undone : state.origin === 'redo' ? compareWords.redone : '';
  const edit = state.label === null ? '' : `: ${turn}${editWords[state.label] ?? ''}`;
  const jobs = state.jobs > 0 ? ` (${compareWords.jobs(state.jobs)})` : '';
  return `${when}${edit}${jobs}`;
}
