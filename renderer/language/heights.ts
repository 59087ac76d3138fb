import { type LengthSystem, saySmallLength } from './say-length.ts';

const size = (mm: number, lengths: LengthSystem): string => {
  const { value, unit } = saySmallLength(mm, lengths);
  return `${value} ${unit}`;
};

/** Words of the side profile of a run. */
export const heightWords = {
  title: (leastMm: number, mostMm: number, lengths: LengthSystem): string =>
    leastMm === mostMm
      ? `Heights (all at ${size(leastMm, lengths)})`
      : `Heights (${size(leastMm, lengths)} to ${size(mostMm, lengths)})`,
  picture: 'The run from the side: along it to the right, height above the floor upwards',
  hint: 'Drag a point up or down, or pick it and press the up and down arrows: 10 mm, with Shift 1 mm.',
  flat: 'Lengths and gaps count only what is seen from above until heights are given.',
  point: (name: string): string => `Height of ${name}`,
  value: (mm: number, lengths: LengthSystem): string => `${size(mm, lengths)} above the floor`,
  floor: 'floor',
  tooLong: (byMm: number, lengths: LengthSystem): string =>
    `The drawing is ${size(byMm, lengths)} longer than the length measured on the car. Lower a point, or measure again.`,
  longer: (byMm: number, lengths: LengthSystem): string => `${size(byMm, lengths)} longer than before`,
  shorter: (byMm: number, lengths: LengthSystem): string => `${size(byMm, lengths)} shorter than before`,
  noSlack: 'Give the measured length to see the slack.',
} as const;
