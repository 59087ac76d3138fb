import { useState } from 'react';
import { spotParts } from '#core/chafe/run-causes.ts';
import { whatIf } from '#core/chafe/what-if.ts';
import { rubSpotKinds } from '#core/map/kinds.ts';
import type { RubSpot } from '#core/map/records.ts';
import { hazardWords, rubSpotReasons } from '../../../language/hazard.ts';
import { nameOf } from '../../../language/name-of.ts';
import { rubSpotKindWords } from '../../../language/words.ts';
import { Button, Disclosure } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';
import { BeforeAfter } from './before-after.tsx';
import './hazard.css';
import { hazardOfMap, mapHazards } from './map-hazards.ts';

const words = hazardWords.spot;

/** How much hazard a rub spot adds, where, and what an edge strip on it would do. */
export function SpotHazard({ spot }: { readonly spot: RubSpot }) {
  const { map, goTo } = useDraw();
  const [strip, setStrip] = useState(false);
  const hazards = mapHazards(map);
  const part = spotParts(map, hazards).get(spot.id);
  const [most, ...rest] = part?.runs ?? [];
  if (!part || !most) return <p className="quiet">{words.nothing}</p>;
  const tried = strip ? whatIf(map, most.segmentId, { add: 'edge-strip', rubSpotId: spot.id }) : null;
  return (
    <section className="hazard" aria-label={words.title}>
      <p>
        <b>{words.title}.</b> {words.adds(most.ofRun, nameOf(map, most.segmentId), part.ofMap)}
      </p>
      {rest.length > 0 ? (
        <ul>
          {rest.map(({ segmentId, ofRun }) => (
            <li key={segmentId}>{words.also(ofRun, nameOf(map, segmentId))}</li>
          ))}
        </ul>
      ) : null}
      <div className="button-row">
        <Button aria-pressed={strip} onClick={() => setStrip(!strip)}>
          {hazardWords.whatIf.title}: {hazardWords.whatIf.adds['edge-strip'].toLowerCase()}
        </Button>
        <Button onClick={() => goTo([most.segmentId])}>{nameOf(map, most.segmentId)}</Button>
      </div>
      {tried?.ok ? (
        <>
          <BeforeAfter
            before={tried.value.before}
            after={tried.value.after}
            ofMap={tried.value.before / hazardOfMap(hazards)}
          />
          <p>{hazardWords.whatIf.advice}</p>
        </>
      ) : null}
    </section>
  );
}

/** Why this kind of spot wears a loom, and the same for every other kind. */
export function KindReason({ kind }: { readonly kind: RubSpot['kind'] }) {
  const [open, setOpen] = useState(false);
  return (
    <div>
      <p className="field-hint">{rubSpotReasons[kind]}</p>
      <Disclosure label={words.kinds} open={open} onToggle={setOpen}>
        <dl className="kind-reasons">
          {rubSpotKinds.map((each) => (
            <div key={each} data-own={each === kind}>
              <dt>{rubSpotKindWords[each]}</dt>
              <dd>{rubSpotReasons[each]}</dd>
            </div>
          ))}
        </dl>
      </Disclosure>
    </div>
  );
}
