import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import type { JobId, MapId } from '#core/quantity/id.ts';
import { drawWords } from '../../language/draw.ts';
import { words } from '../../language/words.ts';
import { Button, ProblemNotice, Progress } from '../../parts/index.ts';
import { hostClient } from '../../session/host.ts';
import { type MapSession, mapSession } from '../../session/map-session.ts';
import { onChangeElsewhere } from '../../session/other-windows.ts';
import './draw.css';
import { DrawScreen } from './draw-screen.tsx';

/** Where a vehicle map is drawn. */
export function DrawPlace({
  mapId,
  onLeave,
  onOpenJob,
}: {
  readonly mapId: MapId;
  readonly onLeave: () => void;
  readonly onOpenJob: (jobId: JobId) => void;
}) {
  const [session, setSession] = useState<MapSession | null>(null);
  useEffect(() => {
    const made = mapSession(mapId, hostClient());
    setSession(made);
    void made.open();
    const stopFollowing = onChangeElsewhere(mapId, () => void made.follow());
    return () => {
      stopFollowing();
      made.close();
    };
  }, [mapId]);
  return session ? <Phases session={session} onLeave={onLeave} onOpenJob={onOpenJob} /> : <Opening />;
}

const Opening = () => (
  <div className="draw-waiting">
    <Progress label={drawWords.opening} />
  </div>
);

function Phases({
  session,
  onLeave,
  onOpenJob,
}: {
  readonly session: MapSession;
  readonly onLeave: () => void;
  readonly onOpenJob: (jobId: JobId) => void;
}) {
  const state = useStore(session.store);
  if (state.phase === 'opening') return <Opening />;
  if (state.phase === 'failed') {
    return (
      <div className="draw-waiting">
        <ProblemNotice
          problem={state.problem}
          title={drawWords.failed}
          actions={
            <>
              <Button weight="main" onClick={() => void session.open()}>
                {words.tryAgain}
              </Button>
              <Button onClick={onLeave}>{words.back}</Button>
            </>
          }
        />
      </div>
    );
  }
  return <DrawScreen open={state} session={session} onLeave={onLeave} onOpenJob={onOpenJob} />;
}
