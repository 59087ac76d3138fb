import { useEffect, useState } from 'react';
import type { StoreLoss } from '#electron/contract/contract.ts';
import { lossWords } from '../../language/backups.ts';
import { Button, Notice } from '../../parts/index.ts';
import { hostClient } from '../../session/host.ts';
import './backups.css';

/** What a damaged data file cost, until the user says it was read. */
export function LossNotice() {
  const [loss, setLoss] = useState<StoreLoss | null>(null);
  useEffect(() => {
    let current = true;
    void hostClient()('loss.read', {}).then((read) => {
      if (current && read.ok) setLoss(read.value.loss);
    });
    return () => {
      current = false;
    };
  }, []);
  if (!loss) return null;
  const noted = async (): Promise<void> => {
    const told = await hostClient()('loss.noted', {});
    if (told.ok) setLoss(null);
  };
  return (
    <div className="loss-told">
      <Notice
        tone="failed"
        title={lossWords.title}
        actions={<Button onClick={() => void noted()}>{lossWords.noted}</Button>}
      >
        <ul>
          {lossWords.lines(loss).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        <p>{lossWords.kept(loss)}</p>
        <p className="quiet">{lossWords.where(loss.asideFolder)}</p>
      </Notice>
    </div>
  );
}
