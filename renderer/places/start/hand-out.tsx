import { useState } from 'react';
import type { JobId, MapId } from '#core/quantity/id.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { startWords } from '../../language/start.ts';
import { Button, ProblemNotice } from '../../parts/index.ts';
import { hostClient } from '../../session/host.ts';
import { saveFile } from '../handover/save-file.ts';

/** Writes a map or a job out as a file to hand to someone. */
export function HandOut({ what }: { readonly what: { readonly mapId: MapId } | { readonly jobId: JobId } }) {
  const [problem, setProblem] = useState<Problem | null>(null);
  const handOut = async (): Promise<void> => {
    const made = await hostClient()('file.handOut', what);
    if (!made.ok) {
      setProblem(made.problem);
      return;
    }
    setProblem(null);
    saveFile(made.value.fileName, new Blob([made.value.text], { type: 'application/json' }));
  };
  return (
    <>
      <Button onClick={() => void handOut()}>{startWords.handOut}</Button>
      {problem ? <ProblemNotice problem={problem} /> : null}
    </>
  );
}
