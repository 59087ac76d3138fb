import { useState } from 'react';
import { changeSegment } from '#core/map/commands/change-segment.ts';
import { drawWords } from '../../../language/draw.ts';
import { nameOf } from '../../../language/name-of.ts';
import { routeWords } from '../../../language/route-choice.ts';
import { sayDrawnLength } from '../../../language/say-drawn-length.ts';
import { Button, Figure } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';
import { FigureField } from '../figure-field.tsx';
import { BundleLine } from './bundle-line.tsx';
import type { WayStep } from './way-steps.ts';

/** One run of a circuit's way; pressed, it shows what can be done there and how thick the loom is. */
export function StepLine({
  number,
  step: { segment, startNodeId, endNodeId, lengthMm },
  last,
  onAvoid,
  onEnd,
  onBegin,
}: {
  readonly number: number;
  readonly step: WayStep;
  readonly last: boolean;
  readonly onAvoid: () => void;
  readonly onEnd: () => void;
  readonly onBegin: () => void;
}) {
  const { map, make, goTo, lengths } = useDraw();
  const [open, setOpen] = useState(false);
  const said = sayDrawnLength(lengthMm, lengths);
  return (
    <li className="list-item">
      <button type="button" className="way" aria-expanded={open} onClick={() => setOpen(!open)}>
        <span className="way-head">
          <span>{routeWords.stepOf(number, nameOf(map, segment.id))}</span>
          <Figure value={said.text} unit={said.unit.split(' ')[0] ?? ''} />
        </span>
        <span className="quiet">{routeWords.leads(nameOf(map, startNodeId), nameOf(map, endNodeId))}</span>
      </button>
      {open ? (
        <div className="way-open">
          <div className="button-row">
            <Button onClick={onAvoid}>{routeWords.avoid}</Button>
            {last ? null : <Button onClick={onEnd}>{routeWords.endHere(nameOf(map, endNodeId))}</Button>}
            {number === 1 ? null : (
              <Button onClick={onBegin}>{routeWords.beginHere(nameOf(map, startNodeId))}</Button>
            )}
            <Button onClick={() => goTo([segment.id])}>{routeWords.goTo}</Button>
          </div>
          <FigureField
            label={routeWords.bundle.label}
            value={segment.bundleDiameterMm}
            unit={drawWords.units.mm}
            min={0.1}
            max={200}
            mayBeEmpty
            hint={drawWords.fields.bundleHint}
            onChange={(bundleDiameterMm) =>
              make(changeSegment(map, { segmentId: segment.id, changes: { bundleDiameterMm } }), {
                label: 'edit.changeSegment',
                joinKey: `${segment.id}.bundleDiameterMm`,
              })
            }
          />
          <BundleLine segment={segment} />
        </div>
      ) : null}
    </li>
  );
}
