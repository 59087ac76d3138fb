import { type Alignment, alignThings } from '#core/map/commands/align-things.ts';
import { thingGroups } from '#core/map/thing-groups.ts';
import { severalWords } from '../../../language/draw-several.ts';
import { Button } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';

/** How many things that lie apart each way needs. */
const ways: readonly (readonly [Alignment, number])[] = [
  ['front', 2],
  ['rear', 2],
  ['left', 2],
  ['right', 2],
  ['centre-line', 1],
  ['spread-along', 3],
  ['spread-across', 3],
];

/** Lines picked things up, or spreads them. */
export function AlignActions({ ids }: { readonly ids: readonly string[] }) {
  const { map, make } = useDraw();
  const groups = thingGroups(map, ids);
  const apart = groups.ok ? groups.value.length : 0;
  return (
    <fieldset className="align-actions">
      <legend className="field-label">{severalWords.place}</legend>
      <div className="button-row">
        {ways.map(([how, fewest]) => (
          <Button
            key={how}
            disabled={apart < fewest}
            onClick={() => make(alignThings(map, { ids, how }), { label: 'edit.alignThings' })}
          >
            {severalWords.align[how]}
          </Button>
        ))}
      </div>
      {apart < 3 ? <p className="quiet">{severalWords.placeFew}</p> : null}
    </fieldset>
  );
}
