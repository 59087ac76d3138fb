import { useEffect, useMemo, useRef } from 'react';
import type { Bounds } from '#core/geometry/bounds.ts';
import type { PlanPoint } from '#core/geometry/place.ts';
import { copiedText, readCopied } from '#core/map/copied-text.ts';
import { type CopiedThings, copiedThings } from '#core/map/copied-things.ts';
import { idKind } from '#core/quantity/id.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { severalWords } from '../../../language/draw-several.ts';
import { mapClipboard } from '../../../session/map-clipboard.ts';
import type { MapSession } from '../../../session/map-session.ts';
import { isTyping } from '../is-typing.ts';
import { type PasteAim, pasteAt } from './paste-at.ts';

export interface CopyingParts {
  /** Where the pointer is over the board; null while it is elsewhere. */
  readonly pointerNow: () => PlanPoint | null;
  readonly viewNow: () => Bounds | null;
  readonly onProblem: (problem: Problem | null) => void;
  readonly onSaid: (words: string) => void;
}

/** What can be done with copies. */
export interface Copying {
  /** Copies what is picked, to the machine's clipboard too. */
  readonly copy: () => void;
  /** Lays a copy of what is picked beside it. */
  readonly duplicate: () => void;
  /** Lays down what was copied last in this window. */
  readonly paste: () => void;
}

/** Copies and pastes things, within a map, across two, and across two windows by the machine's clipboard. */
export function useCopying(session: MapSession, parts: CopyingParts): Copying {
  const latest = useRef(parts);
  latest.current = parts;
  const copying = useMemo(() => copyingOn(session, latest), [session]);
  useEffect(() => {
    const copy = (event: ClipboardEvent): void => {
      if (isTyping(event.target) || getSelection()?.isCollapsed === false) return;
      const text = copying.take();
      if (text === null) return;
      event.preventDefault();
      event.clipboardData?.setData('text/plain', text);
    };
    const paste = (event: ClipboardEvent): void => {
      if (event.defaultPrevented || isTyping(event.target) || event.clipboardData?.files.length) return;
      const text = event.clipboardData?.getData('text/plain') ?? '';
      if (text === '') return;
      event.preventDefault();
      copying.lay(text);
    };
    window.addEventListener('copy', copy);
    window.addEventListener('paste', paste);
    return () => {
      window.removeEventListener('copy', copy);
      window.removeEventListener('paste', paste);
    };
  }, [copying]);
  return copying;
}

function copyingOn(session: MapSession, latest: { readonly current: CopyingParts }) {
  /** Pasting the same again goes one step further each time. */
  let last: { readonly text: string; readonly times: number } = { text: '', times: 0 };

  const openNow = () => {
    const state = session.store.getState();
    return state.phase === 'open' ? state : null;
  };

  const picked = (): CopiedThings | null => {
    const open = openNow();
    if (!open || open.selection.length === 0) return null;
    const things = copiedThings(open.document, open.selection);
    if (things.ok && things.value.records.length > 0) return things.value;
    latest.current.onProblem(things.ok ? { code: 'nothing-to-copy' } : things.problem);
    return null;
  };

  /** Takes a copy of what is picked and gives its text; null when there is nothing to take. */
  const take = (): string | null => {
    const things = picked();
    if (!things) return null;
    const text = copiedText(things);
    mapClipboard.setState({ text });
    last = { text, times: 0 };
    const count = openNow()?.selection.filter((id) => idKind(id) !== 'clip').length ?? 0;
    latest.current.onProblem(null);
    latest.current.onSaid(severalWords.copied(count));
    return text;
  };

  const put = (things: CopiedThings, aim: PasteAim, label: string): void => {
    const open = openNow();
    if (!open) return;
    const pasted = pasteAt(open.document, things, aim, Math.random);
    if (!pasted.ok) {
      latest.current.onProblem(pasted.problem);
      return;
    }
    const { patch, ids } = pasted.value;
    latest.current.onProblem(session.edit({ ok: true, value: patch }, { label, select: ids }));
  };

  const lay = (text: string): void => {
    const things = readCopied(text);
    if (!things.ok) {
      latest.current.onProblem(things.problem);
      return;
    }
    const at = latest.current.pointerNow();
    last = { text, times: last.text === text && !at ? last.times + 1 : 1 };
    put(
      things.value,
      at ? { to: 'place', at } : { to: 'beside', view: latest.current.viewNow(), times: last.times },
      'edit.paste',
    );
  };

  return {
    take,
    lay,
    copy: () => {
      // The page's own copy event carries it to the clipboard, which needs no leave as writing there would.
      document.execCommand('copy');
    },
    duplicate: () => {
      const things = picked();
      if (things) put(things, { to: 'beside', view: null, times: 1 }, 'edit.duplicate');
    },
    paste: () => {
      const { text } = mapClipboard.getState();
      if (text !== null) lay(text);
    },
  };
}
