import { useEffect, useMemo, useState } from 'react';
import { type UndrawnFind, undrawnFinds } from '#core/job/proposed-rub-spots.ts';
import { addRubSpot } from '#core/map/commands/add-rub-spot.ts';
import { proposalWords as words } from '../../language/proposals.ts';
import { saySide } from '../../language/say-side.ts';
import { Button } from '../../parts/index.ts';
import { foundSpot } from '../../session/add-found-spot.ts';
import { hostClient } from '../../session/host.ts';
import { useMachineSettings } from '../../session/machine-settings.ts';
import { useDraw } from '../draw/draw-context.ts';
import { SpotProposal } from './spot-proposal.tsx';
import './proposals.css';

type FoundPlace = Parameters<typeof undrawnFinds>[1][number];

/** Half of what is shown of the plan round a place, mm. */
const roundMm = 500;

/** Places where past jobs of this model found the cause and the map has no rub spot; none, and nothing is shown. */
export function MapProposals() {
  const { map, lengths, make, goTo, lookAt } = useDraw();
  const sides = useMachineSettings((settings) => settings.sides);
  const [found, setFound] = useState<readonly FoundPlace[]>([]);
  useEffect(() => {
    let gone = false;
    void hostClient()('map.past', { mapId: map.id }).then((past) => {
      if (!gone && past.ok)
        setFound(past.value.places.filter(({ causes, partNodeId }) => causes > 0 && !partNodeId));
    });
    return () => {
      gone = true;
    };
  }, [map.id]);
  const finds = useMemo(() => undrawnFinds(map, found), [map, found]);
  if (finds.length === 0) return null;
  const look = ({ at }: UndrawnFind): void =>
    lookAt({
      minXMm: at.xMm - roundMm,
      minYMm: at.yMm - roundMm,
      maxXMm: at.xMm + roundMm,
      maxYMm: at.yMm + roundMm,
    });
  return (
    <section className="proposals" aria-label={words.label}>
      <h2>{words.label}</h2>
      <p>{words.noneOnMap(finds.length)}</p>
      {finds.map((find) => (
        <SpotProposal
          key={`${find.segmentId} ${find.stationMm}`}
          map={map}
          find={find}
          lengths={lengths}
          say={(name) => saySide(name, map.details.driveSide, sides)}
          onAdd={(said) => {
            const rubSpot = foundSpot(find, said, Math.random);
            if (make(addRubSpot(map, { rubSpot }), { label: 'edit.addRubSpot', select: [rubSpot.id] }))
              goTo([rubSpot.id]);
          }}
        >
          <Button onClick={() => look(find)}>{words.look}</Button>
        </SpotProposal>
      ))}
    </section>
  );
}
