import { type KeyboardEvent, type MouseEvent, useId, useMemo, useRef } from 'react';
import type { StretchProbability } from '#core/job/ranking.ts';
import { findWords } from '../language/find.ts';
import { BandLanes, bandRows } from './band-lanes.tsx';
import { CurveAndLoom } from './curve-and-loom.tsx';
import { EvidenceBars } from './evidence-bars.tsx';
import { type Piece, stretchAt } from './straight-picture.ts';
import { straightRows } from './straight-rows.ts';
import { StraightRuler } from './straight-ruler.tsx';
import type { StraightViewProps } from './straight-view-props.ts';
import { useWidth } from './use-width.ts';

const sidePx = 22;

/** The searched circuit from end to end as one straight ruler, with everything that lies on it. */
export function StraightView(props: StraightViewProps) {
  const { picture, ranking, pointed, picked, onPoint, onPick, sayStretch, say, evidence } = props;
  const frame = useRef<HTMLDivElement>(null);
  const widthPx = useWidth(frame, 960);
  const gridId = useId();
  const innerPx = Math.max(200, widthPx - 2 * sidePx);
  const pxPerMm = innerPx / picture.lengthMm;
  const bands = useMemo(() => bandRows(picture, say, innerPx), [picture, say, innerPx]);
  const rows = useMemo(
    () => straightRows(bands.rowCount, evidence.length),
    [bands.rowCount, evidence.length],
  );
  const stretches = ranking?.posterior.stretches ?? [];
  const current = stretches.findIndex((stretch) => pointed.some((piece) => touches(piece, stretch)));

  const stretchUnder = (event: MouseEvent<HTMLElement>): StretchProbability | null => {
    const left = event.currentTarget.getBoundingClientRect().left;
    return stretchAt(stretches, (event.clientX - left - sidePx) / pxPerMm);
  };
  const pointAt = (event: MouseEvent<HTMLElement>): void => {
    const top = event.currentTarget.getBoundingClientRect().top;
    const row = Math.floor((event.clientY - top - rows.evidenceTop) / rows.evidencePx);
    const bar = evidence[row];
    if (bar) props.onPointEvidence(bar);
    else onPoint(stretchUnder(event));
  };
  const onKey = (event: KeyboardEvent): void => {
    const by = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (by !== 0) {
      event.preventDefault();
      const start = current < 0 ? (by > 0 ? -1 : 0) : current;
      onPoint(stretches[(start + by + stretches.length) % stretches.length] ?? null);
    }
    const stretch = stretches[current];
    if ((event.key === 'Enter' || event.key === ' ') && stretch) {
      event.preventDefault();
      onPick(stretch);
    }
  };
  const at = stretches[Math.max(0, current)];
  const range = (piece: Piece) => ({
    x: sidePx + piece.fromMm * pxPerMm,
    width: Math.max(3, (piece.toMm - piece.fromMm) * pxPerMm),
  });

  return (
    <div className="straight" ref={frame}>
      {/* A div carries the keys and the words: the drawing itself is only to be looked at. */}
      <div
        className="straight-slider"
        role="slider"
        tabIndex={0}
        aria-label={findWords.straight.label}
        aria-valuemin={1}
        aria-valuemax={Math.max(1, stretches.length)}
        aria-valuenow={Math.max(0, current) + 1}
        aria-valuetext={at ? sayStretch(at) : findWords.straight.nothing}
        onPointerMove={pointAt}
        onPointerLeave={() => onPoint(null)}
        onClick={(event) => {
          const stretch = stretchUnder(event);
          if (stretch) onPick(stretch);
        }}
        onKeyDown={onKey}
      >
        <svg width={widthPx} height={rows.heightPx} aria-hidden="true">
          {pointed.map((piece) => (
            <rect
              key={piece.fromMm}
              className="straight-pointed"
              y={rows.curveTop}
              height={rows.heightPx - rows.curveTop}
              {...range(piece)}
            />
          ))}
          <g transform={`translate(${sidePx} 0)`}>
            <StraightRuler {...props} rows={rows} innerPx={innerPx} />
            <BandLanes {...props} rows={rows} placed={bands.bands} innerPx={innerPx} hatchId={gridId} />
            <EvidenceBars
              bars={evidence}
              rows={rows}
              pxPerMm={pxPerMm}
              innerPx={innerPx}
              pointedKey={props.pointedEvidence}
            />
            <CurveAndLoom {...props} rows={rows} innerPx={innerPx} />
          </g>
          {picked ? (
            <rect
              className="straight-picked"
              y={rows.curveTop}
              height={rows.heightPx - rows.curveTop - 1}
              {...range(picked)}
            />
          ) : null}
        </svg>
      </div>
    </div>
  );
}

const touches = (a: Piece, b: Piece): boolean =>
  Math.min(a.toMm, b.toMm) - Math.max(a.fromMm, b.fromMm) > 0.5;
