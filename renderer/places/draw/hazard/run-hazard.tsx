import { useState } from 'react';
import { useStore } from 'zustand';
import { runCauses } from '#core/chafe/run-causes.ts';
import { type SegmentHazard, segmentHazard, wholeHazard } from '#core/chafe/segment-hazard.ts';
import { mapWithChange, type RunChange } from '#core/chafe/what-if.ts';
import type { Segment } from '#core/map/records.ts';
import { drawWords } from '../../../language/draw.ts';
import { hazardWords } from '../../../language/hazard.ts';
import { nameOf } from '../../../language/name-of.ts';
import { Button, Disclosure, ReasonList } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';
import { FigureField } from '../figure-field.tsx';
import { GuidanceSaid } from './guidance-said.tsx';
import './hazard.css';
import { HazardStrip } from './hazard-strip.tsx';
import { LoomSaid } from './loom-said.tsx';
import { hazardOfMap, mapHazards } from './map-hazards.ts';
import { placeHere } from './place-here.ts';
import { shareOnStretch, stretchAround, worstStationMm } from './stretch.ts';
import { WhatIfPanel } from './what-if-panel.tsx';

/** Why a run can chafe, place by place, and what a fixing, a cover or an edge strip would do. */
export function RunHazard({ segment }: { readonly segment: Segment }) {
  const { map } = useDraw();
  const [open, setOpen] = useState(false);
  const hazards = mapHazards(map);
  const hazard = hazards.get(segment.id);
  const whole = hazardOfMap(hazards);
  if (!hazard || whole <= 0) return null;
  const ofMap = wholeHazard(hazard) / whole;
  const toggle = (opened: boolean): void => {
    setOpen(opened);
    // The board marks the place looked at; until one is pressed it is the worst.
    if (opened && placeHere.getState().place?.segmentId !== segment.id) {
      placeHere.setState({ place: { segmentId: segment.id, stationMm: worstStationMm(hazard) } });
    }
  };
  return (
    <>
      <Disclosure label={hazardWords.title(ofMap)} open={open} onToggle={toggle}>
        <Reasons segment={segment} hazard={hazard} ofMap={ofMap} />
      </Disclosure>
      <GuidanceSaid segment={segment} />
    </>
  );
}

function Reasons({
  segment,
  hazard,
  ofMap,
}: {
  readonly segment: Segment;
  readonly hazard: SegmentHazard;
  readonly ofMap: number;
}) {
  const { map, lengths } = useDraw();
  const here = useStore(placeHere, ({ place }) => place);
  const [change, setChange] = useState<RunChange | null>(null);
  const worstMm = worstStationMm(hazard);
  const chosenMm = here?.segmentId === segment.id ? here.stationMm : worstMm;
  const stationMm = Math.min(hazard.lengthMm, chosenMm);
  const moveTo = (mm: number): void =>
    placeHere.setState({ place: { segmentId: segment.id, stationMm: mm } });
  const stretch = stretchAround(hazard.lengthMm, stationMm);
  const from = nameOf(map, segment.fromNodeId);
  const wished: RunChange | null = change?.add === 'clip' ? { add: 'clip', stationMm } : change;
  const changed = wished ? mapWithChange(map, segment.id, wished) : null;
  const changedRun = changed?.ok ? changed.value.segments.get(segment.id) : undefined;
  const after = changed?.ok && changedRun ? segmentHazard(changed.value, changedRun) : null;
  return (
    <div className="hazard">
      <p>{hazardWords.ofMap(ofMap)}</p>
      <HazardStrip
        hazard={hazard}
        after={after}
        clips={segment.clips}
        stationMm={stationMm}
        stretch={stretch}
        said={hazardWords.placeSaid(stationMm, from, lengths)}
        onMove={moveTo}
      />
      <div className="form-row hazard-place">
        <FigureField
          label={hazardWords.place}
          value={Math.round(stationMm)}
          unit={drawWords.units.mm}
          min={0}
          max={Math.floor(hazard.lengthMm)}
          places={0}
          onChange={(mm) => moveTo(mm ?? 0)}
        />
        <Button onClick={() => moveTo(worstMm)}>{hazardWords.worst}</Button>
      </div>
      <div aria-live="polite">
        <h3>{hazardWords.around(stretch.fromMm, stretch.toMm, from, lengths)}</h3>
        <p>{hazardWords.ofRun(shareOnStretch(hazard, stretch))}</p>
        <ReasonList
          causes={runCauses(hazard, stretch.fromMm, stretch.toMm)}
          nameOf={(id) => nameOf(map, id)}
          lengths={lengths}
        />
        <LoomSaid segment={segment} stationMm={stationMm} />
      </div>
      <WhatIfPanel
        segment={segment}
        hazard={hazard}
        ofMap={ofMap}
        stationMm={stationMm}
        change={wished}
        after={after}
        onChange={setChange}
        onMove={moveTo}
      />
      <p className="field-hint">{hazardWords.compares}</p>
    </div>
  );
}
