import { type ReactNode, useState } from 'react';
import { figureWords } from '../../../language/by-figures.ts';
import { Button } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';
import type { Added } from './added-things.ts';

/** Adds what a form gives; says what was added, or what is missing, and offers the details. */
export function useAdding(): {
  /** True when it was added. */
  readonly add: (added: Added | { readonly missing: string }, label: string) => boolean;
  /** Says something that was done without a thing of its own. */
  readonly say: (done: string) => void;
  readonly said: ReactNode;
} {
  const { make, goTo } = useDraw();
  const [missing, setMissing] = useState<string | null>(null);
  const [done, setDone] = useState<{ readonly what: string; readonly id: string | null } | null>(null);
  const add = (added: Added | { readonly missing: string }, label: string): boolean => {
    setDone(null);
    if ('missing' in added) {
      setMissing(added.missing);
      return false;
    }
    setMissing(null);
    const made = make(added.patch, { label });
    if (made) setDone({ what: added.name, id: added.id });
    return made;
  };
  const say = (what: string): void => {
    setMissing(null);
    setDone({ what, id: null });
  };
  const shown = done?.id ?? null;
  const said = (
    <div role="status">
      {missing ? <p className="field-trouble">{missing}</p> : null}
      {done ? <p>{figureWords.done(done.what)}</p> : null}
      {shown ? <Button onClick={() => goTo([shown])}>{figureWords.show}</Button> : null}
    </div>
  );
  return { add, say, said };
}
