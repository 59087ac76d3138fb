/** Where each row of the laid-straight view lies, in px from its top. */
export interface StraightRows {
  readonly namesTop: number;
  readonly nameRowPx: number;
  readonly curveTop: number;
  readonly curvePx: number;
  readonly loomY: number;
  readonly rubY: number;
  readonly lanesTop: number;
  readonly lanePx: number;
  readonly rulerTop: number;
  readonly heightPx: number;
}

const nameRowPx = 18;
const curvePx = 58;
const lanePx = 22;

/** The rows for so many lanes of panels. */
export function straightRows(laneCount: number): StraightRows {
  const curveTop = 2 * nameRowPx + 20;
  const loomY = curveTop + curvePx + 12;
  const rubY = loomY + 18;
  const lanesTop = rubY + 14;
  const rulerTop = lanesTop + laneCount * lanePx + 4;
  return {
    namesTop: 0,
    nameRowPx,
    curveTop,
    curvePx,
    loomY,
    rubY,
    lanesTop,
    lanePx,
    rulerTop,
    heightPx: rulerTop + 30,
  };
}
