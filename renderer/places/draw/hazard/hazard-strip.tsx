import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import type { SegmentHazard } from '#core/chafe/segment-hazard.ts';
import type { Clip } from '#core/map/records.ts';
import { hazardWords } from '../../../language/hazard.ts';
import { useWidth } from '../../../straight/use-width.ts';
import type { Stretch } from './stretch.ts';

const heightPx = 74;
const topPx = 6;
const basePx = 60;

/** The hazard along a run as a curve, with its fixings and the place looked at; a slider along the run. */
export function HazardStrip({
  hazard,
  after,
  clips,
  stationMm,
  stretch,
  said,
  onMove,
}: {
  readonly hazard: SegmentHazard;
  /** What it would be after a change. */
  readonly after: SegmentHazard | null;
  readonly clips: readonly Clip[];
  readonly stationMm: number;
  readonly stretch: Stretch;
  readonly said: string;
  readonly onMove: (stationMm: number) => void;
}) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame, 290);
  const { lengthMm } = hazard;
  const pxPerMm = width / lengthMm;
  let most = 0;
  for (const density of hazard.perMm) most = Math.max(most, density);
  for (const density of after?.perMm ?? []) most = Math.max(most, density);
  const curve = ({ perMm, cellMm }: SegmentHazard): string => {
    const points = Array.from(perMm, (density, i) => {
      const y = most > 0 ? basePx - (density / most) * (basePx - topPx) : basePx;
      return `${((i + 0.5) * cellMm * pxPerMm).toFixed(1)} ${y.toFixed(1)}`;
    });
    return `M0 ${points[0]?.split(' ')[1]}L${points.join('L')}L${width} ${points.at(-1)?.split(' ')[1]}`;
  };
  const moveTo = (mm: number): void => onMove(Math.round(Math.min(lengthMm, Math.max(0, mm))));
  const toPointer = (event: PointerEvent<HTMLElement>): void => {
    const { left } = event.currentTarget.getBoundingClientRect();
    moveTo((event.clientX - left) / pxPerMm);
  };
  const key = (event: KeyboardEvent): void => {
    const by = steps[event.key];
    if (event.key === 'Home') moveTo(0);
    else if (event.key === 'End') moveTo(lengthMm);
    else if (by !== undefined) moveTo(stationMm + (event.shiftKey ? Math.sign(by) : by));
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const now = curve(hazard);
  return (
    <div
      className="hazard-strip"
      ref={frame}
      role="slider"
      tabIndex={0}
      aria-label={hazardWords.strip}
      aria-valuemin={0}
      aria-valuemax={Math.round(lengthMm)}
      aria-valuenow={Math.round(stationMm)}
      aria-valuetext={said}
      onKeyDown={key}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        toPointer(event);
      }}
      onPointerMove={(event) => {
        if (event.buttons === 1) toPointer(event);
      }}
    >
      <svg height={heightPx} aria-hidden="true">
        <rect
          className="hazard-stretch"
          x={stretch.fromMm * pxPerMm}
          width={(stretch.toMm - stretch.fromMm) * pxPerMm}
          y={0}
          height={basePx}
        />
        <path className="hazard-area" d={`${now}V${basePx}H0Z`} />
        <path className="hazard-now" d={now} />
        {after ? <path className="hazard-after" d={curve(after)} /> : null}
        <line className="hazard-base" x1={0} x2={width} y1={basePx} y2={basePx} />
        {clips.map((clip) => (
          <line
            key={clip.id}
            className="hazard-clip"
            data-missing={clip.missing}
            x1={clip.stationMm * pxPerMm}
            x2={clip.stationMm * pxPerMm}
            y1={basePx - 5}
            y2={basePx + 5}
          />
        ))}
        <path
          className="hazard-here"
          d={`M${stationMm * pxPerMm} ${basePx + 3}l-6 10h12z`}
          data-station-mm={stationMm}
        />
      </svg>
    </div>
  );
}

const steps: Readonly<Record<string, number>> = {
  ArrowRight: 10,
  ArrowUp: 10,
  ArrowLeft: -10,
  ArrowDown: -10,
  PageUp: 100,
  PageDown: -100,
};
