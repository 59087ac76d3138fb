import { type FormEvent, useState } from 'react';
import { addClipsEvenly } from '#core/map/commands/add-clips-evenly.ts';
import type { Segment } from '#core/map/records.ts';
import { runLine } from '../../board/run-line.ts';
import { drawWords } from '../../language/draw.ts';
import { clipKindWords } from '../../language/words.ts';
import { Button, Disclosure } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';
import { FigureField } from './figure-field.tsx';

/** The fixings along a run, and a way to set several at even distances. */
export function RunClips({ segment }: { readonly segment: Segment }) {
  const { map, make, goTo } = useDraw();
  const [open, setOpen] = useState(false);
  const lengthMm = runLine(map, segment)?.lengthMm ?? 0;
  const [count, setCount] = useState<number | null>(3);
  const [ends, setEnds] = useState<readonly [number, number] | null>(null);
  const [fromMm, toMm] = ends ?? [Math.min(50, lengthMm / 4), Math.max(lengthMm - 50, (lengthMm * 3) / 4)];
  const send = (event: FormEvent): void => {
    event.preventDefault();
    make(
      addClipsEvenly(
        map,
        { segmentId: segment.id, fromMm, toMm, count: Math.round(count ?? 0), kind: 'clip' },
        Math.random,
      ),
      { label: 'edit.addClips' },
    );
  };
  return (
    <Disclosure label={`${drawWords.fields.clips} (${segment.clips.length})`} open={open} onToggle={setOpen}>
      <ul className="list">
        {segment.clips.map((clip) => (
          <li key={clip.id} className="list-item">
            <button type="button" className="thing" onClick={() => goTo([clip.id])}>
              <span>
                {clipKindWords[clip.kind]}
                {clip.missing ? `, ${drawWords.fields.missing.toLowerCase()}` : ''}
              </span>
              <span className="quiet">
                {clip.stationMm.toFixed(0)} {drawWords.units.mm}
              </span>
            </button>
          </li>
        ))}
      </ul>
      <form className="form-row" onSubmit={send} aria-label={drawWords.fields.evenly}>
        <FigureField
          label={drawWords.fields.count}
          value={count}
          unit=""
          min={1}
          max={100}
          places={0}
          onChange={setCount}
        />
        <FigureField
          label={drawWords.tags.from}
          value={fromMm}
          unit={drawWords.units.mm}
          min={0}
          max={lengthMm}
          onChange={(mm) => setEnds([mm ?? 0, toMm])}
        />
        <FigureField
          label={drawWords.tags.to}
          value={toMm}
          unit={drawWords.units.mm}
          min={0}
          max={lengthMm}
          onChange={(mm) => setEnds([fromMm, mm ?? lengthMm])}
        />
        <Button type="submit">{drawWords.fields.evenly}</Button>
      </form>
    </Disclosure>
  );
}
