import { runCauses } from '#core/chafe/run-causes.ts';
import { type SegmentHazard, wholeHazard } from '#core/chafe/segment-hazard.ts';
import type { RunChange } from '#core/chafe/what-if.ts';
import { addClip } from '#core/map/commands/add-clip.ts';
import { changeSegment } from '#core/map/commands/change-segment.ts';
import { type Covering, coverings } from '#core/map/kinds.ts';
import type { Segment } from '#core/map/records.ts';
import { newId, type RubSpotId } from '#core/quantity/id.ts';
import { hazardWords } from '../../../language/hazard.ts';
import { nameOf } from '../../../language/name-of.ts';
import { coveringWords } from '../../../language/words.ts';
import { Button, Select } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';
import { optionsOf } from '../options-of.ts';
import { BeforeAfter } from './before-after.tsx';
import { bestClipMm } from './best-clip.ts';

const adds = ['clip', 'sleeve', 'edge-strip'] as const;
const words = hazardWords.whatIf;

/** What a fixing, a cover or an edge strip would take away from a run's hazard, and a way to put it on the map. */
export function WhatIfPanel({
  segment,
  hazard,
  ofMap,
  stationMm,
  change,
  after,
  onChange,
  onMove,
}: {
  readonly segment: Segment;
  readonly hazard: SegmentHazard;
  readonly ofMap: number;
  readonly stationMm: number;
  readonly change: RunChange | null;
  readonly after: SegmentHazard | null;
  readonly onChange: (change: RunChange | null) => void;
  readonly onMove: (stationMm: number) => void;
}) {
  const { map, make } = useDraw();
  const spots = spotsBeside(hazard, map.rubSpots);
  const others = coverings.filter((each) => each !== segment.covering);
  const start = (add: (typeof adds)[number]): void => {
    if (change?.add === add) onChange(null);
    else if (add === 'clip') onChange({ add, stationMm });
    else if (add === 'sleeve') onChange({ add, covering: others.at(-1) ?? 'braided-sleeve' });
    else if (spots[0]) onChange({ add, rubSpotId: spots[0] });
  };
  const fit = (): void => {
    if (change?.add === 'clip') {
      const clip = { id: newId('clip', Math.random), stationMm, kind: 'clip' as const, missing: false };
      make(addClip(map, { segmentId: segment.id, clip }), { label: 'edit.addClip' });
    } else if (change?.add === 'sleeve') {
      const changes = { covering: change.covering };
      make(changeSegment(map, { segmentId: segment.id, changes }), { label: 'edit.coverRun' });
    }
    onChange(null);
  };
  return (
    <section className="what-if" aria-label={words.title}>
      <h3>{words.title}</h3>
      <div className="button-row">
        {adds.map((add) => (
          <Button
            key={add}
            aria-pressed={change?.add === add}
            disabled={add === 'edge-strip' && spots.length === 0}
            title={add === 'edge-strip' && spots.length === 0 ? words.noSpot : undefined}
            onClick={() => start(add)}
          >
            {words.adds[add]}
          </Button>
        ))}
      </div>
      {change?.add === 'clip' ? (
        <Button
          onClick={() => {
            const mm = bestClipMm(map, segment, hazard.lengthMm);
            if (mm !== null) onMove(Math.round(mm));
          }}
        >
          {words.best}
        </Button>
      ) : null}
      {change?.add === 'sleeve' ? (
        <Select
          label={words.cover}
          value={change.covering}
          options={optionsOf<Covering>(others, coveringWords)}
          onChange={(covering) => onChange({ add: 'sleeve', covering })}
        />
      ) : null}
      {change?.add === 'edge-strip' ? (
        <Select
          label={words.spot}
          value={change.rubSpotId}
          options={spots.map((id) => ({ value: id, label: nameOf(map, id) }))}
          onChange={(rubSpotId) => onChange({ add: 'edge-strip', rubSpotId })}
        />
      ) : null}
      {change && after ? (
        <>
          <BeforeAfter before={wholeHazard(hazard)} after={wholeHazard(after)} ofMap={ofMap} />
          {change.add === 'edge-strip' ? (
            <p>{words.advice}</p>
          ) : (
            <>
              <p className="field-hint">{words.adviceFit}</p>
              <Button onClick={fit}>{change.add === 'clip' ? words.setClip : words.setCover}</Button>
            </>
          )}
        </>
      ) : null}
    </section>
  );
}

/** The rub spots that add to a run's hazard, most first. */
function spotsBeside(hazard: SegmentHazard, known: ReadonlyMap<RubSpotId, unknown>): readonly RubSpotId[] {
  const ids = runCauses(hazard, 0, hazard.lengthMm).map(({ thing }) => thing as RubSpotId);
  return [...new Set(ids)].filter((id) => known.has(id));
}
