/** What the marks on the board mean. */
export const markWords = {
  run: 'Run of the loom',
  unchecked: 'Run not yet checked on a car',
  clip: 'Fixing',
  clipMissing: 'Fixing known to be missing',
  rubSpotSlight: 'Rub spot, slight',
  rubSpotSevere: 'Rub spot, severe',
  panel: 'Panel, in place',
  panelOff: 'Panel, off',
  likelihood: 'Fault less to more likely; the number is the place in the list',
  clean: 'Seen, sound',
  damaged: 'Seen, damaged, not the cause',
  found: 'Cause found',
  closeKey: 'Close the key',
} as const;
