import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import type { Bounds } from '#core/geometry/bounds.ts';
import type { PlanPoint } from '#core/geometry/place.ts';
import { removeThings } from '#core/map/commands/remove-things.ts';
import { dependents } from '#core/map/dependents.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { JobId } from '#core/quantity/id.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { Board } from '../../board/board.tsx';
import { viewBox } from '../../board/camera.ts';
import { MarksKey } from '../../board/marks-key.tsx';
import { emptyOverlay, type Overlay, overlaid } from '../../board/overlay.ts';
import { drawWords, editWords } from '../../language/draw.ts';
import { pictureWords } from '../../language/draw-first.ts';
import { drawKeys } from '../../language/draw-keys.ts';
import { words } from '../../language/words.ts';
import { KeyboardSheet } from '../../parts/index.ts';
import { useMachineSettings } from '../../session/machine-settings.ts';
import type { MapOpen, MapSession } from '../../session/map-session.ts';
import { useTheme } from '../../theme/use-theme.ts';
import type { ToolName } from '../../tools/tool-name.ts';
import { useBringIn } from '../handover/use-bring-in.ts';
import { useDrop } from '../start/use-drop.ts';
import { cameraShowing, frameInView, wholeCamera } from './camera-showing.ts';
import { spacedLabels } from './compare/spaced-labels.ts';
import { useCopying } from './copy/use-copying.ts';
import { type Draw, DrawContext } from './draw-context.ts';
import { DrawHeader } from './draw-header.tsx';
import { besideFindBox } from './find/beside-find-box.ts';
import { FindBox } from './find/find-box.tsx';
import { FirstSteps } from './first-steps.tsx';
import { PointedReasons } from './hazard/pointed-reasons.tsx';
import { allShown, mapWithout } from './layers.ts';
import { type MapTask, MapTaskPage } from './map-task.tsx';
import { NewJob } from './new-job.tsx';
import { SideColumn, type SidePage } from './side-column.tsx';
import { boundsOfThings } from './things-bounds.ts';
import { ToolBar } from './tool-bar.tsx';
import { ToolRail } from './tool-rail.tsx';
import { useDrawKeys } from './use-draw-keys.ts';
import { useDrawing } from './use-drawing.ts';
import { useKeptCamera } from './use-kept-camera.ts';
import { usePastedPicture } from './use-pasted-picture.ts';
import { usePictureIntake } from './use-picture-intake.ts';
import { useUnderlays } from './use-underlays.ts';

