import { useEffect, useMemo, useState } from 'react';
import { teachSums } from '#core/history/teach.ts';
import type { StretchProbability } from '#core/job/ranking.ts';
import { stretchCauses } from '#core/job/stretch-causes.ts';
import { findWords, sayPercent } from '../../language/find.ts';
import { nameOf } from '../../language/name-of.ts';
import { whereLine } from '../../language/say-where.ts';
import { BoardCard, ReasonList } from '../../parts/index.ts';
import { useFind } from './find-context.ts';

/** The pointer has come to rest on something when it stayed this long. */
const restMs = 250;

/** Over the board: the stretch on which the pointer rests, its chance, and why the loom can be worn there. */
export function PointedPlace({
  under,
  pointerRight,
}: {
  /** The stretch under the pointer; null away from the circuit or while a button is down. */
  readonly under: StretchProbability | null;
  readonly pointerRight: boolean;
}) {
  const [rest, setRest] = useState<StretchProbability | null>(null);
  useEffect(() => {
    setRest(null);
    const timer = under ? setTimeout(() => setRest(under), restMs) : undefined;
    return () => clearTimeout(timer);
  }, [under]);
  return rest && rest === under ? <StretchCard stretch={rest} pointerRight={pointerRight} /> : null;
}

function StretchCard({
  stretch,
  pointerRight,
}: {
  readonly stretch: StretchProbability;
  readonly pointerRight: boolean;
}) {
  const { open, where, say, lengths } = useFind();
  const { map, line, job, past } = open;
  const history = useMemo(() => (past ? teachSums(past, map) : null), [past, map]);
  if (!line) return null;
  return (
    <BoardCard title={whereLine(where(stretch))} pointerRight={pointerRight}>
      <p>{findWords.pointed(sayPercent(stretch.probability))}</p>
      <ReasonList
        causes={stretchCauses(map, line, job, history, stretch)}
        nameOf={(id) => say(nameOf(map, id))}
        lengths={lengths}
        most={3}
        as="rows"
      />
    </BoardCard>
  );
}
