import { useState } from 'react';
import type { PanelId } from '#core/quantity/id.ts';
import { Checkbox, Disclosure } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';

/** More panels than this are folded away until wanted; the picked ones stay named. */
const mostInSight = 8;

/** Some of the map's panels, each a tick. `without` is left out. */
export function PanelPicks({
  label,
  picked,
  without,
  onChange,
}: {
  readonly label: string;
  readonly picked: readonly PanelId[];
  readonly without?: PanelId;
  readonly onChange: (picked: PanelId[]) => void;
}) {
  const { map } = useDraw();
  const panels = [...map.panels.values()]
    .filter((panel) => panel.id !== without)
    .sort((a, b) => a.order - b.order);
  const [open, setOpen] = useState(false);
  if (panels.length === 0) return null;
  const ticks = panels.map((panel) => (
    <Checkbox
      key={panel.id}
      label={panel.name}
      checked={picked.includes(panel.id)}
      onChange={(on) => onChange(on ? [...picked, panel.id] : picked.filter((id) => id !== panel.id))}
    />
  ));
  const names = panels.filter((panel) => picked.includes(panel.id)).map((panel) => panel.name);
  if (panels.length <= mostInSight) {
    return (
      <fieldset className="picks">
        <legend className="field-label">{label}</legend>
        {ticks}
      </fieldset>
    );
  }
  return (
    <div>
      <Disclosure label={`${label} (${names.length})`} open={open} onToggle={setOpen}>
        <fieldset className="picks" aria-label={label}>
          {ticks}
        </fieldset>
      </Disclosure>
      {open || names.length === 0 ? null : <p>{names.join(', ')}</p>}
    </div>
  );
}
