import type { Page } from '@playwright/test';
import type { Place } from '../drawing-hand.ts';
import { estateOutlines } from './outline-table.ts';
import { estateParts } from './part-table.ts';
import { estateRuns } from './run-table.ts';

/** Where a plan was scanned to: its size, and how the car lies in it. */
export const scan = {
  widthPx: 1_400,
  heightPx: 700,
  /** Size of a picture point on the car. */
  mmPerPx: 4,
  /** The sheet lay askew on the scanner. */
  turnRad: (1.5 * Math.PI) / 180,
  /** Where the front bumper's middle came to lie. */
  front: { xPx: 100, yPx: 330 },
} as const;

/** The two places that are measured on the car: its bumpers, on the centre line. */
export const bumpers = { front: [0, 0], rear: [4_750, 0] } as const satisfies Record<string, Place>;

/** The picture point of a place on the car; a plan is seen from above, so the car's right side is up. */
export function scannedAt([xMm, yMm]: Place): { readonly xPx: number; readonly yPx: number } {
  const x = xMm / scan.mmPerPx;
  const y = -yMm / scan.mmPerPx;
  const [cos, sin] = [Math.cos(scan.turnRad), Math.sin(scan.turnRad)];
  return { xPx: scan.front.xPx + x * cos - y * sin, yPx: scan.front.yPx + x * sin + y * cos };
}

/** A plain plan of the car as someone sketched and scanned it: body lines, the loom, a cross at each bumper. */
export async function underlayPicture(page: Page): Promise<Buffer> {
  const partAt = new Map(estateParts.map(({ name, at }) => [name, at]));
  const pixels = (places: readonly (readonly number[])[]) =>
    places.map(([x, y]) => scannedAt([x as number, y as number]));
  const runs = estateRuns.map((run) =>
    pixels(
      [run.from, ...run.bends, run.to]
        .flatMap((at) => (typeof at === 'string' ? [partAt.get(at)] : [at]))
        .flatMap((at) => (at ? [at] : [])),
    ),
  );
  const shell: readonly Place[] = [
    [0, 0],
    [60, 590],
    [360, 840],
    [1_020, 910],
    [3_950, 910],
    [4_500, 840],
    [4_710, 600],
    [4_750, 0],
  ];
  const bodies = [
    ...estateOutlines.map(({ corners }) => corners),
    shell,
    shell.map(([x, y]): Place => [x, -y]),
  ];
  const png = await page.evaluate(
    async ({ size, runs, bodies, crosses }) => {
      const canvas = new OffscreenCanvas(size.widthPx, size.heightPx);
      const c = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
      c.fillStyle = '#fdfdf8';
      c.fillRect(0, 0, size.widthPx, size.heightPx);
      const line = (points: readonly { xPx: number; yPx: number }[], style: string, width: number): void => {
        c.strokeStyle = style;
        c.lineWidth = width;
        c.beginPath();
        for (const { xPx, yPx } of points) c.lineTo(xPx, yPx);
        c.stroke();
      };
      for (const body of bodies) line(body, '#667', 1.5);
      for (const run of runs) line(run, '#a33', 3);
      for (const { xPx, yPx } of crosses) {
        line(
          [
            { xPx: xPx - 14, yPx },
            { xPx: xPx + 14, yPx },
          ],
          '#111',
          2,
        );
        line(
          [
            { xPx, yPx: yPx - 14 },
            { xPx, yPx: yPx + 14 },
          ],
          '#111',
          2,
        );
      }
      const bytes = await (await canvas.convertToBlob({ type: 'image/png' })).arrayBuffer();
      return [...new Uint8Array(bytes)];
    },
    {
      size: { widthPx: scan.widthPx, heightPx: scan.heightPx },
      runs,
      bodies: bodies.map(pixels),
      crosses: pixels([bumpers.front, bumpers.rear]),
    },
  );
  return Buffer.from(png);
}
