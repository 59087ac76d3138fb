import { useCallback, useEffect, useState } from 'react';
import type { Problem } from '#core/quantity/problem.ts';
import type { RequestOutput } from '#electron/contract/contract.ts';
import { hostClient } from './host.ts';

/** How often running work on the data file is asked how far it is. */
const pollMs = 400;

/** The backups and the data file as the host tells them. */
export interface KeptBackups {
  readonly state: RequestOutput<'backup.list'> | null;
  readonly problem: Problem | null;
  readonly read: () => Promise<void>;
}

/** How backups and data file stand, asked again while something is being done with them. */
export function useBackups(): KeptBackups {
  const [state, setState] = useState<RequestOutput<'backup.list'> | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const read = useCallback(async (): Promise<void> => {
    const listed = await hostClient()('backup.list', {});
    setProblem(listed.ok ? null : listed.problem);
    if (listed.ok) setState(listed.value);
  }, []);
  useEffect(() => {
    void read();
  }, [read]);
  useEffect(() => {
    if (state?.running == null) return undefined;
    const timer = setTimeout(() => void read(), pollMs);
    return () => clearTimeout(timer);
  }, [state, read]);
  return { state, problem, read };
}
