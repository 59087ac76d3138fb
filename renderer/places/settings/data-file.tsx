import { useState } from 'react';
import type { Problem } from '#core/quantity/problem.ts';
import { backupWords, dataFileWords } from '../../language/backups.ts';
import { Button, Notice, ProblemNotice, Progress } from '../../parts/index.ts';
import { hostClient } from '../../session/host.ts';
import { useBackups } from '../../session/use-backups.ts';
import { WorkTrouble } from '../start/work-trouble.tsx';

/** The one file that holds everything: what it takes on the disk, and making it smaller. */
export function DataFile() {
  const { state, problem, read } = useBackups();
  const [refused, setRefused] = useState<Problem | null>(null);
  const makeSmaller = async (): Promise<void> => {
    const begun = await hostClient()('store.compact', {});
    setRefused(begun.ok ? null : begun.problem);
    await read();
  };
  const wrong = refused ?? problem;
  const ended = state?.ended?.doing === 'compact' ? state.ended : null;
  return (
    <fieldset className="data-file">
      <legend>{dataFileWords.title}</legend>
      {wrong ? <ProblemNotice problem={wrong} /> : null}
      {state ? (
        <>
          <p>{dataFileWords.size(state.store)}</p>
          {state.running === null ? (
            <>
              {ended?.trouble ? (
                <WorkTrouble title={dataFileWords.trouble[ended.trouble]} code={`compact ${ended.trouble}`} />
              ) : null}
              {ended && !ended.trouble ? (
                <Notice>{dataFileWords.done(ended.bytesBefore, ended.bytesAfter)}</Notice>
              ) : null}
              <p className="quiet">{dataFileWords.what(state.store.bytes - state.store.emptyBytes)}</p>
              <div className="button-row">
                <Button onClick={() => void makeSmaller()}>{dataFileWords.smaller}</Button>
              </div>
            </>
          ) : (
            <Progress label={backupWords.running(state.doing, state.running)} share={state.running} />
          )}
        </>
      ) : null}
    </fieldset>
  );
}
