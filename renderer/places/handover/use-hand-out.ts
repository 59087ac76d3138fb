import { useCallback, useMemo, useRef, useState } from 'react';
import type { Problem } from '#core/quantity/problem.ts';
import { ok, type Result } from '#core/quantity/result.ts';
import { saveFile } from './save-file.ts';

export type HandOutKind = 'document' | 'bundle' | 'drawing';

/** A file that is ready to be saved. */
export interface MadeFile {
  readonly fileName: string;
  readonly content: Blob;
  /** Pictures that should be in it but are not kept here. */
  readonly missing?: readonly string[];
  /** What else is worth saying of it. */
  readonly said?: string;
}

export type HandOutState =
  | { readonly at: 'rest' }
  | { readonly at: 'making'; readonly kind: HandOutKind }
  | {
      readonly at: 'done';
      readonly fileName: string;
      readonly missing: readonly string[];
      readonly said: string;
    }
  | { readonly at: 'stopped' }
  | { readonly at: 'refused'; readonly problem: Problem };

/** Makes files and has them saved, one at a time; one that was stopped is never saved. */
export function useHandOut() {
  const [state, setState] = useState<HandOutState>({ at: 'rest' });
  const running = useRef(0);
  const handOut = useCallback(
    async (kind: HandOutKind, make: () => Promise<Result<MadeFile>>): Promise<void> => {
      running.current += 1;
      const mine = running.current;
      setState({ at: 'making', kind });
      const made = await make();
      if (running.current !== mine) return;
      if (!made.ok) {
        setState({ at: 'refused', problem: made.problem });
        return;
      }
      const { fileName, content, missing = [], said = '' } = made.value;
      saveFile(fileName, content);
      setState({ at: 'done', fileName, missing, said });
    },
    [],
  );
  const stop = useCallback((): void => {
    running.current += 1;
    setState({ at: 'stopped' });
  }, []);
  return useMemo(() => ({ state, handOut, stop }), [state, handOut, stop]);
}

/** A file of text. */
export const textFile = (fileName: string, text: string, mediaType: string): Result<MadeFile> =>
  ok({ fileName, content: new Blob([text], { type: mediaType }) });
