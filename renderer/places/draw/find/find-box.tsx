import { type KeyboardEvent, useDeferredValue, useEffect, useId, useMemo, useRef, useState } from 'react';
import { findWords } from '../../../language/draw-find.ts';
import { words } from '../../../language/words.ts';
import { IconButton } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';
import { layerOf } from '../layers.ts';
import './find-box.css';
import { findables, findThings } from './find-things.ts';

/** More lines than this nobody reads; a few letters more do it sooner. */
const mostLines = 40;

/** Types a few letters of a name, and goes to what has them. */
export function FindBox({ onClose }: { readonly onClose: () => void }) {
  const { map, goTo, layers } = useDraw();
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const list = useRef<HTMLDivElement>(null);
  const [typed, setTyped] = useState('');
  const [active, setActive] = useState(-1);
  const all = useMemo(() => findables(map), [map]);
  const wanted = useDeferredValue(typed);
  const found = useMemo(() => findThings(all, wanted), [all, wanted]);
  const lines = found.slice(0, mostLines);
  useEffect(() => {
    const before = document.activeElement;
    field.current?.focus();
    return () => {
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  useEffect(() => {
    list.current?.children[active]?.scrollIntoView({ block: 'nearest' });
  }, [active]);
  // The list may lag behind the typing; a key acts on what is typed, not on what still stands there.
  const linesNow = () => (wanted === typed ? lines : findThings(all, typed).slice(0, mostLines));
  const go = (index: number, among = lines): void => {
    const thing = among[index];
    if (!thing) return;
    setActive(index);
    goTo([thing.id]);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') onClose();
    else if (event.key === 'Enter') {
      const thing = linesNow()[Math.max(0, active)];
      if (!thing) return;
      goTo([thing.id]);
      onClose();
    } else if (event.key === 'ArrowDown') {
      const among = linesNow();
      go(Math.min(among.length - 1, active + 1), among);
    } else if (event.key === 'ArrowUp') go(Math.max(0, active - 1), linesNow());
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const nothing = wanted.trim() !== '' && found.length === 0;
  return (
    <search className="find-box" aria-label={findWords.title}>
      <div className="find-line">
        <label className="field-label" htmlFor={`${id}-field`}>
          {findWords.title}
        </label>
        <IconButton label={words.close} sign="close" onClick={onClose} />
      </div>
      <input
        id={`${id}-field`}
        ref={field}
        className="input"
        type="text"
        role="combobox"
        autoComplete="off"
        placeholder={findWords.field}
        value={typed}
        aria-expanded={lines.length > 0}
        aria-controls={`${id}-list`}
        aria-autocomplete="list"
        aria-activedescendant={lines[active] ? `${id}-${active}` : undefined}
        aria-describedby={`${id}-hint`}
        onKeyDown={onKeyDown}
        onChange={(event) => {
          setTyped(event.target.value);
          setActive(-1);
        }}
      />
      <p className="field-hint" id={`${id}-hint`} aria-live="polite">
        {nothing
          ? findWords.none(wanted.trim())
          : wanted.trim() === ''
            ? findWords.hint
            : findWords.found(found.length)}
      </p>
      <div
        id={`${id}-list`}
        ref={list}
        className="find-list"
        role="listbox"
        aria-label={findWords.title}
        hidden={lines.length === 0}
      >
        {lines.map((thing, index) => {
          const kind = layerOf(thing.id);
          const hidden = kind !== null && layers.hidden.has(kind);
          return (
            // biome-ignore lint/a11y/useKeyWithClickEvents: the field above has the keys for the whole list.
            <div
              key={thing.id}
              id={`${id}-${index}`}
              className="find-option"
              role="option"
              tabIndex={-1}
              aria-selected={index === active}
              onClick={() => go(index)}
            >
              <span>{thing.name}</span>
              <span className="quiet">
                {thing.fact}
                {hidden ? `, ${findWords.hidden}` : ''}
              </span>
            </div>
          );
        })}
      </div>
      {found.length > lines.length ? (
        <p className="field-hint">{findWords.more(found.length - lines.length)}</p>
      ) : null}
    </search>
  );
}
