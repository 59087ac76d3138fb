import type { RequestOutput } from '#electron/contract/contract.ts';

/** One state of a map that can be opened again. */
export type MapStateLine = RequestOutput<'map.revisions'>['revisions'][number];

/** The newest edits one by one; of older ones only the last of each day. */
const newestOnes = 25;

/**
 * Of all states, newest first, those worth choosing from: the newest, those that jobs were opened on, the last of
 * each day, and the first. A map drawn in an afternoon has hundreds. `dayOf` gives the day of a time. O(states).
 */
export function notableStates(
  states: readonly MapStateLine[],
  dayOf: (at: string) => string = (at) => new Date(at).toDateString(),
): readonly MapStateLine[] {
  const days = new Set<string>();
  return states.filter((state, index) => {
    const day = state.at === null ? null : dayOf(state.at);
    const lastOfDay = day !== null && !days.has(day);
    if (day !== null) days.add(day);
    return index < newestOnes || state.jobs > 0 || lastOfDay || index === states.length - 1;
  });
}

/** What a comparison begins from: the state the newest job was opened on, else the first. */
export function firstFrom(states: readonly MapStateLine[]): MapStateLine | null {
  const [, ...earlier] = states;
  return earlier.find((state) => state.jobs > 0) ?? earlier.at(-1) ?? null;
}
