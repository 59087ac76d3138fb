import type { CircuitLine } from '../circuit/circuit-line.ts';
import type { JobEntry } from './job-document.ts';
import { panelsOverPieces } from './path-stretches.ts';
import type { DigStep } from './ranking.ts';
import { panelsOff } from './standing-entries.ts';

/** Why nothing must come off for a look. */
export type OpenBecause =
  /** No panel is marked over it on the map. */
  | 'nothing-over-it'
  /** What hides it is off the car now. */
  | 'off-now'
  /** An opening before it in the order takes off what hides it. */
  | 'off-by-then';

/**
 * Why an opening that takes nothing off can look where it looks: by what the map has over its places and
 * what is off the car.
 * @example
 * openBecause(sample.line, { look: { segmentIds: [], parts: [], fromMm: 1100, toMm: 1400 } }, []) // => 'nothing-over-it'
 */
export function openBecause(
  line: CircuitLine,
  { look }: { readonly look: Pick<DigStep['look'], 'segmentIds' | 'parts' | 'fromMm' | 'toMm'> },
  standing: readonly JobEntry[],
): OpenBecause {
  const off = panelsOff(standing);
  const places = look.parts.length > 0 ? look.parts : [look];
  const over = panelsOverPieces(line, places);
  if (over.length === 0) return 'nothing-over-it';
  return over.every((id) => off.has(id)) ? 'off-now' : 'off-by-then';
}
