import type { Painter } from '../scene.ts';
import { rankHalfHeightPx, rankPlaces } from './rank-places.ts';

/** The rank numerals: the third sign of likelihood. Best last, so that it can never be covered. */
export const paintRanks: Painter = (c, scene) => {
  const { colours, fontFamily } = scene;
  c.font = `bold 18px ${fontFamily}`;
  c.textAlign = 'center';
  c.textBaseline = 'middle';
  for (const { rank, xPx, yPx, halfPx } of rankPlaces(scene).toReversed()) {
    c.fillStyle = colours.paper;
    c.strokeStyle = colours.ink;
    c.lineWidth = rank === 1 ? 2.5 : 1.2;
    c.beginPath();
    c.rect(xPx - halfPx, yPx - rankHalfHeightPx, halfPx * 2, rankHalfHeightPx * 2);
    c.fill();
    c.stroke();
    c.fillStyle = colours.ink;
    c.fillText(String(rank), xPx, yPx + 1);
  }
};
