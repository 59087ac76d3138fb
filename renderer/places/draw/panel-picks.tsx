import type { PanelId } from '#core/quantity/id.ts';
import { Checkbox } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';

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
  if (panels.length === 0) return null;
  return (
    <fieldset className="picks">
      <legend className="field-label">{label}</legend>
      {panels.map((panel) => (
        <Checkbox
          key={panel.id}
          label={panel.name}
          checked={picked.includes(panel.id)}
          onChange={(on) => onChange(on ? [...picked, panel.id] : picked.filter((id) => id !== panel.id))}
        />
      ))}
    </fieldset>
  );
}
