import { useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { runCauses, spotParts } from '#core/chafe/run-causes.ts';
import { nearestStation } from '#core/geometry/nearest-station.ts';
import { pointAtStation } from '#core/geometry/station-line.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { RubSpotId, SegmentId } from '#core/quantity/id.ts';
import { type Camera, toPlan, toScreen } from '../../../board/camera.ts';
import { runLine } from '../../../board/run-line.ts';
import { hazardWords, rubSpotReasons } from '../../../language/hazard.ts';
import { nameOf } from '../../../language/name-of.ts';
import { BoardCard, ReasonList } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';
import './hazard.css';
import { mapHazards } from './map-hazards.ts';
import { type PlaceHere, placeHere } from './place-here.ts';
import { shareOnStretch, stretchAround } from './stretch.ts';

/** The pointer has come to rest on something when it stayed this long. */
const restMs = 250;

/**
 * Over the board: why the stretch or rub spot under the pointer can chafe, once the pointer rests there, and a
 * mark at the place looked at beside the board.
 */
export function PointedReasons({
  hover,
  camera,
}: {
  readonly hover: string | null;
  readonly camera: Camera | null;
}) {
  const { map, open } = useDraw();
  const own = useRef<HTMLDivElement>(null);
  const { place, right } = usePointedPlace(own, map, hover, camera);
  const here = useStore(placeHere, (state) => state.place);
  const shown = here && open.selection.includes(here.segmentId) ? screenOf(open.shown, here, camera) : null;
  return (
    <div ref={own} className="pointed">
      {shown ? (
        <svg className="pointed-here" style={{ left: shown.xPx, top: shown.yPx }} aria-hidden="true">
          <circle cx={14} cy={14} r={11} />
        </svg>
      ) : null}
      {place ? <RunCard place={place} right={right} /> : null}
      {hover && map.rubSpots.has(hover as RubSpotId) ? (
        <SpotCard spotId={hover as RubSpotId} right={right} />
      ) : null}
    </div>
  );
}

function screenOf(map: MapDocument, { segmentId, stationMm }: PlaceHere, camera: Camera | null) {
  const segment = map.segments.get(segmentId);
  const line = segment && runLine(map, segment);
  return line && camera ? toScreen(camera, pointAtStation(line, stationMm)) : null;
}

/** The place on a run where the pointer rests; a press there makes it the place looked at. */
function usePointedPlace(
  own: React.RefObject<HTMLElement | null>,
  map: MapDocument,
  hover: string | null,
  camera: Camera | null,
): { readonly place: PlaceHere | null; readonly right: boolean } {
  const [rest, setRest] = useState<PlaceHere | null>(null);
  /** On which half of the board the pointer is: the words stand on the other. */
  const [right, setRight] = useState(false);
  const now = useRef({ map, hover, camera });
  now.current = { map, hover, camera };
  useEffect(() => {
    const board = own.current?.parentElement;
    if (!board) return;
    let timer = 0;
    const under = (event: PointerEvent): PlaceHere | null => {
      const { left, top } = board.getBoundingClientRect();
      return placeUnder(now.current, event.clientX - left, event.clientY - top);
    };
    const move = (event: PointerEvent): void => {
      clearTimeout(timer);
      setRest(null);
      const { left, width } = board.getBoundingClientRect();
      setRight(event.clientX - left > width / 2);
      if (event.buttons === 0) timer = window.setTimeout(() => setRest(under(event)), restMs);
    };
    const down = (event: PointerEvent): void => {
      clearTimeout(timer);
      setRest(null);
      const place = under(event);
      if (place) placeHere.setState({ place });
    };
    const leave = (): void => {
      clearTimeout(timer);
      setRest(null);
    };
    board.addEventListener('pointermove', move);
    board.addEventListener('pointerdown', down);
    board.addEventListener('pointerleave', leave);
    return () => {
      clearTimeout(timer);
      board.removeEventListener('pointermove', move);
      board.removeEventListener('pointerdown', down);
      board.removeEventListener('pointerleave', leave);
    };
  }, [own]);
  return { place: rest && rest.segmentId === hover ? rest : null, right };
}

function placeUnder(
  {
    map,
    hover,
    camera,
  }: { readonly map: MapDocument; readonly hover: string | null; readonly camera: Camera | null },
  xPx: number,
  yPx: number,
): PlaceHere | null {
  const segment = hover === null ? undefined : map.segments.get(hover as SegmentId);
  const line = segment && runLine(map, segment);
  if (!segment || !line || !camera) return null;
  const { stationMm } = nearestStation(line, toPlan(camera, { xPx, yPx }));
  return { segmentId: segment.id, stationMm: Math.round(stationMm) };
}

function RunCard({ place, right }: { readonly place: PlaceHere; readonly right: boolean }) {
  const { map, lengths } = useDraw();
  const segment = map.segments.get(place.segmentId);
  const hazard = mapHazards(map).get(place.segmentId);
  if (!segment || !hazard) return null;
  const stretch = stretchAround(hazard.lengthMm, place.stationMm);
  const from = nameOf(map, segment.fromNodeId);
  return (
    <BoardCard
      title={`${nameOf(map, segment.id)}, ${hazardWords.around(stretch.fromMm, stretch.toMm, from, lengths)}`}
      pointerRight={right}
    >
      <p>{hazardWords.ofRun(shareOnStretch(hazard, stretch))}</p>
      <ReasonList
        causes={runCauses(hazard, stretch.fromMm, stretch.toMm)}
        nameOf={(id) => nameOf(map, id)}
        lengths={lengths}
        most={3}
      />
    </BoardCard>
  );
}

function SpotCard({ spotId, right }: { readonly spotId: RubSpotId; readonly right: boolean }) {
  const { map } = useDraw();
  const spot = map.rubSpots.get(spotId);
  const part = spotParts(map, mapHazards(map)).get(spotId);
  const most = part?.runs[0];
  if (!spot) return null;
  return (
    <BoardCard title={nameOf(map, spotId)} pointerRight={right}>
      <p>{rubSpotReasons[spot.kind]}</p>
      <p>
        {part && most
          ? hazardWords.spot.adds(most.ofRun, nameOf(map, most.segmentId), part.ofMap)
          : hazardWords.spot.nothing}
      </p>
    </BoardCard>
  );
}
