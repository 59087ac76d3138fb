/** Words for what is shown and locked on the board, and for what takes hold of a point. */
export const layerWords = {
  title: 'Shown and locked on the board',
  shown: 'Shown',
  locked: 'Locked',
  kinds: {
    pictures: 'Pictures',
    outlines: 'Outlines',
    panels: 'Panels',
    loom: 'Loom',
    rubSpots: 'Rub spots',
  },
  someHidden: 'Some kinds are hidden.',
  someLocked: 'Some kinds are locked.',
  showAll: 'Show and unlock all',
} as const;

export const snapWords = {
  label: 'What takes hold',
  snapping: 'Corners, edges',
  grid: 'Grid',
  mirror: 'Mirrored',
  smooth: 'Rounded bends',
} as const;
