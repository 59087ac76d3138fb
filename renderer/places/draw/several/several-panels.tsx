import { changePanel } from '#core/map/commands/change-panel.ts';
import { cautions, panelKinds } from '#core/map/kinds.ts';
import type { Panel } from '#core/map/records.ts';
import { drawWords } from '../../../language/draw.ts';
import { cautionWords, panelKindWords } from '../../../language/words.ts';
import { useDraw } from '../draw-context.ts';
import { optionsOf } from '../options-of.ts';
import { panelOptions } from './panel-options.ts';
import { SharedFigure, SharedNote, SharedSelect, SharedTicks } from './shared-fields.tsx';
import { useChangeEach, withWord } from './use-change-each.ts';

const words = drawWords.fields;

/** What several panels have in common. */
export function SeveralPanels({ panels }: { readonly panels: readonly Panel[] }) {
  const { map } = useDraw();
  const change = useChangeEach(panels, (now, { id }, changes) => changePanel(now, { panelId: id, changes }));
  const others = panelOptions(
    map,
    panels.map((panel) => panel.id),
  );
  return (
    <>
      <SharedSelect
        label={words.kind}
        values={panels.map((panel) => panel.kind)}
        options={optionsOf(panelKinds, panelKindWords)}
        onChange={(kind) => change({ kind })}
      />
      <div className="form-row">
        <SharedFigure
          label={words.minutesOff}
          values={panels.map((panel) => panel.minutesOff)}
          unit={drawWords.units.minutes}
          min={0}
          max={2_000}
          onChange={(minutesOff) => change({ minutesOff: minutesOff ?? 0 }, 'minutesOff')}
        />
        <SharedFigure
          label={words.minutesOn}
          values={panels.map((panel) => panel.minutesOn)}
          unit={drawWords.units.minutes}
          min={0}
          max={2_000}
          onChange={(minutesOn) => change({ minutesOn: minutesOn ?? 0 }, 'minutesOn')}
        />
      </div>
      <SharedTicks
        label={words.offFirst}
        lists={panels.map((panel) => panel.offFirst)}
        options={others}
        onChange={(first, on) =>
          change((panel) => {
            const rest = panel.offFirst.filter((id) => id !== first);
            return { offFirst: on ? [...rest, first] : rest };
          })
        }
      />
      <SharedTicks
        label={words.cautions}
        lists={panels.map((panel) => panel.cautions)}
        options={optionsOf(cautions, cautionWords)}
        onChange={(caution, on) =>
          change((panel) => ({ cautions: withWord(cautions, panel.cautions, caution, on) }))
        }
      />
      <SharedNote values={panels.map((panel) => panel.note)} onChange={(note) => change({ note }, 'note')} />
    </>
  );
}
