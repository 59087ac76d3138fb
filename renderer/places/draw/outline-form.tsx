import { changeOutline } from '#core/map/commands/change-outline.ts';
import { closeOutline } from '#core/map/commands/close-outline.ts';
import { mirrorOutline } from '#core/map/commands/mirror-outline.ts';
import { outlineKinds } from '#core/map/kinds.ts';
import type { Outline } from '#core/map/records.ts';
import { newId } from '#core/quantity/id.ts';
import { drawWords } from '../../language/draw.ts';
import { outlineKindWords } from '../../language/words.ts';
import { Button, Checkbox, Select } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';
import { NameField } from './name-field.tsx';
import { optionsOf } from './options-of.ts';
import { OutlineCorners } from './outline-corners.tsx';

/** An outline of the car or of something in it. */
export function OutlineForm({ outline }: { readonly outline: Outline }) {
  const { map, make } = useDraw();
  const outlineId = outline.id;
  return (
    <section className="form" aria-label={outline.name}>
      <h2>{outline.name}</h2>
      <NameField
        value={outline.name}
        onChange={(name) =>
          make(changeOutline(map, { outlineId, changes: { name } }), {
            label: 'edit.changeOutline',
            joinKey: `${outlineId}.name`,
          })
        }
      />
      <Select
        label={drawWords.fields.kind}
        value={outline.kind}
        options={optionsOf(outlineKinds, outlineKindWords)}
        onChange={(kind) =>
          make(changeOutline(map, { outlineId, changes: { kind } }), { label: 'edit.changeOutline' })
        }
      />
      <Checkbox
        label={drawWords.fields.closed}
        checked={outline.closed}
        onChange={(closed) => make(closeOutline(map, { outlineId, closed }), { label: 'edit.changeOutline' })}
      />
      <OutlineCorners outline={outline} />
      <div className="button-row">
        <Button
          onClick={() => {
            const copyId = newId('outline', Math.random);
            make(mirrorOutline(map, { outlineId, how: 'copy', copyId }), {
              label: 'edit.mirrorOutline',
              select: [copyId],
            });
          }}
        >
          {drawWords.fields.mirror}
        </Button>
        {outline.closed ? null : (
          <Button
            onClick={() =>
              make(mirrorOutline(map, { outlineId, how: 'complete' }), { label: 'edit.mirrorOutline' })
            }
          >
            {drawWords.fields.complete}
          </Button>
        )}
      </div>
    </section>
  );
}
