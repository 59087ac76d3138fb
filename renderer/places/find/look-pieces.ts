import type { DigStep } from '#core/job/ranking.ts';
import { joinRanges } from '#core/locate/station-ranges.ts';
import type { Piece } from '../../straight/straight-picture.ts';

/** Half of what is marked as looked at round a plug, in mm of wire. */
export const plugHalfMm = 15;

/** The pieces one opening puts in view, joined where they touch; a plug alone counts as a short piece. */
export function lookPieces(step: DigStep): readonly Piece[] {
  const { parts, fromMm, toMm } = step.look;
  const pieces = joinRanges(parts.length > 0 ? parts : [{ fromMm, toMm }]);
  return pieces.map((piece) =>
    piece.toMm - piece.fromMm < 1
      ? { fromMm: Math.max(0, piece.fromMm - plugHalfMm), toMm: piece.toMm + plugHalfMm }
      : piece,
  );
}

/** Whether a piece is no more than what is marked round a plug. */
export const isPlugPiece = ({ fromMm, toMm }: Piece): boolean => toMm - fromMm <= 2 * plugHalfMm + 0.5;

/** Whether two pieces share more than a point. */
export function overlap(a: Piece, b: Piece): boolean {
  return Math.min(a.toMm, b.toMm) - Math.max(a.fromMm, b.fromMm) > 0.5;
}
