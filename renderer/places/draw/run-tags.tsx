import { changeSegment } from '#core/map/commands/change-segment.ts';
import { setTag } from '#core/map/commands/set-tag.ts';
import type { PanelTag, Segment } from '#core/map/records.ts';
import type { PanelId } from '#core/quantity/id.ts';
import { runLine } from '../../board/run-line.ts';
import { drawWords } from '../../language/draw.ts';
import { nameOf } from '../../language/name-of.ts';
import { Button, Checkbox, Select } from '../../parts/index.ts';
import { inTurn } from '../../session/in-turn.ts';
import { useDraw } from './draw-context.ts';
import { FigureField } from './figure-field.tsx';
import { TagActions } from './tag-actions.tsx';

/** Which panels hide which part of a run: proposals to confirm, and stretches to set by hand. */
export function RunTags({ segment }: { readonly segment: Segment }) {
  const { map, make } = useDraw();
  const segmentId = segment.id;
  const lengthMm = runLine(map, segment)?.lengthMm ?? 0;
  const panels = [...map.panels.values()].sort((a, b) => a.order - b.order);
  const addPanel = (panelId: string): void => {
    if (panelId === '') return;
    make(setTag(map, { segmentId, panelId: panelId as PanelId, fromMm: 0, toMm: lengthMm, over: true }), {
      label: 'edit.setTag',
    });
  };
  return (
    <div className="run-tags">
      <TagActions segmentIds={[segmentId]} />
      {segment.tags.length === 0 ? <p className="quiet">{drawWords.tags.none}</p> : null}
      <ul className="list">
        {segment.tags.map((tag, index) => (
          <TagLine
            // biome-ignore lint/suspicious/noArrayIndexKey: named by its stations, the field typed in would be another at each digit.
            key={`${tag.panelId} ${index}`}
            segment={segment}
            tag={tag}
            lengthMm={lengthMm}
          />
        ))}
      </ul>
      {panels.length > 0 ? (
        <Select
          label={drawWords.tags.add}
          value=""
          options={[
            { value: '', label: drawWords.tags.choose },
            ...panels.map((panel) => ({ value: panel.id as string, label: panel.name })),
          ]}
          onChange={addPanel}
        />
      ) : null}
      {segment.tags.length === 0 ? (
        <Checkbox
          label={drawWords.tags.inView}
          checked={segment.inView === true}
          onChange={(inView) =>
            make(changeSegment(map, { segmentId, changes: { inView } }), { label: 'edit.setTag' })
          }
        />
      ) : null}
    </div>
  );
}

function TagLine({
  segment,
  tag,
  lengthMm,
}: {
  readonly segment: Segment;
  readonly tag: PanelTag;
  readonly lengthMm: number;
}) {
  const { map, make } = useDraw();
  const { panelId, fromMm, toMm } = tag;
  const at = { segmentId: segment.id, panelId };
  const wiped = (before: typeof map) => setTag(before, { ...at, fromMm, toMm, over: false });
  const painted = (from: number, to: number) => (before: typeof map) =>
    setTag(before, { ...at, fromMm: from, toMm: to, over: true });
  const change = (from: number, to: number, end: string): void => {
    if (to <= from) return;
    const joinKey = `${segment.id}.${panelId}.${end}`;
    make(inTurn(map, wiped, painted(from, to)), { label: 'edit.setTag', joinKey });
  };
  return (
    <li className="list-item tag-line">
      <p>
        {nameOf(map, panelId)}{' '}
        <span className="quiet">{tag.confirmed ? drawWords.tags.confirmed : drawWords.tags.proposed}</span>
      </p>
      <div className="form-row">
        <FigureField
          label={drawWords.tags.from}
          value={fromMm}
          unit={drawWords.units.mm}
          min={0}
          max={Math.max(0, toMm - 1)}
          onChange={(mm) => change(mm ?? 0, toMm, 'from')}
        />
        <FigureField
          label={drawWords.tags.to}
          value={toMm}
          unit={drawWords.units.mm}
          min={fromMm + 1}
          max={lengthMm}
          onChange={(mm) => change(fromMm, mm ?? lengthMm, 'to')}
        />
      </div>
      <div className="button-row">
        {tag.confirmed ? null : (
          <Button onClick={() => make(painted(fromMm, toMm)(map), { label: 'edit.confirmTags' })}>
            {drawWords.tags.confirm}
          </Button>
        )}
        <Button onClick={() => make(wiped(map), { label: 'edit.setTag' })}>{drawWords.tags.remove}</Button>
      </div>
    </li>
  );
}
