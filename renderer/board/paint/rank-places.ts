import { toScreen } from '../camera.ts';
import { runLine } from '../run-line.ts';
import type { Scene } from '../scene.ts';
import { levelWidthPx } from './level-style.ts';
import { directionAt } from './stretch-points.ts';

/** Where a rank numeral stands: the middle of its box and half its width. */
export interface RankPlace {
  readonly rank: number;
  readonly xPx: number;
  readonly yPx: number;
  readonly halfPx: number;
}

export const rankHalfHeightPx = 13;
const rankHalfWidthPx = (rank: number): number => (rank < 10 ? 13 : 18);

/**
 * A place for each numeral beside its stretch, on the upper or left side where that is free, else on the
 * other, else farther out. The better ranks choose first; none leaves the board.
 */
export function rankPlaces(scene: Scene): readonly RankPlace[] {
  const { lit, map, size, marginPx } = scene;
  const rightPx = size.widthPx - marginPx;
  const bottomPx = size.heightPx - marginPx;
  const wanted: { rank: number; x: number; y: number; nx: number; ny: number; offPx: number }[] = [];
  for (const [id, stretches] of lit?.stretches ?? []) {
    const segment = map.segments.get(id);
    const line = segment && runLine(map, segment);
    if (!line) continue;
    for (const { rank, fromMm, toMm, level } of stretches) {
      if (rank === undefined) continue;
      const { at, dx, dy } = directionAt(line, (fromMm + toMm) / 2);
      const { xPx: x, yPx: y } = toScreen(scene.camera, at);
      const up = dx >= 0 ? -1 : 1;
      wanted.push({ rank, x, y, nx: dy * up, ny: dx * up, offPx: levelWidthPx(level) / 2 + 17 });
    }
  }
  const placed: RankPlace[] = [];
  for (const { rank, x, y, nx, ny, offPx } of wanted.sort((a, b) => a.rank - b.rank)) {
    const halfPx = rankHalfWidthPx(rank);
    const inBoard = (off: number): RankPlace => ({
      rank,
      halfPx,
      xPx: Math.min(rightPx - halfPx - 3, Math.max(marginPx + halfPx + 3, x + nx * off)),
      yPx: Math.min(bottomPx - rankHalfHeightPx - 3, Math.max(marginPx + rankHalfHeightPx + 3, y + ny * off)),
    });
    if (x < marginPx || y < marginPx || x > rightPx || y > bottomPx) continue;
    const tries = [offPx, -offPx, offPx + 28, -offPx - 28, offPx + 56, -offPx - 56].map(inBoard);
    placed.push(tries.find((place) => !placed.some((other) => overlap(place, other))) ?? inBoard(offPx));
  }
  return placed;
}

const overlap = (a: RankPlace, b: RankPlace): boolean =>
  Math.abs(a.xPx - b.xPx) < a.halfPx + b.halfPx + 2 && Math.abs(a.yPx - b.yPx) < 2 * rankHalfHeightPx + 2;