/** The board, the rail of drawing actions before it, and the details and lists beside it. */
export function DrawScreen({
  open,
  session,
  onLeave,
  onOpenJob,
}: {
  readonly open: MapOpen;
  readonly session: MapSession;
  readonly onLeave: () => void;
  readonly onOpenJob: (jobId: JobId) => void;
}) {
  const theme = useTheme();
  const lengths = useMachineSettings((settings) => settings.lengths);
  const { camera, setCamera, ready, size, keepSize } = useKeptCamera(open.document);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [asked, setAsked] = useState<readonly string[] | null>(null);
  const [page, setPage] = useState<SidePage>(open.document.segments.size === 0 ? 'ready' : 'details');
  const [sheet, setSheet] = useState(false);
  const [newJob, setNewJob] = useState(false);
  const [layers, setLayers] = useState(allShown);
  const [note, setNote] = useState<string | null>(null);
  const [finding, setFinding] = useState(false);
  const [task, setTask] = useState<MapTask | null>(null);
  const [marks, setMarks] = useState<Overlay>(emptyOverlay);
  const bringing = useBringIn();

  const cameraNow = useRef(camera);
  cameraNow.current = camera;
  /** Drawing actions are taken up from parts that the drawing itself is made after. */
  const taker = useRef<(name: ToolName) => void>(() => {});
  const takeTool = useCallback((name: ToolName): void => taker.current(name), []);
  const pictureIntake = usePictureIntake(
    session,
    () => frameInView(cameraNow.current, size.current),
    setProblem,
    () => takeTool('underlay'),
  );
  const bringInPicture = (file: File): void => void pictureIntake.bringIn(file);
  const dropping = useDrop((file) => {
    if (!/\.(json|zip)$/i.test(file.name)) return bringInPicture(file);
    setTask('bring-in');
    void bringing.read(file);
  });
  usePastedPicture(bringInPicture);
  const pointerNow = useRef<() => PlanPoint | null>(() => null);
  const copying = useCopying(session, {
    pointerNow: () => pointerNow.current(),
    viewNow: () => cameraNow.current && viewBox(cameraNow.current, size.current, -20),
    onProblem: setProblem,
    onSaid: setNote,
  });
  const shown = useMemo(() => mapWithout(open.shown, layers.hidden), [open.shown, layers.hidden]);
  const underlays = useUnderlays(shown);

  const doRemove = useCallback(
    (ids: readonly string[]): void => {
      setAsked(null);
      const patch = removeThings(open.document, { ids });
      setProblem(session.edit(patch, { label: 'edit.remove', select: [] }));
    },
    [open.document, session],
  );
  const lookAt = useCallback(
    (box: Bounds | null): void => {
      if (!box || !cameraNow.current) return;
      const clear = finding ? besideFindBox(size.current) : { size: size.current, topPx: 0 };
      setCamera(cameraShowing(box, cameraNow.current, clear.size, clear.topPx));
    },
    [setCamera, size, finding],
  );
  // The same object while only the view moves, so that nothing beside the board is worked out again.
  const draw: Draw = useMemo(
    () => ({
      open,
      map: open.document,
      session,
      lengths,
      problem,
      make: (patch, note) => {
        const refused = session.edit(patch, note);
        setProblem(refused);
        return refused === null;
      },
      goTo: (ids) => {
        session.select(ids);
        setPage('details');
        lookAt(boundsOfThings(open.document, ids));
      },
      lookAt,
      mark: setMarks,
      copying,
      remove: (ids) => {
        const touched = dependents(open.document, ids);
        if (!touched.ok) setProblem(touched.problem);
        else if (touched.value.length === 0) doRemove(ids);
        else {
          setAsked(ids);
          setPage('details');
        }
      },
      takeTool,
      showAll: () => {
        const state = session.store.getState();
        if (state.phase === 'open') setCamera(wholeCamera(state.document, size.current));
      },
      pictureIntake,
      picturesGone: underlays.gone,
      layers,
      setLayers,
    }),
    [
      open,
      session,
      lengths,
      problem,
      doRemove,
      setCamera,
      size,
      takeTool,
      pictureIntake,
      underlays.gone,
      layers,
      lookAt,
      copying,
    ],
  );
  const drawing = useDrawing(draw, camera?.pxPerMm ?? 1);
  taker.current = drawing.take;
  pointerNow.current = () => drawing.pointerAt.current;
  const openSheet = useCallback(() => setSheet(true), []);
  const openFind = useCallback(() => setFinding(true), []);
  const toggleTask = useCallback(() => setTask((before) => (before ? null : 'compare')), []);
  useDrawKeys(draw, drawing, { onSheet: openSheet, onFind: openFind });
  const spaced = useMemo(
    () =>
      marks === emptyOverlay || !camera
        ? marks
        : { ...marks, labels: spacedLabels(marks.labels, camera, size.current) },
    [marks, camera, size],
  );
  const overlay = useMemo(() => overlaid(spaced, drawing.overlay), [spaced, drawing.overlay]);

  // A question about deleting belongs to what was picked then.
  const selectionKey = open.selection.join(' ');
  // biome-ignore lint/correctness/useExhaustiveDependencies: the selection's change is the trigger.
  useEffect(() => {
    setAsked(null);
    setNote(null);
  }, [selectionKey]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: picking something shows its details.
  useEffect(() => {
    if (open.selection.length > 0) setPage('details');
  }, [selectionKey]);

  const keep = useCallback(() => setAsked(null), []);
  const closeFind = useCallback(() => setFinding(false), []);
  const openNewJob = useCallback(() => setNewJob(true), []);
  return (
    <DrawContext.Provider value={draw}>
      <main className="draw">
        <DrawHeader
          onLeave={onLeave}
          onKeys={openSheet}
          onNewJob={openNewJob}
          onFind={openFind}
          onTask={toggleTask}
          taskOpen={task !== null}
        />
        <ToolRail drawing={drawing} />
        <div className="draw-middle">
          {newJob ? (
            <NewJob onOpenJob={onOpenJob} onCancel={() => setNewJob(false)} />
          ) : (
            <>
              <ToolBar drawing={drawing} />
              <div className="draw-board">
                {ready ? (
                  <Board
                    map={shown}
                    underlays={underlays.shown}
                    theme={theme}
                    camera={camera}
                    onCamera={setCamera}
                    onSize={keepSize}
                    label={drawWords.board}
                    selection={open.selection}
                    hover={drawing.hover}
                    overlay={overlay}
                    cursor={
                      drawing.inHand.name === 'select' ? (drawing.hover ? 'pointer' : 'default') : 'crosshair'
                    }
                    onPointer={drawing.onPointer}
                  />
                ) : null}
                {finding ? <FindBox onClose={closeFind} /> : null}
                <PointedReasons hover={drawing.hover} camera={camera} />
                {dropping ? <p className="drop-here">{pictureWords.drop}</p> : null}
              </div>
              <div className="draw-over">
                <MarksKey theme={theme} withJob={false} />
                {isBlank(open.document) && drawing.inHand.name === 'select' ? <FirstSteps /> : null}
              </div>
            </>
          )}
        </div>
        <SideColumn
          page={page}
          onPage={setPage}
          asked={asked}
          onSure={doRemove}
          onKeep={keep}
          note={note}
          task={task ? <MapTaskPage task={task} onTask={setTask} bringing={bringing} /> : null}
        />
        {sheet ? (
          <KeyboardSheet
            label={drawKeys.title}
            closeLabel={words.close}
            keys={drawKeys.list}
            onClose={() => setSheet(false)}
          />
        ) : null}
        <Said session={session} />
      </main>
    </DrawContext.Provider>
  );
}

/** Nothing is drawn yet and nothing lies under the board. */
const isBlank = ({ outlines, segments, nodes, panels, underlays, rubSpots }: MapDocument): boolean =>
  outlines.size + segments.size + nodes.size + panels.size + underlays.size + rubSpots.size === 0;

/** Says aloud what the last edit was. */
function Said({ session }: { readonly session: MapSession }) {
  const label = useStore(session.store, (state) =>
    state.phase === 'open' ? state.history.done.at(-1)?.label : undefined,
  );
  const count = useStore(session.store, (state) => (state.phase === 'open' ? state.history.done.length : 0));
  return (
    <p className="only-read-aloud" aria-live="polite">
      {label ? `${editWords[label] ?? ''} (${count})` : ''}
    </p>
  );
}
