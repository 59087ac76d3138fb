import type { Alignment } from '#core/map/commands/align-things.ts';
import type { IdKind } from '#core/quantity/id.ts';

const counted =
  (one: string, many: string) =>
  (count: number): string =>
    `${count} ${count === 1 ? one : many}`;

/** Kinds of things a map holds, the loom first. */
export type ThingKind = Exclude<IdKind, 'map' | 'job' | 'entry' | 'meter'>;

/** How many things of a kind. */
export const countWords: Readonly<Record<ThingKind, (count: number) => string>> = {
  segment: counted('run', 'runs'),
  node: counted('plug or part', 'plugs and parts'),
  clip: counted('fixing', 'fixings'),
  panel: counted('panel', 'panels'),
  'rub-spot': counted('rub spot', 'rub spots'),
  circuit: counted('circuit', 'circuits'),
  outline: counted('outline', 'outlines'),
  underlay: counted('picture', 'pictures'),
};

/** Words for several picked things: their common fields, their copies, their places. */
export const severalWords = {
  differs: 'differs',
  lead: 'What is changed here is changed on all of them.',
  notesDiffer: 'Their notes differ. Pick one thing to change its note.',
  hidden: 'Hidden',
  allTags: 'Proposals of panels',
  copy: 'Copy',
  duplicate: 'Duplicate',
  paste: 'Paste',
  mirrorCopy: 'Mirrored copy',
  turn: 'Mirror them',
  turnOne: 'Mirror it',
  copied: (count: number): string =>
    count === 1
      ? '1 thing copied. Ctrl + V lays it down.'
      : `${count} things copied. Ctrl + V lays them down.`,
  copyAway:
    'Copied for this window. The clipboard of this machine could not be written, so another window will not see it.',
  place: 'Line up and spread',
  placeFew: 'At least two things that lie apart can be lined up, three spread.',
  align: {
    front: 'Front edges',
    rear: 'Rear edges',
    left: 'Left edges',
    right: 'Right edges',
    'centre-line': 'On the centre line',
    'spread-along': 'Evenly, front to rear',
    'spread-across': 'Evenly, side to side',
  } satisfies Record<Alignment, string>,
} as const;
