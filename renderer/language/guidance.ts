import { type GuidanceCode, type GuidanceFlag, guidanceSources } from '#core/chafe/aircraft-guidance.ts';
import { type LengthSystem, saySmallLength } from './say-length.ts';

/** Words for where a run lies outside published aircraft guidance. */
export const guidanceWords = {
  title: (count: number): string =>
    count === 1
      ? 'Aircraft practice would question 1 thing'
      : `Aircraft practice would question ${count} things`,
  hint: 'Published guidance for aircraft wiring. No rule for cars, but what it warns of wears looms in cars too.',
  at: (place: string, from: string): string => `${place} from ${from}`,
  source: (code: GuidanceCode): string => {
    const { document, place, fromMemory } = guidanceSources[code];
    const where = place === null ? '' : document.startsWith('AC') ? ` paragraph ${place}` : ` item ${place}`;
    return `${document}${where}${fromMemory ? ', from memory' : ''}`;
  },
} as const;

/** One flag as a sentence, without its source. */
export function guidanceSentence(
  { code, thing, mm, advisedMm }: GuidanceFlag,
  nameOf: (id: string) => string,
  lengths: LengthSystem,
): string {
  const size = (value: number | null): string => {
    const { value: figure, unit } = saySmallLength(value ?? 0, lengths);
    return `${figure} ${unit}`;
  };
  const [is, advised] = [size(mm), size(advisedMm)];
  switch (code) {
    case 'long-span':
      return `${is} from fixing to fixing. Advised: ${advised} at most.`;
    case 'deep-bow':
      return `Hangs ${is} between fixings. Advised: ${advised} at most.`;
    case 'tight-bend':
      return `Bent to a radius of ${is}. Advised: ${advised} at least.`;
    case 'narrow-hole':
      return `${nameOf(thing)}: a raw edge ${is} from the loom. Advised: ${advised} at least, or a grommet.`;
    case 'cover-only':
      return `${nameOf(thing)}: the loom lies against it with only its cover between. Advised: a free gap; tape or tube does not stand for one.`;
    case 'tied-only':
      return 'Held by tape or ties alone. Advised: fixings that carry it.';
    case 'untied-span':
      return `Bare wires over ${is} between fixings. Advised: tied together where it is more than ${advised}.`;
    case 'underfoot':
      return 'Lies where people step. Advised: out of their way.';
    case 'no-drip-loop':
      return `${nameOf(thing)}: wet, and the loom does not dip before it, so water runs down into it. Advised: a dip to drip from.`;
    case 'near-moving':
      return `${nameOf(thing)}: moves ${is} from the loom. Advised: ${advised} at least.`;
    case 'splice-near-end':
      return `${nameOf(thing)}: a splice ${is} from where the wire ends. Advised: ${advised} at least.`;
    case 'many-splices':
      return `${nameOf(thing)}: spliced more than once between two plugs. Advised: one splice at most.`;
  }
}
