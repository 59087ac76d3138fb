import { clipKinds, nodeKinds, outlineKinds, rubSpotKinds } from '#core/map/kinds.ts';
import { drawWords } from '../../language/draw.ts';
import { clipKindWords, nodeKindWords, outlineKindWords, rubSpotKindWords } from '../../language/words.ts';
import { Choice, Select } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';
import { optionsOf } from './options-of.ts';
import { ScaleForm } from './scale-form.tsx';
import type { Drawing } from './use-drawing.ts';

const shapes = ['point', 'line', 'area'] as const;

/** What the drawing action in hand does, and what it is about to draw. */
export function ToolBar({ drawing }: { readonly drawing: Drawing }) {
  const { map } = useDraw();
  const { inHand, choices, choose } = drawing;
  const blank = map.outlines.size + map.segments.size === 0;
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
      {inHand.name === 'scale' ? <ScaleForm drawing={drawing} points={inHand.state} /> : null}
    </div>
  );
}
