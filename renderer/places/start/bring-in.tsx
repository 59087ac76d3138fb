import { useCallback, useEffect, useState } from 'react';
import type { Problem } from '#core/quantity/problem.ts';
import type { ImportSummary } from '#electron/contract/contract.ts';
import { startWords } from '../../language/start.ts';
import { words } from '../../language/words.ts';
import { Button, Notice, ProblemNotice, Progress, useEscape } from '../../parts/index.ts';
import { hostClient } from '../../session/host.ts';

type Step =
  | { readonly at: 'choose' }
  | { readonly at: 'reading' }
  | { readonly at: 'refused'; readonly problem: Problem }
  | { readonly at: 'asking'; readonly text: string; readonly summary: ImportSummary };

const text = startWords.bringIn;

/** Brings in a map or job document: first says what it holds, and stores it only when told to. */
export function BringIn({
  dropped,
  onStored,
  onCancel,
}: {
  /** A file let go over the place, when there is one. */
  readonly dropped: File | null;
  readonly onStored: (name: string) => void;
  readonly onCancel: () => void;
}) {
  const [step, setStep] = useState<Step>({ at: 'choose' });
  useEscape(true, onCancel);
  const read = useCallback(async (file: File): Promise<void> => {
    setStep({ at: 'reading' });
    let content: string;
    try {
      content = await file.text();
    } catch (error) {
      setStep({
        at: 'refused',
        problem: { code: 'file-unreadable', file: file.name, detail: String(error) },
      });
      return;
    }
    const looked = await hostClient()('file.bringIn', { text: content, store: false });
    setStep(
      looked.ok
        ? { at: 'asking', text: content, summary: looked.value.summary }
        : { at: 'refused', problem: looked.problem },
    );
  }, []);
  useEffect(() => {
    if (dropped) void read(dropped);
  }, [dropped, read]);
  const store = async (content: string): Promise<void> => {
    const stored = await hostClient()('file.bringIn', { text: content, store: true });
    if (stored.ok) onStored(stored.value.summary.name);
    else setStep({ at: 'refused', problem: stored.problem });
  };
  return (
    <section className="card-form" aria-label={text.title}>
      <h3>{text.title}</h3>
      {step.at === 'reading' ? <Progress label={text.reading} /> : null}
      {step.at === 'refused' ? <ProblemNotice problem={step.problem} /> : null}
      {step.at === 'asking' ? (
        <Notice
          title={text.found(step.summary)}
          actions={
            <>
              <Button weight="main" onClick={() => void store(step.text)}>
                {text.store}
              </Button>
              <Button onClick={onCancel}>{words.cancel}</Button>
            </>
          }
        >
          <p>{text.holds(step.summary)}</p>
          <p className="quiet">{step.summary.alreadyHere ? text.already : text.nothingStored}</p>
        </Notice>
      ) : (
        <div className="button-row">
          <label className="button file-button">
            <input
              type="file"
              accept=".json,application/json"
              onChange={(event) => {
                const file = event.target.files?.[0];
                if (file) void read(file);
              }}
            />
            {step.at === 'refused' ? text.another : text.choose}
          </label>
          <Button onClick={onCancel}>{words.cancel}</Button>
          <p className="quiet file-hint">{text.hint}</p>
        </div>
      )}
    </section>
  );
}
