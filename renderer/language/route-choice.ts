import { type LengthSystem, saySmallLength } from './say-length.ts';

const size = (mm: number, lengths: LengthSystem): string => {
  const { value, unit } = saySmallLength(mm, lengths);
  return `${value} ${unit}`;
};

/** Words about the way a circuit takes, and how thick the loom is where it runs. */
export const routeWords = {
  steps: (count: number): string => `The way it takes (${count === 1 ? '1 run' : `${count} runs`})`,
  untraced: 'Choose what sits at both ends, or take up Circuit and press both on the board.',
  stepHint: 'Press a run to leave it out or to end the circuit there.',
  stepOf: (number: number, name: string): string => `${number}. ${name}`,
  leads: (from: string, to: string): string => `${from} to ${to}`,
  avoid: 'Not through this run',
  endHere: (node: string): string => `End it at ${node}`,
  beginHere: (node: string): string => `Begin it at ${node}`,
  goTo: 'Show the run',
  through: 'Send it through',
  chooseRun: 'Choose a run',
  noWayThrough: (run: string): string =>
    `No way leads through ${run} without passing some run twice or going through a part that ends the wire.`,
  noWayRound: (run: string): string => `${run} is the only way between the two ends.`,
  turn: 'Swap its ends',
  free: 'Shortest way again',
  others: 'Other ways',
  othersNone: 'There is only this one way: the loom has no ring between the two ends.',
  way: (number: number): string => `Way ${number}`,
  now: 'taken now',
  longer: (byMm: number, lengths: LengthSystem): string => `${size(byMm, lengths)} longer`,
  shorter: (byMm: number, lengths: LengthSystem): string => `${size(byMm, lengths)} shorter`,
  equal: 'as long as now',
  passes: (names: readonly string[]): string => `through ${names.join(', ')}`,
  insteadOf: (names: readonly string[]): string => `instead of ${names.join(', ')}`,
  bundle: {
    workedOut: (mm: string, circuits: number, assumed: number): string => {
      const traced = circuits === 1 ? '1 circuit' : `${circuits} circuits`;
      const rest = assumed === 0 ? '' : assumed === 1 ? ' and 1 more wire' : ` and ${assumed} more wires`;
      return `Worked out from ${traced} traced through it${rest}${assumed === 0 ? '' : ' taken as usual'}: ${mm} mm.`;
    },
    given: 'The figure given by hand counts.',
    use: (mm: string): string => `Use the worked-out ${mm} mm`,
    label: 'Bundle diameter',
  },
} as const;
