import { useCallback, useEffect, useMemo, useState } from 'react';
import { proposedRubSpots } from '#core/job/proposed-rub-spots.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { proposalWords as words } from '../../language/proposals.ts';
import { ProblemNotice } from '../../parts/index.ts';
import { addFoundSpot, openMap } from '../../session/add-found-spot.ts';
import { hostClient } from '../../session/host.ts';
import { useFind } from '../find/find-context.ts';
import { SpotProposal } from './spot-proposal.tsx';

/**
 * Finds of this job where the vehicle map, as it is now, has no rub spot: each can be added with one press.
 * Nothing is shown while there are none, or when the map is gone.
 */
export function JobProposals() {
  const { open, lengths, say } = useFind();
  const { mapId } = open.job;
  const [map, setMap] = useState<MapDocument | null>(null);
  const [added, setAdded] = useState(false);
  const [problem, setProblem] = useState<Problem | null>(null);
  const readMap = useCallback(async (): Promise<void> => {
    const opened = await openMap(hostClient(), mapId);
    setMap(opened.ok ? opened.value : null);
  }, [mapId]);
  useEffect(() => void readMap(), [readMap]);
  const finds = useMemo(() => (map ? proposedRubSpots(map, open.job) : []), [map, open.job]);
  if (!map || (finds.length === 0 && !added && !problem)) return null;
  return (
    <section className="proposals" aria-label={words.label}>
      <h3>{words.label}</h3>
      {finds.length > 0 ? <p>{words.none}</p> : null}
      {problem ? <ProblemNotice problem={problem} /> : null}
      {finds.map((find) => (
        <SpotProposal
          key={`${find.segmentId} ${find.stationMm}`}
          map={map}
          find={find}
          lengths={lengths}
          say={say}
          onAdd={(said) =>
            void addFoundSpot(hostClient(), mapId, find, said).then(async (kept) => {
              setProblem(kept.ok ? null : kept.problem);
              setAdded(kept.ok);
              await readMap();
            })
          }
        />
      ))}
      <p role="status">{added ? words.added : ''}</p>
    </section>
  );
}
