import { changePanel } from '#core/map/commands/change-panel.ts';
import { proposeTags } from '#core/map/commands/propose-tags.ts';
import { cautions, panelKinds } from '#core/map/kinds.ts';
import type { Panel } from '#core/map/records.ts';
import { drawWords } from '../../language/draw.ts';
import { cautionWords, panelKindWords } from '../../language/words.ts';
import { Button, Checkbox, Select, TextArea } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';
import { FigureField } from './figure-field.tsx';
import { NameField } from './name-field.tsx';
import { optionsOf } from './options-of.ts';
import { PanelOrder } from './order/panel-order.tsx';
import { PanelPicks } from './panel-picks.tsx';

/** A panel: its minutes, what must be off before it, and the care it needs. */
export function PanelForm({ panel }: { readonly panel: Panel }) {
  const { map, make } = useDraw();
  const panelId = panel.id;
  const change = (changes: Partial<Omit<Panel, 'id'>>, joinKey?: string): void => {
    make(changePanel(map, { panelId, changes }), {
      label: 'edit.changePanel',
      ...(joinKey ? { joinKey: `${panelId}.${joinKey}` } : {}),
    });
  };
  return (
    <section className="form" aria-label={panel.name}>
      <h2>{panel.name || panelKindWords[panel.kind]}</h2>
      <NameField value={panel.name} onChange={(name) => change({ name }, 'name')} />
      <Select
        label={drawWords.fields.kind}
        value={panel.kind}
        options={optionsOf(panelKinds, panelKindWords)}
        onChange={(kind) => change({ kind })}
      />
      <div className="form-row">
        <FigureField
          label={drawWords.fields.minutesOff}
          value={panel.minutesOff}
          unit={drawWords.units.minutes}
          min={0}
          max={2_000}
          onChange={(minutesOff) => change({ minutesOff: minutesOff ?? 0 }, 'minutesOff')}
        />
        <FigureField
          label={drawWords.fields.minutesOn}
          value={panel.minutesOn}
          unit={drawWords.units.minutes}
          min={0}
          max={2_000}
          onChange={(minutesOn) => change({ minutesOn: minutesOn ?? 0 }, 'minutesOn')}
        />
      </div>
      <PanelPicks
        label={drawWords.fields.offFirst}
        picked={panel.offFirst}
        without={panelId}
        onChange={(offFirst) => change({ offFirst })}
      />
      <PanelOrder panel={panel} />
      <fieldset className="picks">
        <legend className="field-label">{drawWords.fields.cautions}</legend>
        {cautions.map((caution) => (
          <Checkbox
            key={caution}
            label={cautionWords[caution]}
            checked={panel.cautions.includes(caution)}
            onChange={(on) =>
              change({
                cautions: cautions.filter((each) => (each === caution ? on : panel.cautions.includes(each))),
              })
            }
          />
        ))}
      </fieldset>
      <p className="quiet">
        {drawWords.fields.area}: {drawWords.fields.corners(panel.area.length)}
      </p>
      <Button
        disabled={map.segments.size === 0}
        onClick={() => make(proposeTags(map, { panelIds: [panelId] }), { label: 'edit.proposeTags' })}
      >
        {drawWords.tags.propose}
      </Button>
      <TextArea
        label={drawWords.fields.note}
        value={panel.note}
        maxLength={4_000}
        onChange={(note) => change({ note }, 'note')}
      />
    </section>
  );
}
