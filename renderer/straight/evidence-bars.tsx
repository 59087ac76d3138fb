import type { StraightRows } from './straight-rows.ts';
import type { EvidenceBar } from './straight-view-props.ts';

/** One row for each reading: where it alone puts the fault. A reading that says nothing of the place is a thin line. */
export function EvidenceBars({
  bars,
  rows,
  pxPerMm,
  innerPx,
  pointedKey,
}: {
  readonly bars: readonly EvidenceBar[];
  readonly rows: StraightRows;
  readonly pxPerMm: number;
  readonly innerPx: number;
  readonly pointedKey: string | null;
}) {
  return (
    <>
      {bars.map((bar, index) => {
        const y = rows.evidenceTop + index * rows.evidencePx + rows.evidencePx / 2;
        return (
          <g
            key={bar.key}
            className={
              bar.key === pointedKey ? 'straight-evidence straight-evidence-pointed' : 'straight-evidence'
            }
          >
            <title>{bar.name}</title>
            <line className="straight-evidence-line" x1={0} x2={innerPx} y1={y} y2={y} />
            {bar.pieces.map((piece) => (
              <rect
                key={piece.fromMm}
                className={
                  bar.doubtful ? 'straight-evidence-bar straight-evidence-doubtful' : 'straight-evidence-bar'
                }
                x={piece.fromMm * pxPerMm}
                y={y - 4}
                width={Math.max(3, (piece.toMm - piece.fromMm) * pxPerMm)}
                height={8}
              />
            ))}
            <text className="straight-evidence-name" x={-4} y={y + 4.5} textAnchor="end">
              {bar.label}
            </text>
          </g>
        );
      })}
    </>
  );
}
