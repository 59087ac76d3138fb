import { type FormEvent, useState } from 'react';
import { setTag } from '#core/map/commands/set-tag.ts';
import type { PanelId, SegmentId } from '#core/quantity/id.ts';
import { runLine } from '../../../board/run-line.ts';
import { figureWords } from '../../../language/by-figures.ts';
import { Button, Choice, Select } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';
import { RunSelect, StationField } from './run-station.tsx';
import { useAdding } from './use-adding.tsx';

const sides = [
  { value: 'over', label: figureWords.hiding.over },
  { value: 'off', label: figureWords.hiding.off },
] as const;

/** Says by stations where a panel hides a run, or where it does not. */
export function TagForm() {
  const { map, make } = useDraw();
  const { add, say, said } = useAdding();
  const [segmentId, setSegmentId] = useState<SegmentId | null>(null);
  const [panelId, setPanelId] = useState<PanelId | null>(null);
  const [[fromMm, toMm], setEnds] = useState<readonly [number, number]>([0, 0]);
  const [side, setSide] = useState<'over' | 'off'>('over');
  const panels = [...map.panels.values()].sort((a, b) => a.order - b.order);
  const choose = (id: SegmentId | null): void => {
    setSegmentId(id);
    const segment = id ? map.segments.get(id) : undefined;
    if (segment) setEnds([0, Math.floor(runLine(map, segment)?.lengthMm ?? 0)]);
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
        onChange={(id) => setPanelId(id === '' ? null : (id as PanelId))}
      />
      <div className="form-row">
        <StationField
          segmentId={segmentId}
          label={figureWords.tagFrom}
          value={fromMm}
          onChange={(mm) => setEnds([mm, toMm])}
        />
        <StationField
          segmentId={segmentId}
          label={figureWords.tagTo}
          value={toMm}
          onChange={(mm) => setEnds([fromMm, mm])}
        />
      </div>
      <Choice label={figureWords.hides} value={side} options={sides} onChange={setSide} />
      <Button type="submit">{figureWords.setTag}</Button>
      {said}
    </form>
  );
}
