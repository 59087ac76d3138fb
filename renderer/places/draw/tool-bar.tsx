import { clipKinds, nodeKinds, outlineKinds, rubSpotKinds } from '#core/map/kinds.ts';
import type { PanelId } from '#core/quantity/id.ts';
import { drawWords } from '../../language/draw.ts';
import { loomWords } from '../../language/draw-loom.ts';
import { clipKindWords, nodeKindWords, outlineKindWords, rubSpotKindWords } from '../../language/words.ts';
import { Choice, Select } from '../../parts/index.ts';
import { cornerInHand } from '../../tools/select/select-tool.ts';
import { BesideForm } from './beside-form.tsx';
import { CornerBar } from './corner-bar.tsx';
import { useDraw } from './draw-context.ts';
import { optionsOf } from './options-of.ts';
import { PlacePicture } from './place-picture.tsx';
import { ScaleForm } from './scale-form.tsx';
import { SnapSwitches } from './snap-switches.tsx';
import type { Drawing } from './use-drawing.ts';

const shapes = ['point', 'line', 'area'] as const;

/** What the drawing action in hand does, and what it is about to draw. */
export function ToolBar({ drawing }: { readonly drawing: Drawing }) {
  const { map, open } = useDraw();
  const { inHand, choices, choose } = drawing;
  const blank = map.outlines.size + map.segments.size === 0;
  const corner =
    inHand.name === 'select' ? cornerInHand(inHand.state, { map, selection: open.selection }) : null;
  const hint = blank && inHand.name === 'select' ? drawWords.firstStep : drawWords.hints[inHand.name];
  return (
    <div className="tool-bar">
      <p className="tool-hint">{hint}</p>
      {inHand.name === 'outline' ? (
        <Select
          label={drawWords.fields.kind}
          value={choices.outlineKind}
          options={optionsOf(outlineKinds, outlineKindWords)}
          onChange={(outlineKind) => choose({ outlineKind })}
        />
      ) : null}
      {inHand.name === 'node' ? (
        <Select
          label={drawWords.fields.kind}
          value={choices.nodeKind}
          options={optionsOf(nodeKinds, nodeKindWords)}
          onChange={(nodeKind) => choose({ nodeKind })}
        />
      ) : null}
      {inHand.name === 'clip' ? (
        <Select
          label={drawWords.fields.kind}
          value={choices.clipKind}
          options={optionsOf(clipKinds, clipKindWords)}
          onChange={(clipKind) => choose({ clipKind })}
        />
      ) : null}
      {inHand.name === 'rub-spot' ? (
        <>
          <Choice
            label={drawWords.fields.shape}
            value={choices.rubSpotShape}
            options={optionsOf(shapes, drawWords.shapes)}
            onChange={(rubSpotShape) => choose({ rubSpotShape })}
          />
          <Select
            label={drawWords.fields.kind}
            value={choices.rubSpotKind}
            options={optionsOf(rubSpotKinds, rubSpotKindWords)}
            onChange={(rubSpotKind) => choose({ rubSpotKind })}
          />
        </>
      ) : null}
      {corner ? <CornerBar corner={corner} /> : null}
      {inHand.name === 'paint' ? (
        map.panels.size === 0 ? (
          <p>{loomWords.paintNone}</p>
        ) : (
          <Select
            label={loomWords.paintPanel}
            value={(choices.paintPanelId ?? '') as string}
            options={[
              { value: '', label: drawWords.tags.choose },
              ...[...map.panels.values()]
                .sort((a, b) => a.order - b.order)
                .map((panel) => ({ value: panel.id as string, label: panel.name })),
            ]}
            onChange={(id) => choose({ paintPanelId: id === '' ? null : (id as PanelId) })}
          />
        )
      ) : null}
      {inHand.name === 'underlay' ? <PlacePicture points={inHand.state} /> : null}
      {inHand.name === 'beside' && inHand.state.segmentId ? (
        <BesideForm key={inHand.state.segmentId} segmentId={inHand.state.segmentId} />
      ) : null}
      <SnapSwitches drawing={drawing} />
      {inHand.name === 'scale' ? <ScaleForm drawing={drawing} points={inHand.state} /> : null}
    </div>
  );
}
