/** Words for finding a thing on the map by its name. */
export const findWords = {
  title: 'Find on the map',
  field: 'Name, kind or route',
  hint: 'Arrows go through what is found, Enter takes it, Escape closes.',
  found: (count: number): string => (count === 1 ? '1 found' : `${count} found`),
  none: (text: string): string => `Nothing on this map has “${text}” in its name, kind or route.`,
  more: (count: number): string => `and ${count} more: type a few letters more`,
  hidden: 'hidden on the board',
  on: (run: string): string => `on ${run}`,
  kinds: {
    segment: 'Run',
    node: 'Plug or part',
    panel: 'Panel',
    'rub-spot': 'Rub spot',
    circuit: 'Circuit',
    outline: 'Outline',
    underlay: 'Picture',
    clip: 'Fixing',
  },
} as const;
