import { useState } from 'react';
import { layerWords } from '../../language/draw-board.ts';
import { Button, Checkbox, Disclosure } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';
import { allShown, type LayerKind, layerKinds } from './layers.ts';

/** Which kinds of things the board shows, and which of them cannot be picked there. */
export function LayerSwitches() {
  const { layers, setLayers } = useDraw();
  const [open, setOpen] = useState(false);
  const switched = (part: 'hidden' | 'locked', kind: LayerKind, on: boolean): void => {
    const kinds = new Set(layers[part]);
    if (on) kinds.add(kind);
    else kinds.delete(kind);
    setLayers({ ...layers, [part]: kinds });
  };
  const someHidden = layers.hidden.size > 0;
  const someLocked = layers.locked.size > 0;
  return (
    <div>
      <Disclosure label={layerWords.title} open={open} onToggle={setOpen}>
        {layerKinds.map((kind) => (
          <fieldset key={kind} className="layer">
            <legend className="field-label">{layerWords.kinds[kind]}</legend>
            <Checkbox
              label={layerWords.shown}
              checked={!layers.hidden.has(kind)}
              onChange={(shown) => switched('hidden', kind, !shown)}
            />
            <Checkbox
              label={layerWords.locked}
              checked={layers.locked.has(kind)}
              onChange={(locked) => switched('locked', kind, locked)}
            />
          </fieldset>
        ))}
      </Disclosure>
      {someHidden ? <p>{layerWords.someHidden}</p> : null}
      {someLocked ? <p>{layerWords.someLocked}</p> : null}
      {someHidden || someLocked ? (
        <Button onClick={() => setLayers(allShown)}>{layerWords.showAll}</Button>
      ) : null}
    </div>
  );
}
