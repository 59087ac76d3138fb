import { useStore } from 'zustand';
import { mirrorThings } from '#core/map/commands/mirror-things.ts';
import { idKind } from '#core/quantity/id.ts';
import { drawWords } from '../../../language/draw.ts';
import { severalWords } from '../../../language/draw-several.ts';
import { Button } from '../../../parts/index.ts';
import { mapClipboard } from '../../../session/map-clipboard.ts';
import { useDraw } from '../draw-context.ts';
import { AlignActions } from './align-actions.tsx';
import { picksOf } from './paste-at.ts';
import './thing-actions.css';

/** Kinds that have a place and so an image on the other side. */
const mirrored = new Set<string>(['outline', 'node', 'segment', 'panel', 'rub-spot']);

/** What can be done with whatever is picked, of whatever kind. */
export function ThingActions() {
  const { map, open, make, remove, copying } = useDraw();
  const { selection } = open;
  const copied = useStore(mapClipboard, ({ text }) => text !== null);
  const paste = copied ? <Button onClick={copying.paste}>{severalWords.paste}</Button> : null;
  if (selection.length === 0) return paste && <div className="button-row">{paste}</div>;
  const sided = selection.filter((id) => mirrored.has(idKind(id)));
  const only = selection.length === 1 ? selection[0] : undefined;
  const mirror = (how: 'copy' | 'turn'): void => {
    const patch = mirrorThings(map, { ids: sided, how }, Math.random);
    const select = how === 'copy' && patch.ok ? picksOf(patch.value) : selection;
    make(patch, { label: 'edit.mirrorThings', select });
  };
  return (
    <div className="thing-actions">
      {selection.length > 1 ? <AlignActions ids={selection} /> : null}
      <div className="button-row details-end">
        <Button onClick={copying.copy}>{severalWords.copy}</Button>
        <Button onClick={copying.duplicate}>{severalWords.duplicate}</Button>
        {paste}
        {sided.length > 0 && !(only && idKind(only) === 'outline') ? (
          <>
            <Button onClick={() => mirror('copy')}>{severalWords.mirrorCopy}</Button>
            <Button onClick={() => mirror('turn')}>{only ? severalWords.turnOne : severalWords.turn}</Button>
          </>
        ) : null}
        <Button onClick={() => remove(selection)}>{drawWords.deleteOne}</Button>
      </div>
    </div>
  );
}
