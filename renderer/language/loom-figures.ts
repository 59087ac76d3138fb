import type { Bounded } from '#core/chafe/loom-figures.ts';
import { spanWords } from './hazard.ts';
import { type LengthSystem, mmPerInch, saySmallLength } from './say-length.ts';

const inSize = (mm: number, lengths: LengthSystem): number => (lengths === 'imperial' ? mm / mmPerInch : mm);
const unitOf = (lengths: LengthSystem): string => (lengths === 'imperial' ? 'in' : 'mm');

const size = (mm: number, lengths: LengthSystem): string => {
  const { value, unit } = saySmallLength(mm, lengths);
  return `${value} ${unit}`;
};

/** A figure with the bounds of what is not known: “18 Hz (3.4 to 96)”. */
function bounded(mean: number, bounds: readonly [number, number], unit: string): string {
  const [low, high] = [...bounds].sort((a, b) => a - b) as [number, number];
  return `${shortFigure(mean)} ${unit} (${shortFigure(low)} to ${shortFigure(high)})`;
}

/** Two digits that count, as many as such a figure is worth, and never less than a hundredth. */
const shortFigure = (value: number): string => String(Number(Number(value.toPrecision(2)).toFixed(2)));

/** Words for the loom of a run and one of its spans, each figure with its bounds. */
export const loomWords = {
  label: 'The loom here',
  thick: (mm: number, bounds: readonly [number, number] | null, lengths: LengthSystem): string => {
    const figure = bounds
      ? bounded(
          inSize(mm, lengths),
          [inSize(bounds[0], lengths), inSize(bounds[1], lengths)],
          unitOf(lengths),
        )
      : size(mm, lengths);
    return `Bundle ${figure}${bounds ? '' : ', as drawn'}`;
  },
  heavy: (kgPerMetre: number, assumed: number): string =>
    `${shortFigure(kgPerMetre * 1_000)} g for each metre${assumed === 0 ? '' : `, ${assumed} of its wires assumed`}`,
  span: (held: Parameters<typeof spanWords>[0], lengths: LengthSystem): string => {
    const said = spanWords(held, lengths);
    return `${said.charAt(0).toUpperCase()}${said.slice(1)}`;
  },
  swings: (hz: Bounded): string => `first frequency ${bounded(hz.mean, [hz.slipping, hz.stuck], 'Hz')}`,
  sags: (sagMm: Bounded, lengths: LengthSystem): string =>
    `sag ${bounded(inSize(sagMm.mean, lengths), [inSize(sagMm.slipping, lengths), inSize(sagMm.stuck, lengths)], unitOf(lengths))}`,
  hint: 'In brackets: from wires that stick together to wires that slip on each other; a bundle laid tight or loose.',
} as const;
