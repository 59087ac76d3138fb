/**
 * A figure of a table by size, straight between neighbouring rows and held at either end.
 * @example
 * betweenRows([{ mm2: 1, wall: 2 }, { mm2: 3, wall: 4 }], 2, (row) => row.wall) // => 3
 */
export function betweenRows<R extends { readonly mm2: number }>(
  rows: readonly R[],
  mm2: number,
  figure: (row: R) => number,
): number {
  let below = rows[0] as R;
  if (mm2 <= below.mm2) return figure(below);
  for (const row of rows) {
    if (row.mm2 === mm2) return figure(row);
    if (row.mm2 > mm2) {
      const share = (mm2 - below.mm2) / (row.mm2 - below.mm2);
      return figure(below) + (figure(row) - figure(below)) * share;
    }
    below = row;
  }
  return figure(below);
}
