import { useState } from 'react';
import type { JobId } from '#core/quantity/id.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { handoverWords } from '../../language/handover.ts';
import { startWords } from '../../language/start.ts';
import { Button, ProblemNotice } from '../../parts/index.ts';
import { hostClient } from '../../session/host.ts';
import { saveFile } from '../handover/save-file.ts';

const text = handoverWords.handOut;

/** Writes a job out as a file to hand to someone. */
export function HandOutJob({ jobId }: { readonly jobId: JobId }) {
  const [problem, setProblem] = useState<Problem | null>(null);
  const [written, setWritten] = useState<string | null>(null);
  const handOut = async (): Promise<void> => {
    const made = await hostClient()('file.handOut', { jobId });
    if (!made.ok) {
      setProblem(made.problem);
      setWritten(null);
      return;
    }
    setProblem(null);
    saveFile(made.value.fileName, new Blob([made.value.text], { type: 'application/json' }));
    setWritten(made.value.fileName);
  };
  return (
    <>
      <Button onClick={() => void handOut()}>{startWords.handOut}</Button>
      <p role="status" className="quiet">
        {written ? `${text.done(written)} ${window.undertrim ? text.whereChosen : text.whereDownloads}` : ''}
      </p>
      {problem ? <ProblemNotice problem={problem} /> : null}
    </>
  );
}
