import { lazy, Suspense, useCallback, useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { cautionsRead } from '#core/job/cautions-read.ts';
import { standingEntries } from '#core/job/standing-entries.ts';
import type { EntryId, JobId, MapId } from '#core/quantity/id.ts';
import { findWords } from '../../language/find.ts';
import { saySide } from '../../language/say-side.ts';
import { sayWhere } from '../../language/say-where.ts';
import { words } from '../../language/words.ts';
import { Button, Notice, ProblemNotice, Progress } from '../../parts/index.ts';
import { draftsOf } from '../../session/drafts.ts';
import { hostClient } from '../../session/host.ts';
import { type JobOpen, type JobSession, jobSession } from '../../session/job-session.ts';
import { useMachineSettings } from '../../session/machine-settings.ts';
import { onChangeElsewhere } from '../../session/other-windows.ts';
import type { Piece } from '../../straight/straight-picture.ts';
import type { ClosePage } from '../close/close-page.ts';
import { FindContext, type FindView, type ReadingStart } from './find-context.ts';
import { FindScreen } from './find-screen.tsx';

const CloseScreen = lazy(async () => ({
  default: (await import('../close/close-screen.tsx')).CloseScreen,
}));

export interface FindPlaceProps {
  readonly jobId: JobId;
  /** The page of the close in sight; null while searching. */
  readonly closing?: ClosePage | null;
  readonly onLeave: () => void;
  readonly onOpenMap: (mapId: MapId) => void;
  readonly onOpenJob: (jobId: JobId) => void;
}

/** The place where a job's fault is looked for. */
export function FindPlace(props: FindPlaceProps) {
  const { jobId } = props;
  const [session, setSession] = useState<JobSession | null>(null);
  useEffect(() => {
    const made = jobSession(jobId, { client: hostClient() });
    setSession(made);
    void made.open();
    // Forms begun before the app was ended are there when theirs is opened.
    void draftsOf(jobId).read();
    // Another window may have closed a job meanwhile, or taken a wrong find back.
    const seenAgain = (): void => {
      if (document.visibilityState === 'visible') void made.refreshPast();
    };
    document.addEventListener('visibilitychange', seenAgain);
    const stopFollowing = onChangeElsewhere(jobId, () => void made.follow());
    return () => {
      stopFollowing();
      document.removeEventListener('visibilitychange', seenAgain);
      made.close();
    };
  }, [jobId]);
  return session ? <Session {...props} session={session} /> : <Progress label={words.opening} />;
}

function Session({ session, ...props }: FindPlaceProps & { readonly session: JobSession }) {
  const state = useStore(session.store);
  if (state.phase === 'opening') {
    return (
      <main className="find-waiting">
        <Progress label={words.opening} />
      </main>
    );
  }
  if (state.phase === 'failed') {
    const gone = state.problem.code === 'not-found';
    const actions = (
      <>
        {gone ? null : (
          <Button weight="main" onClick={() => void session.open()}>
            {words.tryAgain}
          </Button>
        )}
        <Button weight={gone ? 'main' : 'plain'} onClick={props.onLeave}>
          {words.back}
        </Button>
      </>
    );
    return (
      <main className="find-waiting">
        {gone ? (
          <Notice tone="failed" title={findWords.failed.title} actions={actions}>
            {findWords.failed.gone}
          </Notice>
        ) : (
          <ProblemNotice problem={state.problem} title={findWords.failed.title} actions={actions} />
        )}
      </main>
    );
  }
  return <OpenJob {...props} session={session} open={state} />;
}

function OpenJob({
  session,
  open,
  ...props
}: FindPlaceProps & { readonly session: JobSession; readonly open: JobOpen }) {
  const lengths = useMachineSettings((settings) => settings.lengths);
  const sides = useMachineSettings((settings) => settings.sides);
  const [pointed, point] = useState<readonly Piece[]>([]);
  const [pointedEntry, pointEntry] = useState<EntryId | null>(null);
  const [picked, pick] = useState<Piece | null>(null);
  const [reading, setReading] = useState<ReadingStart | null>(null);
  const openReading = useCallback<FindView['openReading']>(
    (forms, replaces) => setReading((before) => ({ key: (before?.key ?? 0) + 1, forms, replaces })),
    [],
  );
  const closeReading = useCallback(() => setReading(null), []);
  const standing = useMemo(() => standingEntries(open.job), [open.job]);
  const { map, line } = open;
  const say = useCallback(
    (name: string): string => saySide(name, map.details.driveSide, sides),
    [map, sides],
  );
  const view = useMemo((): FindView => {
    return {
      session,
      open,
      standing,
      lengths,
      say,
      where: ({ fromMm, toMm }) =>
        line ? sayWhere(map, line, fromMm, toMm, lengths, say) : { figures: '', unit: '', words: '' },
      pointed,
      pointedEntry,
      point: (pieces, entryId) => {
        point((before) => (samePieces(before, pieces) ? before : pieces));
        pointEntry(entryId ?? null);
      },
      picked,
      pick,
      cautionsRead: cautionsRead(standing).panels,
      reading,
      openReading,
      closeReading,
    };
  }, [
    session,
    open,
    standing,
    lengths,
    say,
    map,
    line,
    pointed,
    pointedEntry,
    picked,
    reading,
    openReading,
    closeReading,
  ]);
  return (
    <FindContext value={view}>
      {props.closing ? (
        <Suspense fallback={<Progress label={words.opening} />}>
          <CloseScreen page={props.closing} onLeave={props.onLeave} />
        </Suspense>
      ) : (
        <FindScreen
          onLeave={props.onLeave}
          onOpenMap={() => props.onOpenMap(open.job.mapId)}
          onOpenJob={props.onOpenJob}
        />
      )}
    </FindContext>
  );
}

/** The pointer moves far more often than what it points at changes. */
const samePieces = (a: readonly Piece[], b: readonly Piece[]): boolean =>
  a.length === b.length && a.every((piece, i) => piece.fromMm === b[i]?.fromMm && piece.toMm === b[i]?.toMm);
