/** Sentences about finds where no rub spot is drawn. */
export const proposalWords = {
  label: 'Rub spots to draw',
  none: 'No rub spot is drawn where this was found. With one, the next car of this model learns from it.',
  noneOnMap: (count: number): string =>
    count === 1
      ? 'In one place where past jobs found the cause, no rub spot is drawn.'
      : `In ${count} places where past jobs found the cause, no rub spot is drawn.`,
  at: (run: string, distance: string, node: string): string => `${run}, ${distance} from ${node}`,
  kind: 'What it rubs on',
  name: 'Name, if it has one',
  add: 'Add it to the map',
  added: 'Added to the vehicle map. This job goes on with the map as it was when the car came in.',
  look: 'Show the place',
} as const;
