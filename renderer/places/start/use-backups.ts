import { useCallback, useEffect, useState } from 'react';
import type { Problem } from '#core/quantity/problem.ts';
import type { RequestOutput } from '#electron/contract/contract.ts';
import { hostClient } from '../../session/host.ts';

/** How often a running backup is asked how far it is. */
const pollMs = 400;

/** The backups as the host tells them, asked again while one is being made. */
export function useBackups(): {
  readonly state: RequestOutput<'backup.list'> | null;
  readonly problem: Problem | null;
  readonly read: () => Promise<void>;
} {
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
