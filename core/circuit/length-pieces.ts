import { compareText } from '../quantity/compare-text.ts';
import type { CircuitLine } from './circuit-line.ts';

/** True over drawn length of one piece of loom, one standard deviation: up to 5 percent either way, even (judgement). */
const drawnSpread = 0.05 / Math.sqrt(3);

/** The same where somebody laid a tape along the run (judgement). */
const tapedSpread = 0.01;

/** Loom between two fixings or so is off by itself; what is off beyond averages out (judgement). */
const pieceMm = 1_000;

/** Pieces of a circuit whose true lengths are off from the drawn ones each by itself. */
export interface LengthPieces {
  /** Circuit stations of the borders, one more than there are pieces. */
  readonly edgesMm: Float64Array;
  /** How far each may be off, one standard deviation over its length. */
  readonly spread: Float64Array;
  /** The circuit runs against the order that does not depend on which end it was traced from. */
  readonly isTurned: boolean;
}

/**
 * Cuts a circuit into even pieces of about a metre, however many runs it is drawn as: a run cut in two on
 * the map knows no more and no less of the wire.
 * @example
 * lengthPieces(sample.line).edgesMm // => Float64Array.of(0, 750, 1500)
 */
export function lengthPieces(line: CircuitLine): LengthPieces {
  const count = Math.max(1, Math.round(line.lengthMm / pieceMm));
  const edgesMm = Float64Array.from({ length: count + 1 }, (_, i) => (line.lengthMm * i) / count);
  const spread = new Float64Array(count);
  for (const { segment, fromMm, toMm } of line.spans) {
    const each = segment.measuredLengthMm === null ? drawnSpread : tapedSpread;
    const from = Math.floor((fromMm / line.lengthMm) * count);
    for (let i = Math.max(0, from - 1); i < count && (edgesMm[i] as number) < toMm; i++) {
      const heldMm = Math.min(toMm, edgesMm[i + 1] as number) - Math.max(fromMm, edgesMm[i] as number);
      if (heldMm > 0) spread[i] = (spread[i] as number) + (each * heldMm * count) / line.lengthMm;
    }
  }
  const [first, last] = [line.nodes[0]?.nodeId ?? '', line.nodes.at(-1)?.nodeId ?? ''];
  return { edgesMm, spread, isTurned: compareText(first, last) > 0 };
}
