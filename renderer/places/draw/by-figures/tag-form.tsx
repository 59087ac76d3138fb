import type { FormEvent } from 'react';
import { setTag } from '#core/map/commands/set-tag.ts';
import type { PanelId, SegmentId } from '#core/quantity/id.ts';
import { runLine } from '../../../board/run-line.ts';
import { figureWords } from '../../../language/by-figures.ts';
import { Button, Choice, Select } from '../../../parts/index.ts';
import { useDraft } from '../../../session/drafts.ts';
import { useDraw } from '../draw-context.ts';
import { RunSelect, runStillThere, StationField } from './run-station.tsx';
import { useAdding } from './use-adding.tsx';

const sides = [
  { value: 'over', label: figureWords.hiding.over },
  { value: 'off', label: figureWords.hiding.off },
] as const;

const newTag: {
  readonly segmentId: SegmentId | null;
  readonly panelId: PanelId | null;
  readonly fromMm: number;
  readonly toMm: number;
  readonly side: 'over' | 'off';
} = { segmentId: null, panelId: null, fromMm: 0, toMm: 0, side: 'over' };

/** Says by stations where a panel hides a run, or where it does not. */
export function TagForm() {
  const { map, make } = useDraw();
  const { add, say, said } = useAdding();
  const [draft, change] = useDraft(map.id, 'tag', newTag);
  const { fromMm, toMm, side } = draft;
  const segmentId = runStillThere(map, draft.segmentId);
  const panelId = draft.panelId !== null && map.panels.has(draft.panelId) ? draft.panelId : null;
  const panels = [...map.panels.values()].sort((a, b) => a.order - b.order);
  const choose = (id: SegmentId | null): void => {
    const segment = id ? map.segments.get(id) : undefined;
    const whole = segment ? { fromMm: 0, toMm: Math.floor(runLine(map, segment)?.lengthMm ?? 0) } : {};
    change({ segmentId: id, ...whole });
  };
  const send = (event: FormEvent): void => {
    event.preventDefault();
    if (!segmentId) add({ missing: figureWords.missing.run }, '');
    else if (!panelId) add({ missing: figureWords.missing.panel }, '');
    else if (fromMm === toMm) add({ missing: figureWords.missing.tagLength }, '');
    else {
      const patch = setTag(map, { segmentId, panelId, fromMm, toMm, over: side === 'over' });
      if (make(patch, { label: 'edit.setTag' })) say(figureWords.tagSet);
    }
  };
  return (
    <form className="by-figures-form" onSubmit={send}>
      <RunSelect value={segmentId} onChange={choose} />
      <Select
        label={figureWords.panel}
        value={panelId ?? ''}
        options={[
          { value: '', label: figureWords.choosePanel },
          ...panels.map(({ id, name }) => ({ value: id as string, label: name })),
        ]}
        onChange={(id) => change({ panelId: id === '' ? null : (id as PanelId) })}
      />
      <div className="form-row">
        <StationField
          segmentId={segmentId}
          label={figureWords.tagFrom}
          value={fromMm}
          onChange={(mm) => change({ fromMm: mm })}
        />
        <StationField
          segmentId={segmentId}
          label={figureWords.tagTo}
          value={toMm}
          onChange={(mm) => change({ toMm: mm })}
        />
      </div>
      <Choice
        label={figureWords.hides}
        value={side}
        options={sides}
        onChange={(value) => change({ side: value })}
      />
      <Button type="submit">{figureWords.setTag}</Button>
      {said}
    </form>
  );
}
