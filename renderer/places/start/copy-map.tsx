import { useState } from 'react';
import type { Problem } from '#core/quantity/problem.ts';
import type { MapSummary } from '#electron/contract/contract.ts';
import { startWords } from '../../language/start.ts';
import { driveSideWords, words } from '../../language/words.ts';
import { Button, Choice, Field, Notice, ProblemNotice, useEscape } from '../../parts/index.ts';
import { hostClient } from '../../session/host.ts';

/** Takes a copy of a map, as it is or mirrored for the other side of drive, with the warning in place. */
export function CopyMap({
  map,
  onCopied,
  onCancel,
}: {
  readonly map: MapSummary;
  readonly onCopied: () => void;
  readonly onCancel: () => void;
}) {
  const other = map.driveSide === 'right' ? 'left' : 'right';
  const [kind, setKind] = useState<'plain' | 'mirrored'>('plain');
  const [typed, setTyped] = useState<string | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const proposed =
    kind === 'mirrored' ? `${map.name}, ${driveSideWords[other]}` : startWords.copy.named(map.name);
  const name = typed ?? proposed;
  useEscape(true, onCancel);
  const copy = async (): Promise<void> => {
    const made = await hostClient()('map.copy', { mapId: map.id, name, mirrored: kind === 'mirrored' });
    if (made.ok) onCopied();
    else setProblem(made.problem);
  };
  return (
    <form
      className="card-form"
      aria-label={startWords.copy.title}
      onSubmit={(event) => {
        event.preventDefault();
        void copy();
      }}
    >
      <h3>{startWords.copy.title}</h3>
      <Choice
        label={startWords.copy.kind}
        value={kind}
        options={[
          { value: 'plain', label: startWords.copy.plain },
          { value: 'mirrored', label: startWords.copy.mirrored(other) },
        ]}
        onChange={setKind}
      />
      <Field label={startWords.copy.name} value={name} maxLength={120} required onChange={setTyped} />
      {kind === 'mirrored' ? (
        <Notice tone="caution" sign="care">
          {startWords.copy.warning}
        </Notice>
      ) : null}
      {problem ? <ProblemNotice problem={problem} /> : null}
      <div className="button-row">
        <Button type="submit" weight="main" disabled={name.trim() === ''}>
          {startWords.copy.make}
        </Button>
        <Button onClick={onCancel}>{words.cancel}</Button>
      </div>
    </form>
  );
}
