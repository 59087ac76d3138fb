import { useMemo, useState } from 'react';
import type { StarterStyle } from '#core/map/body-proportions.ts';
import { addDefaultPanels } from '#core/map/commands/add-default-panels.ts';
import { panelDefaults } from '#core/map/panel-defaults.ts';
import { starterWords, usualPanelWords } from '../../language/draw-first.ts';
import { bodyStyleWords } from '../../language/words.ts';
import { Button, Checkbox, Disclosure, Select } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';
import { optionsOf } from './options-of.ts';
import { starterStyles } from './starter-form.tsx';

/** The panels a body usually has that this map lacks, to tick and add with their minutes and order. */
export function UsualPanels() {
  const { map, make } = useDraw();
  const [open, setOpen] = useState(false);
  const ownStyle = map.details.bodyStyle;
  const [style, setStyle] = useState<StarterStyle>(ownStyle === 'other' ? 'hatch' : ownStyle);
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const missing = useMemo(() => {
    const names = new Set([...map.panels.values()].map((panel) => panel.name));
    return panelDefaults(style).filter((panel) => !names.has(panel.name));
  }, [map.panels, style]);
  const keys = missing.filter((panel) => !left.has(panel.key)).map((panel) => panel.key);
  const tick = (key: string, on: boolean): void => {
    const next = new Set(left);
    if (on) next.delete(key);
    else next.add(key);
    setLeft(next);
  };
  return (
    <Disclosure label={usualPanelWords.title} open={open} onToggle={setOpen}>
      <div className="form">
        <p className="quiet">{usualPanelWords.lead}</p>
        <Select
          label={starterWords.style}
          value={style}
          options={optionsOf(starterStyles, bodyStyleWords)}
          onChange={setStyle}
        />
        {missing.length === 0 ? <p>{usualPanelWords.allHere}</p> : null}
        {missing.length > 0 ? (
          <>
            <div className="button-row">
              <Button onClick={() => setLeft(new Set())}>{usualPanelWords.all}</Button>
              <Button onClick={() => setLeft(new Set(missing.map((panel) => panel.key)))}>
                {usualPanelWords.none}
              </Button>
            </div>
            <ul className="list">
              {missing.map((panel) => (
                <li key={panel.key} className="list-item usual-panel">
                  <Checkbox
                    label={panel.name}
                    checked={!left.has(panel.key)}
                    onChange={(on) => tick(panel.key, on)}
                  />
                  <span className="quiet">{usualPanelWords.line(panel.minutesOff, panel.minutesOn)}</span>
                </li>
              ))}
            </ul>
            <Button
              weight="main"
              disabled={keys.length === 0}
              onClick={() =>
                make(addDefaultPanels(map, { style, keys }, Math.random), {
                  label: 'edit.addDefaultPanels',
                })
              }
            >
              {usualPanelWords.add(keys.length)}
            </Button>
          </>
        ) : null}
      </div>
    </Disclosure>
  );
}
