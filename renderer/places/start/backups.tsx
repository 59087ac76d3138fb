import { useState } from 'react';
import type { Problem } from '#core/quantity/problem.ts';
import type { BackupLine } from '#electron/contract/contract.ts';
import { backupWords } from '../../language/backups.ts';
import { words } from '../../language/words.ts';
import { Button, Figure, List, Notice, ProblemNotice, Progress, useEscape } from '../../parts/index.ts';
import { hostClient } from '../../session/host.ts';
import './backups.css';
import { useBackups } from './use-backups.ts';

/** Copies of everything: which there are, making one now, and going back to one. */
export function Backups({ onWentBack }: { readonly onWentBack: () => void }) {
  const { state, problem, read } = useBackups();
  const [chosen, setChosen] = useState<BackupLine | null>(null);
  const [wentTo, setWentTo] = useState<string | null>(null);
  const [refused, setRefused] = useState<Problem | null>(null);
  useEscape(chosen !== null, () => setChosen(null));
  const take = async (): Promise<void> => {
    const begun = await hostClient()('backup.take', {});
    setRefused(begun.ok ? null : begun.problem);
    await read();
  };
  const goBack = async (to: BackupLine): Promise<void> => {
    const restored = await hostClient()('backup.restore', { fileName: to.fileName });
    setChosen(null);
    setRefused(restored.ok ? null : restored.problem);
    await read();
    if (!restored.ok) return;
    setWentTo(to.takenAt);
    onWentBack();
  };
  if (problem && !state) return <ProblemNotice problem={problem} title={backupWords.failed} />;
  if (!state) return null;
  return (
    <div className="backups">
      {wentTo ? <Notice>{backupWords.wentBack(wentTo)}</Notice> : null}
      <p>{backupWords.what}</p>
      <p className="quiet backups-where">{backupWords.where(state.folder)}</p>
      {state.trouble ? <Notice tone="caution" title={backupWords.trouble[state.trouble]} /> : null}
      {refused ? <ProblemNotice problem={refused} /> : null}
      {state.running === null ? (
        <div className="button-row">
          <Button onClick={() => void take()}>{backupWords.now}</Button>
        </div>
      ) : (
        <Progress label={backupWords.running(state.running)} share={state.running} />
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
              <Figure {...backupWords.size(backup.bytes)} />
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
