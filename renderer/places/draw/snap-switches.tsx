import { snapWords } from '../../language/draw-board.ts';
import { Checkbox } from '../../parts/index.ts';
import type { ToolName } from '../../tools/tool-name.ts';
import type { Drawing } from './use-drawing.ts';

const holding: readonly ToolName[] = ['select', 'outline', 'route', 'node', 'panel', 'rub-spot'];
const mirrored: readonly ToolName[] = ['outline', 'panel', 'rub-spot'];

/** Switches for what takes hold of a point and how it is drawn, as far as they matter to the action in hand. */
export function SnapSwitches({ drawing }: { readonly drawing: Drawing }) {
  const { inHand, choices, choose } = drawing;
  if (!holding.includes(inHand.name)) return null;
  return (
    <fieldset className="snap-switches">
      <legend className="only-read-aloud">{snapWords.label}</legend>
      <Checkbox
        label={snapWords.snapping}
        checked={choices.snapping}
        onChange={(snapping) => choose({ snapping })}
      />
      <Checkbox label={snapWords.grid} checked={choices.grid} onChange={(grid) => choose({ grid })} />
      {mirrored.includes(inHand.name) ? (
        <Checkbox
          label={snapWords.mirror}
          checked={choices.mirror}
          onChange={(mirror) => choose({ mirror })}
        />
      ) : null}
      {inHand.name === 'route' ? (
        <Checkbox
          label={snapWords.smooth}
          checked={choices.smooth}
          onChange={(smooth) => choose({ smooth })}
        />
      ) : null}
    </fieldset>
  );
}
