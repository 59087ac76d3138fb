import { useState } from 'react';
import type { JobId, MapId } from '#core/quantity/id.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { startWords } from '../../language/start.ts';
import { Button, ProblemNotice } from '../../parts/index.ts';
import { hostClient } from '../../session/host.ts';

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
    const address = URL.createObjectURL(new Blob([made.value.text], { type: 'application/json' }));
    const link = document.createElement('a');
    link.href = address;
    link.download = made.value.fileName;
    link.click();
    // The browser reads the file after the click returns.
    setTimeout(() => URL.revokeObjectURL(address), 10_000);
  };
  return (
    <>
      <Button onClick={() => void handOut()}>{startWords.handOut}</Button>
      {problem ? <ProblemNotice problem={problem} /> : null}
    </>
  );
}
