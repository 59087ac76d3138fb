import { useCallback, useEffect, useState } from 'react';
import { type Caution, cautions } from '#core/map/kinds.ts';
import type { JobId } from '#core/quantity/id.ts';
import { hostClient } from '../../session/host.ts';

const keyOf = (jobId: JobId): string => `find.cautions-read.${jobId}`;

/** Cautions from kept text; what is not one is left out. */
export function readCautions(text: string | null): ReadonlySet<Caution> {
  if (text === null) return new Set();
  const known = text.split(' ');
  return new Set(cautions.filter((caution) => known.includes(caution)));
}

/** Which cautions were read and understood in this job, and how to say that one was. */
export function useCautionsRead(
  jobId: JobId,
): readonly [ReadonlySet<Caution>, (cautions: readonly Caution[]) => void] {
  const [read, setRead] = useState<ReadonlySet<Caution>>(new Set());
  useEffect(() => {
    let current = true;
    void hostClient()('place.read', { key: keyOf(jobId) }).then((kept) => {
      if (current && kept.ok) setRead(readCautions(kept.value.text));
    });
    return () => {
      current = false;
    };
  }, [jobId]);
  const acknowledge = useCallback(
    (understood: readonly Caution[]): void => {
      const next = new Set([...read, ...understood]);
      setRead(next);
      void hostClient()('place.keep', { key: keyOf(jobId), text: [...next].join(' ') });
    },
    [jobId, read],
  );
  return [read, acknowledge];
}
