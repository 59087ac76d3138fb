import { useState } from 'react';
import type { Problem } from '#core/quantity/problem.ts';
import type { MapSummary } from '#electron/contract/contract.ts';
import { startWords } from '../../language/start.ts';
import { words } from '../../language/words.ts';
import { Button, Notice, ProblemNotice, useEscape } from '../../parts/index.ts';
import { hostClient } from '../../session/host.ts';

/** Asks once, in place, before a map is removed. */
export function RemoveMap({
  map,
  onRemoved,
  onCancel,
}: {
  readonly map: MapSummary;
  readonly onRemoved: () => void;
  readonly onCancel: () => void;
}) {
  const [problem, setProblem] = useState<Problem | null>(null);
  useEscape(true, onCancel);
  const remove = async (): Promise<void> => {
    const removed = await hostClient()('map.remove', { mapId: map.id });
    if (removed.ok) onRemoved();
    else setProblem(removed.problem);
  };
  return (
    <div className="card-form">
      <Notice
        title={startWords.remove.sure(map.name)}
        actions={
          <>
            <Button onClick={() => void remove()}>{startWords.remove.yes}</Button>
            <Button weight="main" onClick={onCancel}>
              {words.cancel}
            </Button>
          </>
        }
      />
      {problem ? <ProblemNotice problem={problem} /> : null}
    </div>
  );
}
