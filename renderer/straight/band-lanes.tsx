import { type PlacedBand, placeBandNames } from './band-names.ts';
import { textWidthPx } from './place-labels.ts';
import type { Piece, StraightPicture } from './straight-picture.ts';
import type { StraightRows } from './straight-rows.ts';
import type { StraightViewProps } from './straight-view-props.ts';

/** The bands of a picture on rows where their names can be read. */
export function bandRows(
  picture: StraightPicture,
  say: StraightViewProps['say'],
  innerPx: number,
): ReturnType<typeof placeBandNames> {
  const named = picture.bands.map((band) => ({ ...band, key: bandKey(band), name: say(band.name) }));
  return placeBandNames(named, innerPx / picture.lengthMm, innerPx);
}

const bandKey = (band: StraightPicture['bands'][number]): string => `${band.panelId} ${band.fromMm}`;

/** Which panels hide which pieces: hatched while on, dashed and empty once off. Pointing shows whole names. */
export function BandLanes({
  picture,
  say,
  pointed,
  rows,
  placed,
  innerPx,
  hatchId,
}: Pick<StraightViewProps, 'picture' | 'say' | 'pointed'> & {
  readonly rows: StraightRows;
  readonly placed: readonly PlacedBand[];
  readonly innerPx: number;
  readonly hatchId: string;
}) {
  const bands = new Map(picture.bands.map((band) => [bandKey(band), band]));
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
      {placed.map((at) => {
        const band = bands.get(at.key);
        return band ? (
          <rect
            key={at.key}
            className={band.off ? 'straight-band straight-band-off' : 'straight-band'}
            x={at.xPx}
            y={rows.lanesTop + at.row * rows.lanePx}
            width={at.widthPx}
            height={rows.lanePx - 4}
            fill={band.off ? 'none' : `url(#${hatchId})`}
          />
        ) : null;
      })}
      {placed.map((at) => {
        const band = bands.get(at.key);
        if (!band) return null;
        const whole = pointed.some((piece) => overlaps(piece, band)) ? say(band.name) : null;
        const text = whole ?? at.text;
        if (text === '') return null;
        const x = whole ? Math.max(0, Math.min(at.textPx, innerPx - textWidthPx(whole))) : at.textPx;
        return (
          <text
            key={at.key}
            className="straight-band-name"
            x={x}
            y={rows.lanesTop + at.row * rows.lanePx + 13.5}
          >
            {text}
          </text>
        );
      })}
    </>
  );
}

const overlaps = (a: Piece, b: Piece): boolean =>
  Math.min(a.toMm, b.toMm) - Math.max(a.fromMm, b.fromMm) > 0.5;
