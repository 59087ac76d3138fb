import { useEffect, useRef } from 'react';
import type { JobSession } from '../../session/job-session.ts';

interface JobKeys {
  readonly session: JobSession;
  readonly letGo: () => void;
  readonly showKeys: () => void;
  readonly enterReading: () => void;
}

/** The keys that work everywhere in the Find place, except while something is being typed. */
export function useJobKeys(keys: JobKeys): void {
  const newest = useRef(keys);
  newest.current = keys;
  useEffect(() => {
    const listen = (event: KeyboardEvent): void => {
      const { target } = event;
      if (target instanceof HTMLInputElement && target.type !== 'radio') return;
      if (target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement) return;
      const { session, letGo, showKeys, enterReading } = newest.current;
      const command = event.ctrlKey || event.metaKey;
      const letter = event.key.toLowerCase();
      if (command && (letter === 'z' || letter === 'y')) {
        event.preventDefault();
        if (letter === 'y' || event.shiftKey) session.redo();
        else session.undo();
      } else if (event.key === 'Escape') letGo();
      else if (event.key === '?') showKeys();
      else if (letter === 'r' && !command && !event.altKey) {
        event.preventDefault();
        enterReading();
      }
    };
    document.addEventListener('keydown', listen);
    return () => document.removeEventListener('keydown', listen);
  }, []);
}
