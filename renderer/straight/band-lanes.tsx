import { cutToWidth } from './place-labels.ts';
import type { StraightRows } from './straight-rows.ts';
import type { StraightViewProps } from './straight-view-props.ts';

/** Which panels hide which pieces: hatched while on, dashed and empty once off. */
export function BandLanes({
  picture,
  say,
  rows,
  pxPerMm,
  hatchId,
}: StraightViewProps & {
  readonly rows: StraightRows;
  readonly pxPerMm: number;
  readonly hatchId: string;
}) {
  return (
    <>
      <defs>
        <pattern
          id={hatchId}
          width="7"
          height="7"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <line className="straight-hatch" x1="0" y1="0" x2="0" y2="7" />
        </pattern>
      </defs>
      {picture.bands.map((band) => {
        const x = band.fromMm * pxPerMm;
        const width = Math.max(2, (band.toMm - band.fromMm) * pxPerMm - 1);
        const y = rows.lanesTop + band.lane * rows.lanePx;
        const name = say(band.name);
        const text = cutToWidth(name, width - 10);
        return (
          <g key={`${band.panelId} ${band.fromMm}`}>
            <title>{name}</title>
            <rect
              className={band.off ? 'straight-band straight-band-off' : 'straight-band'}
              x={x}
              y={y}
              width={width}
              height={rows.lanePx - 4}
              fill={band.off ? 'none' : `url(#${hatchId})`}
            />
            {text ? (
              <>
                <rect
                  className="straight-band-ground"
                  x={x + 3}
                  y={y + 1.5}
                  width={Math.min(width - 4, text.length * 7.4 + 4)}
                  height={rows.lanePx - 7}
                />
                <text className="straight-band-name" x={x + 5} y={y + 13.5}>
                  {text}
                </text>
              </>
            ) : null}
          </g>
        );
      })}
    </>
  );
}
