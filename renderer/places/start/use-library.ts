import { useCallback, useEffect, useState } from 'react';
import type { Problem } from '#core/quantity/problem.ts';
import type { JobSummary, MapSummary } from '#electron/contract/contract.ts';
import { hostClient } from '../../session/host.ts';

export type Library =
  | { readonly phase: 'loading' }
  | { readonly phase: 'failed'; readonly problem: Problem }
  | { readonly phase: 'ready'; readonly maps: readonly MapSummary[]; readonly jobs: readonly JobSummary[] };

/** Newest first; equal times by id, so that the list never shuffles. */
export const newestFirst = (a: JobSummary, b: JobSummary): number =>
  b.openedAt.localeCompare(a.openedAt) || a.id.localeCompare(b.id);

/** The vehicles and jobs kept here, and how to read them again. */
export function useLibrary(): readonly [Library, () => Promise<void>] {
  const [library, setLibrary] = useState<Library>({ phase: 'loading' });
  const read = useCallback(async (): Promise<void> => {
    const listed = await hostClient()('library.list', {});
    if (!listed.ok) setLibrary({ phase: 'failed', problem: listed.problem });
    else {
      setLibrary({
        phase: 'ready',
        maps: listed.value.maps,
        jobs: [...listed.value.jobs].sort(newestFirst),
      });
    }
  }, []);
  useEffect(() => {
    void read();
  }, [read]);
  return [library, read];
}
