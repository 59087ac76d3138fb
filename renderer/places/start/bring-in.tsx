import { useEffect } from 'react';
import { startWords } from '../../language/start.ts';
import { words } from '../../language/words.ts';
import { Button, useEscape } from '../../parts/index.ts';
import { BringInSteps } from '../handover/bring-in-steps.tsx';
import '../handover/handover.css';
import { useBringIn } from '../handover/use-bring-in.ts';

/** Brings in a document or a bundle: first says what it holds, and stores it only when told to. */
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
  const bringing = useBringIn();
  const { step, read } = bringing;
  useEscape(true, onCancel);
  useEffect(() => {
    if (dropped) void read(dropped);
  }, [dropped, read]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: told once, when it is stored.
  useEffect(() => {
    if (step.at === 'stored') onStored(step.name);
  }, [step]);
  return (
    <section className="card-form" aria-label={startWords.bringIn.title}>
      <h3>{startWords.bringIn.title}</h3>
      <BringInSteps
        bringing={bringing}
        hint={startWords.bringIn.hint}
        cancel={<Button onClick={onCancel}>{words.cancel}</Button>}
      />
    </section>
  );
}
