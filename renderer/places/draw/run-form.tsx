import { changeSegment, type SegmentChanges } from '#core/map/commands/change-segment.ts';
import { reverseSegment } from '#core/map/commands/reverse-segment.ts';
import { splitSegment } from '#core/map/commands/split-segment.ts';
import { coverings, segmentTraits } from '#core/map/kinds.ts';
import type { Segment } from '#core/map/records.ts';
import { slackMm } from '#core/map/segment-line.ts';
import { newId } from '#core/quantity/id.ts';
import { runLine } from '../../board/run-line.ts';
import { drawWords } from '../../language/draw.ts';
import { measuredDoubt } from '../../language/measured-doubt.ts';
import { nameOf } from '../../language/name-of.ts';
import { sayDrawnLength } from '../../language/say-drawn-length.ts';
import { coveringWords, segmentTraitWords } from '../../language/words.ts';
import { Button, Checkbox, Field, Figure, Select, TextArea } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';
import { FigureField } from './figure-field.tsx';
import { RunHazard } from './hazard/run-hazard.tsx';
import { RunHeights } from './heights/run-heights.tsx';
import { NameField } from './name-field.tsx';
import { optionsOf } from './options-of.ts';
import { BundleLine } from './route-choice/bundle-line.tsx';
import { RunBends } from './run-bends.tsx';
import { RunClips } from './run-clips.tsx';
import { RunTags } from './run-tags.tsx';

/** A run of the loom: its lengths, its cover, what holds it and what hides it. */
export function RunForm({ segment }: { readonly segment: Segment }) {
  const { map, make, goTo, lengths } = useDraw();
  const segmentId = segment.id;
  const change = (changes: SegmentChanges, joinKey?: string): void => {
    make(changeSegment(map, { segmentId, changes }), {
      label: 'edit.changeSegment',
      ...(joinKey ? { joinKey: `${segmentId}.${joinKey}` } : {}),
    });
  };
  const drawnMm = runLine(map, segment)?.lengthMm ?? 0;
  const drawn = sayDrawnLength(drawnMm, lengths);
  const slack = sayDrawnLength(slackMm(segment, drawnMm), lengths);
  const doubt =
    segment.measuredLengthMm === null ? null : measuredDoubt(segment.measuredLengthMm, drawnMm, lengths);
  return (
    <section className="form" aria-label={nameOf(map, segmentId)}>
      <h2>{nameOf(map, segmentId)}</h2>
      <dl className="form-facts">
        <dt>{drawWords.fields.drawn}</dt>
        <dd data-drawn-mm={drawnMm}>
          <Figure value={drawn.text} unit={drawn.unit} />
        </dd>
        {segment.measuredLengthMm === null ? null : (
          <>
            <dt>{drawWords.fields.slack}</dt>
            <dd>
              <Figure value={slack.text} unit={slack.unit} />
            </dd>
          </>
        )}
        <dt>{drawWords.fields.ends}</dt>
        <dd className="button-row">
          {[segment.fromNodeId, segment.toNodeId].map((id) => (
            <Button key={id} onClick={() => goTo([id])}>
              {nameOf(map, id)}
            </Button>
          ))}
        </dd>
      </dl>
      <NameField value={segment.name} onChange={(name) => change({ name }, 'name')} />
      <Field
        label={drawWords.fields.routeName}
        value={segment.routeName}
        maxLength={120}
        onChange={(routeName) => change({ routeName }, 'routeName')}
      />
      <Select
        label={drawWords.fields.cover}
        value={segment.covering}
        options={optionsOf(coverings, coveringWords)}
        onChange={(covering) => change({ covering })}
      />
      <div className="form-row">
        <FigureField
          label={drawWords.fields.bundle}
          value={segment.bundleDiameterMm}
          unit={drawWords.units.mm}
          min={0.1}
          max={200}
          mayBeEmpty
          hint={drawWords.fields.bundleHint}
          onChange={(bundleDiameterMm) => change({ bundleDiameterMm }, 'bundleDiameterMm')}
        />
        <FigureField
          label={drawWords.fields.measured}
          value={segment.measuredLengthMm}
          unit={drawWords.units.mm}
          min={1}
          mayBeEmpty
          hint={drawWords.fields.measuredHint}
          onChange={(measuredLengthMm) => change({ measuredLengthMm }, 'measuredLengthMm')}
        />
      </div>
      {doubt ? (
        <p className="field-trouble" role="status">
          {doubt}
        </p>
      ) : null}
      <BundleLine segment={segment} />
      <RunHazard segment={segment} />
      <RunTags segment={segment} />
      <RunClips segment={segment} />
      <fieldset className="picks">
        <legend className="field-label">{drawWords.fields.traits}</legend>
        {segmentTraits.map((trait) => (
          <Checkbox
            key={trait}
            label={segmentTraitWords[trait]}
            checked={segment.traits.includes(trait)}
            onChange={(on) =>
              change({
                traits: segmentTraits.filter((each) => (each === trait ? on : segment.traits.includes(each))),
              })
            }
          />
        ))}
      </fieldset>
      <RunHeights segment={segment} />
      <RunBends segment={segment} />
      <Checkbox
        label={drawWords.fields.smooth}
        checked={segment.smooth}
        onChange={(smooth) => change({ smooth })}
      />
      <Checkbox
        label={drawWords.fields.unchecked}
        checked={segment.unchecked}
        onChange={(unchecked) => change({ unchecked })}
      />
      <TextArea
        label={drawWords.fields.note}
        value={segment.note}
        maxLength={4_000}
        onChange={(note) => change({ note }, 'note')}
      />
      <div className="button-row">
        <Button onClick={() => make(reverseSegment(map, { segmentId }), { label: 'edit.reverseSegment' })}>
          {drawWords.fields.reverse}
        </Button>
        <Button
          onClick={() => {
            const ids = { nodeId: newId('node', Math.random), segmentId: newId('segment', Math.random) };
            make(splitSegment(map, { segmentId, stationMm: drawnMm / 2, ids }), {
              label: 'edit.splitSegment',
              select: [ids.nodeId],
            });
          }}
        >
          {drawWords.fields.split}
        </Button>
      </div>
    </section>
  );
}
