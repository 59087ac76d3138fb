import { changeNode } from '#core/map/commands/change-node.ts';
import { moveNode } from '#core/map/commands/move-node.ts';
import { nodeKinds } from '#core/map/kinds.ts';
import type { MapNode } from '#core/map/records.ts';
import { drawWords } from '../../../language/draw.ts';
import { nodeKindWords } from '../../../language/words.ts';
import { useDraw } from '../draw-context.ts';
import { optionsOf } from '../options-of.ts';
import { panelOptions } from './panel-options.ts';
import { SharedFigure, SharedNote, SharedSelect, SharedTicks } from './shared-fields.tsx';
import { useChangeEach, withWord } from './use-change-each.ts';

const axes = ['x', 'y', 'z'] as const;

/** What several plugs and parts have in common; a figure of their place brings them into one line. */
export function SeveralNodes({ nodes }: { readonly nodes: readonly MapNode[] }) {
  const { map } = useDraw();
  const change = useChangeEach(nodes, (now, { id }, { at, ...changes }) =>
    at ? moveNode(now, { nodeId: id, at }) : changeNode(now, { nodeId: id, changes }),
  );
  const panels = panelOptions(map);
  const panelIds = panels.map((panel) => panel.value);
  return (
    <>
      <SharedSelect
        label={drawWords.fields.kind}
        values={nodes.map((node) => node.kind)}
        options={optionsOf(nodeKinds, nodeKindWords)}
        onChange={(kind) => change({ kind })}
      />
      <div className="form-row">
        {axes.map((axis) => (
          <SharedFigure
            key={axis}
            label={drawWords.fields[axis]}
            values={nodes.map((node) => node.at[`${axis}Mm`])}
            unit={drawWords.units.mm}
            onChange={(mm) => change((node) => ({ at: { ...node.at, [`${axis}Mm`]: mm ?? 0 } }), axis)}
          />
        ))}
      </div>
      <SharedTicks
        label={drawWords.fields.reach}
        lists={nodes.map((node) => node.panelIds)}
        options={panels}
        onChange={(panelId, on) =>
          change((node) => ({ panelIds: withWord(panelIds, node.panelIds, panelId, on) }))
        }
      />
      <SharedNote values={nodes.map((node) => node.note)} onChange={(note) => change({ note }, 'note')} />
    </>
  );
}
