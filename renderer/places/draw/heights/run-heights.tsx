import { useRef, useState } from 'react';
import { pointAtStation } from '#core/geometry/station-line.ts';
import { setHeights } from '#core/map/commands/set-heights.ts';
import type { Segment } from '#core/map/records.ts';
import { slackMm } from '#core/map/segment-line.ts';
import { drawWords } from '../../../language/draw.ts';
import { heightWords } from '../../../language/heights.ts';
import { nameOf } from '../../../language/name-of.ts';
import { sayDrawnLength } from '../../../language/say-drawn-length.ts';
import { Disclosure, Figure } from '../../../parts/index.ts';
import { useWidth } from '../../../straight/use-width.ts';
import { useDraw } from '../draw-context.ts';
import { FigureField } from '../figure-field.tsx';
import { HeightHandle } from './height-handle.tsx';
import './heights.css';
import { type ProfileFrame, profileFrame } from './profile-frame.ts';
import { type ProfilePoint, type RunProfile, runProfile } from './run-profile.ts';

/** The heights of a run: its profile from the side, and the same as figures. */
export function RunHeights({ segment }: { readonly segment: Segment }) {
  const { map, lengths } = useDraw();
  const [open, setOpen] = useState(false);
  const profile = runProfile(map, segment);
  if (!profile) return null;
  const heights = profile.points.map(({ zMm }) => zMm);
  return (
    <Disclosure
      label={heightWords.title(Math.min(...heights), Math.max(...heights), lengths)}
      open={open}
      onToggle={setOpen}
    >
      <Heights segment={segment} profile={profile} />
    </Disclosure>
  );
}

const size = { heightPx: 150, leftPx: 46 } as const;

function Heights({ segment, profile }: { readonly segment: Segment; readonly profile: RunProfile }) {
  const { map, open, session, make, lengths } = useDraw();
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame, 290);
  const picture = useRef<SVGSVGElement>(null);
  /** While a point is dragged the frame stays, or the point would slip from under the pointer. */
  const [heldFrame, setHeldFrame] = useState<ProfileFrame | null>(null);
  const at = heldFrame ?? profileFrame(profile, { ...size, widthPx: width });
  const seenRun = open.shown.segments.get(segment.id) ?? segment;
  const seen = runProfile(open.shown, seenRun) ?? profile;
  const nameOfPoint = (point: ProfilePoint): string =>
    typeof point.at === 'object'
      ? drawWords.fields.bend(point.at.bend + 1)
      : nameOf(map, point.at === 'from' ? segment.fromNodeId : segment.toNodeId);
  const patchOf = (point: ProfilePoint, zMm: number) =>
    setHeights(map, { segmentId: segment.id, heights: [{ at: point.at, zMm }] });
  const set = (point: ProfilePoint, zMm: number, joinKey?: string): void => {
    make(patchOf(point, zMm), { label: 'edit.setHeights', ...(joinKey ? { joinKey } : {}) });
  };
  const drop = (): void => {
    session.preview(null);
    setHeldFrame(null);
  };
  const focusBeside = (index: number): void => {
    picture.current?.querySelectorAll<SVGGElement>('[role=slider]')[index]?.focus();
  };
  const loom = seen.line.points
    .map((point, i) => `${at.xOf(seen.line.stationsMm[i] as number)},${at.yOf(point.zMm)}`)
    .join(' ');
  return (
    <div className="heights" ref={frame}>
      {/* biome-ignore lint/a11y/useSemanticElements: a group of sliders, not a form. */}
      <svg ref={picture} height={size.heightPx} role="group" aria-label={heightWords.picture}>
        {at.ticksMm.map((mm) => (
          <g key={mm}>
            <line
              className={mm === 0 ? 'height-floor' : 'height-line'}
              x1={size.leftPx - 4}
              x2={width}
              y1={at.yOf(mm)}
              y2={at.yOf(mm)}
            />
            <text x={size.leftPx - 8} y={at.yOf(mm) + 4} textAnchor="end">
              {mm === 0 ? heightWords.floor : mm}
            </text>
          </g>
        ))}
        <polyline className="height-loom" points={loom} />
        {seenRun.clips.map((clip) => {
          const x = at.xOf(clip.stationMm);
          const y = at.yOf(pointAtStation(seen.line, clip.stationMm).zMm);
          return (
            <line
              key={clip.id}
              className="height-clip"
              data-missing={clip.missing}
              x1={x}
              x2={x}
              y1={y - 8}
              y2={y + 8}
            />
          );
        })}
        {seen.points.map((point, index) => (
          <HeightHandle
            key={point.key}
            x={at.xOf(point.stationMm)}
            y={at.yOf(point.zMm)}
            zMm={point.zMm}
            label={heightWords.point(nameOfPoint(point))}
            said={heightWords.value(point.zMm, lengths)}
            mmPerPx={at.mmPerPx}
            onDrag={(zMm) => {
              setHeldFrame(at);
              const patch = patchOf(point, zMm);
              if (patch.ok) session.preview(patch.value);
            }}
            onDrop={(zMm) => {
              set(point, zMm);
              setHeldFrame(null);
            }}
            onCancel={drop}
            onStep={(zMm) => set(point, zMm, `${segment.id}.${point.key}.height`)}
            onFocusBeside={(by) => focusBeside(index + by)}
          />
        ))}
      </svg>
      <Consequences segment={seenRun} before={profile.line.lengthMm} now={seen.line.lengthMm} />
      <p className="field-hint">
        {heightWords.hint} {profile.points.every(({ zMm }) => zMm === 0) ? heightWords.flat : ''}
      </p>
      <div className="form-row">
        {profile.points.map((point) => (
          <FigureField
            key={point.key}
            label={nameOfPoint(point)}
            value={point.zMm}
            unit={drawWords.units.mm}
            onChange={(mm) => set(point, mm ?? 0, `${segment.id}.${point.key}.height`)}
          />
        ))}
      </div>
    </div>
  );
}

/** What the heights do to the length and the slack, while they are being dragged too. */
function Consequences({
  segment,
  before,
  now,
}: {
  readonly segment: Segment;
  readonly before: number;
  readonly now: number;
}) {
  const { lengths } = useDraw();
  const drawn = sayDrawnLength(now, lengths);
  const slack = sayDrawnLength(slackMm(segment, now), lengths);
  const overMm = segment.measuredLengthMm === null ? 0 : now - segment.measuredLengthMm;
  const by = now - before;
  return (
    <div aria-live="polite">
      <dl className="form-facts">
        <dt>{drawWords.fields.drawn}</dt>
        <dd data-heights-length-mm={now}>
          <Figure value={drawn.text} unit={drawn.unit} />
        </dd>
        <dt>{drawWords.fields.slack}</dt>
        <dd>
          {segment.measuredLengthMm === null ? (
            <span className="quiet">{heightWords.noSlack}</span>
          ) : (
            <Figure value={slack.text} unit={slack.unit} />
          )}
        </dd>
      </dl>
      {Math.abs(by) >= 0.5 ? (
        <p>{by > 0 ? heightWords.longer(by, lengths) : heightWords.shorter(-by, lengths)}</p>
      ) : null}
      {overMm >= 1 ? <p className="field-trouble">{heightWords.tooLong(overMm, lengths)}</p> : null}
    </div>
  );
}
