import { useEffect, useRef, useState } from 'react';
import type { Problem } from '#core/quantity/problem.ts';
import type { BackupLine } from '#electron/contract/contract.ts';
import { backupWords, sayBytes } from '../../language/backups.ts';
import { words } from '../../language/words.ts';
import { Button, Figure, List, Notice, ProblemNotice, Progress, useEscape } from '../../parts/index.ts';
import { hostClient } from '../../session/host.ts';
import type { KeptBackups } from '../../session/use-backups.ts';
import { WorkTrouble } from './work-trouble.tsx';
import './backups.css';

/** Copies of everything: which there are, making one now, and going back to one. */
export function Backups({
  kept: { state, problem, read },
  onWentBack,
}: {
  readonly kept: KeptBackups;
  readonly onWentBack: () => void;
}) {
  const [chosen, setChosen] = useState<BackupLine | null>(null);
  const [going, setGoing] = useState<BackupLine | null>(null);
  const [wentTo, setWentTo] = useState<string | null>(null);
  const [refused, setRefused] = useState<Problem | null>(null);
  const wentBack = useRef(onWentBack);
  wentBack.current = onWentBack;
  useEscape(chosen !== null, () => setChosen(null));
  const take = async (): Promise<void> => {
    const begun = await hostClient()('backup.take', {});
    setRefused(begun.ok ? null : begun.problem);
    await read();
  };
  const goBack = async (to: BackupLine): Promise<void> => {
    setWentTo(null);
    const begun = await hostClient()('backup.restore', { fileName: to.fileName });
    setChosen(null);
    setRefused(begun.ok ? null : begun.problem);
    await read();
    if (begun.ok) setGoing(to);
  };
  // It is over when the host does nothing with the data file any more; what came of it is then told.
  useEffect(() => {
    if (!going || !state || state.doing === 'restore') return;
    setGoing(null);
    if (state.ended?.doing !== 'restore' || state.ended.trouble) return;
    setWentTo(going.takenAt);
    wentBack.current();
  }, [going, state]);
  const notGone = state?.ended?.doing === 'restore' ? state.ended.trouble : null;
  if (problem && !state) return <ProblemNotice problem={problem} title={backupWords.failed} />;
  if (!state) return null;
  return (
    <div className="backups">
      {wentTo ? <Notice>{backupWords.wentBack(wentTo)}</Notice> : null}
      <p>{backupWords.what}</p>
      <p className="quiet backups-where">{backupWords.where(state.folder)}</p>
      {notGone ? <WorkTrouble title={backupWords.notGone[notGone]} code={notGone} /> : null}
      {refused ? <ProblemNotice problem={refused} /> : null}
      {state.running === null ? (
        <div className="button-row">
          <Button onClick={() => void take()}>{backupWords.now}</Button>
        </div>
      ) : (
        <Progress label={backupWords.running(state.doing, state.running)} share={state.running} />
      )}
      <List
        label={backupWords.title}
        items={state.backups}
        keyOf={(backup) => backup.fileName}
        empty={backupWords.none}
      >
        {(backup) =>
          chosen?.fileName === backup.fileName ? (
            <Notice
              title={backupWords.sure(backup.takenAt)}
              actions={
                <>
                  <Button onClick={() => void goBack(backup)}>{backupWords.yes}</Button>
                  <Button weight="main" onClick={() => setChosen(null)}>
                    {words.cancel}
                  </Button>
                </>
              }
            />
          ) : (
            <div className="backup-line">
              <span className="backup-when">
                {backupWords.at(backup.takenAt)}
                <span className="quiet">{backupWords.reasons[backup.reason]}</span>
              </span>
              <Figure {...sayBytes(backup.bytes)} />
              <Button
                disabled={state.running !== null}
                aria-label={backupWords.backTo(backup.takenAt)}
                onClick={() => setChosen(backup)}
              >
                {backupWords.back}
              </Button>
            </div>
          )
        }
      </List>
    </div>
  );
}
