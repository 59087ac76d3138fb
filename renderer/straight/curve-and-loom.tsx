import { useMemo } from 'react';
import { accentStep } from '../theme/tokens.ts';
import { likelihoodColumns, toneRuns } from './likelihood-curve.ts';
import { ClipMark, FoundMark, NodeMark, RubMark } from './marks.tsx';
import type { StraightRows } from './straight-rows.ts';
import type { StraightViewProps } from './straight-view-props.ts';

const pxPerColumn = 2;

/** The probability curve, and below it the loom itself in the same tones with the marks that lie on it. */
export function CurveAndLoom({
  picture,
  ranking,
  ranks,
  foundMm,
  rows,
  innerPx,
}: StraightViewProps & { readonly rows: StraightRows; readonly innerPx: number }) {
  const pxPerMm = innerPx / picture.lengthMm;
  const columns = Math.max(50, Math.floor(innerPx / pxPerColumn));
  const heights = useMemo(
    () => (ranking ? likelihoodColumns(ranking.posterior, picture.lengthMm, columns) : []),
    [ranking, picture.lengthMm, columns],
  );
  const runs = useMemo(() => toneRuns(heights, accentStep), [heights]);
  const columnPx = innerPx / columns;
  const bottom = rows.curveTop + rows.curvePx;
  return (
    <>
      <line className="straight-rule" x1={0} x2={innerPx} y1={bottom} y2={bottom} />
      {runs.map((run) => (
        <path
          key={run.from}
          d={columnsPath(heights, run.from, run.to, columnPx, bottom, rows.curvePx)}
          fill={`var(--accent-${run.step + 1})`}
        />
      ))}
      <line className="straight-loom" x1={0} x2={innerPx} y1={rows.loomY} y2={rows.loomY} />
      {runs.map((run) => (
        <line
          key={run.from}
          x1={run.from * columnPx}
          x2={run.to * columnPx}
          y1={rows.loomY}
          y2={rows.loomY}
          stroke={`var(--accent-${run.step + 1})`}
          strokeWidth={4 + run.step * 1.5}
        />
      ))}
      {picture.seen.map((piece) => (
        <SeenMark
          key={`${piece.fromMm} ${piece.toMm} ${piece.result}`}
          fromPx={piece.fromMm * pxPerMm}
          toPx={piece.toMm * pxPerMm}
          y={rows.loomY}
          result={piece.result}
        />
      ))}
      {picture.clips.map((clip) => (
        <ClipMark key={clip.clipId} x={clip.stationMm * pxPerMm} y={rows.loomY} missing={clip.missing} />
      ))}
      {picture.rubSpots.map((spot) => (
        <RubMark
          key={spot.rubSpotId}
          x={spot.stationMm * pxPerMm}
          y={rows.rubY}
          severity={spot.severity}
          name={spot.name}
        />
      ))}
      {picture.nodes.map((node) => (
        <NodeMark
          key={`${node.nodeId} ${node.stationMm}`}
          x={node.stationMm * pxPerMm}
          y={rows.loomY}
          kind={node.kind}
        />
      ))}
      {foundMm === null
        ? spacedRanks(ranks, pxPerMm, innerPx).map(({ rank, xPx, worthShowing }) => (
            <text
              key={rank}
              className={worthShowing ? 'straight-rank' : 'straight-rank straight-rank-quiet'}
              x={xPx}
              y={rows.curveTop - 3}
              textAnchor="middle"
            >
              {rank}
            </text>
          ))
        : null}
      {foundMm === null ? null : <FoundMark x={foundMm * pxPerMm} y={rows.loomY} />}
    </>
  );
}

/** Half the room a numeral needs, by its digits, in px at 18 px type. */
const halfNumeralPx = (rank: number): number => 4 + 5.5 * String(rank).length;

/** Numerals that do not touch: of two too close, the better rank keeps its place. Ranks come rising. */
export function spacedRanks(
  ranks: StraightViewProps['ranks'],
  pxPerMm: number,
  widthPx: number,
): readonly { readonly rank: number; readonly xPx: number; readonly worthShowing: boolean }[] {
  const kept: { rank: number; xPx: number; worthShowing: boolean }[] = [];
  for (const { rank, stationMm, worthShowing } of ranks) {
    const half = halfNumeralPx(rank);
    const xPx = Math.min(widthPx - half, Math.max(half, stationMm * pxPerMm));
    const free = kept.every((other) => Math.abs(other.xPx - xPx) >= halfNumeralPx(other.rank) + half);
    if (free) kept.push({ rank, xPx, worthShowing });
  }
  return kept;
}

function columnsPath(
  heights: readonly number[],
  from: number,
  to: number,
  columnPx: number,
  bottom: number,
  curvePx: number,
): string {
  let path = `M${(from * columnPx).toFixed(1)} ${bottom}`;
  for (let column = from; column < to; column++) {
    const y = bottom - (heights[column] as number) * curvePx;
    path += `V${y.toFixed(1)}H${((column + 1) * columnPx).toFixed(1)}`;
  }
  return `${path}V${bottom}Z`;
}

/** Seen, sound: hollow with ticks across. Seen, damaged, not the cause: a notch. */
function SeenMark({
  fromPx,
  toPx,
  y,
  result,
}: {
  readonly fromPx: number;
  readonly toPx: number;
  readonly y: number;
  readonly result: string;
}) {
  if (result === 'found') return null;
  if (result === 'seen-damaged-not-cause') {
    const x = (fromPx + toPx) / 2;
    return (
      <path className="straight-notch" d={`M${fromPx} ${y}H${x - 8}L${x} ${y + 10}L${x + 8} ${y}H${toPx}`} />
    );
  }
  const ticks = Math.max(1, Math.floor((toPx - fromPx) / 12));
  return (
    <>
      <rect className="straight-sound" x={fromPx} y={y - 6} width={Math.max(2, toPx - fromPx)} height={12} />
      {Array.from({ length: ticks }, (_, i) => fromPx + ((i + 0.5) * (toPx - fromPx)) / ticks).map((x) => (
        <line key={x} className="straight-tick" x1={x} x2={x} y1={y - 9} y2={y + 9} />
      ))}
    </>
  );
}
