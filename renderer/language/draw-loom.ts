/** Words for corners of outlines, and for a run beside another. */
export const loomWords = {
  besideOffset: 'To its right, seen along it; less than zero: to its left',
  besideLay: 'Lay the run',
  besideWrong: 'Enter a distance other than zero.',
  corner: 'Picked corner',
  curved: 'Round it',
  straight: 'Make it straight',
  takeOut: 'Take it out',
  insertAfter: 'Corner after it',
  cornerName: (number: number): string => `Corner ${number}`,
  corners: 'Corners',
  paintPanel: 'Panel that hides the loom',
  paintNone: 'No panel yet: draw one, or add the usual ones under Details.',
} as const;
