import { changeNode } from '#core/map/commands/change-node.ts';
import { joinSegments } from '#core/map/commands/join-segments.ts';
import { moveNode } from '#core/map/commands/move-node.ts';
import { nodeKinds } from '#core/map/kinds.ts';
import type { MapNode } from '#core/map/records.ts';
import { runsAtNode } from '#core/map/topology.ts';
import { drawWords } from '../../language/draw.ts';
import { nameOf } from '../../language/name-of.ts';
import { nodeKindWords } from '../../language/words.ts';
import { Button, Select, TextArea } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';
import { FigureField } from './figure-field.tsx';
import { NameField } from './name-field.tsx';
import { optionsOf } from './options-of.ts';
import { PanelPicks } from './panel-picks.tsx';

const axes = ['x', 'y', 'z'] as const;

/** A plug, splice, part or branch. */
export function NodeForm({ node }: { readonly node: MapNode }) {
  const { map, make, goTo } = useDraw();
  const change = (changes: Partial<Omit<MapNode, 'id' | 'at'>>, joinKey?: string): void => {
    make(changeNode(map, { nodeId: node.id, changes }), {
      label: 'edit.changeNode',
      ...(joinKey ? { joinKey: `${node.id}.${joinKey}` } : {}),
    });
  };
  const runs = runsAtNode(map, node.id);
  return (
    <section className="form" aria-label={node.name || nodeKindWords[node.kind]}>
      <h2>{node.name || nodeKindWords[node.kind]}</h2>
      <NameField value={node.name} onChange={(name) => change({ name }, 'name')} />
      <Select
        label={drawWords.fields.kind}
        value={node.kind}
        options={optionsOf(nodeKinds, nodeKindWords)}
        onChange={(kind) => change({ kind })}
      />
      <div className="form-row">
        {axes.map((axis) => (
          <FigureField
            key={axis}
            label={drawWords.fields[axis]}
            value={node.at[`${axis}Mm`]}
            unit={drawWords.units.mm}
            onChange={(mm) =>
              make(moveNode(map, { nodeId: node.id, at: { ...node.at, [`${axis}Mm`]: mm ?? 0 } }), {
                label: 'edit.moveThings',
                joinKey: `${node.id}.${axis}`,
              })
            }
          />
        ))}
      </div>
      <PanelPicks
        label={drawWords.fields.reach}
        picked={node.panelIds}
        onChange={(panelIds) => change({ panelIds })}
      />
      <TextArea
        label={drawWords.fields.note}
        value={node.note}
        maxLength={4_000}
        onChange={(note) => change({ note }, 'note')}
      />
      {runs.length > 0 ? (
        <div>
          <h3>{drawWords.lists.runs}</h3>
          <div className="button-row">
            {runs.map((run) => (
              <Button key={run.id} onClick={() => goTo([run.id])}>
                {nameOf(map, run.id)}
              </Button>
            ))}
            {node.kind === 'branch' && runs.length === 2 ? (
              <Button
                onClick={() =>
                  make(joinSegments(map, { nodeId: node.id }), { label: 'edit.joinSegments', select: [] })
                }
              >
                {drawWords.fields.join}
              </Button>
            ) : null}
          </div>
        </div>
      ) : null}
    </section>
  );
}
