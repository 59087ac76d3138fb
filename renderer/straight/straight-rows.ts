/** Where each row of the laid-straight view lies, in px from its top. */
export interface StraightRows {
  readonly namesTop: number;
  readonly nameRowPx: number;
  readonly curveTop: number;
  readonly curvePx: number;
  readonly loomY: number;
  readonly rubY: number;
  readonly evidenceTop: number;
  readonly evidencePx: number;
  readonly lanesTop: number;
  readonly lanePx: number;
  readonly rulerTop: number;
  readonly heightPx: number;
}

const nameRowPx = 18;
const curvePx = 58;
const lanePx = 22;
const evidencePx = 15;

/** The rows for so many rows of panels and of evidence. */
export function straightRows(laneCount: number, evidenceCount = 0): StraightRows {
  const curveTop = 2 * nameRowPx + 20;
  const loomY = curveTop + curvePx + 12;
  const rubY = loomY + 18;
  const evidenceTop = rubY + 12;
  const lanesTop = evidenceTop + evidenceCount * evidencePx + (evidenceCount > 0 ? 6 : 2);
  const rulerTop = lanesTop + laneCount * lanePx + 4;
  return {
    namesTop: 0,
    nameRowPx,
    curveTop,
    curvePx,
    loomY,
    rubY,
    evidenceTop,
    evidencePx,
    lanesTop,
    lanePx,
    rulerTop,
    heightPx: rulerTop + 30,
  };
}
