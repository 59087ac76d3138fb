import { dependents } from '#core/map/dependents.ts';
import { dependentWords, drawWords } from '../../language/draw.ts';
import { nameOf } from '../../language/name-of.ts';
import { words } from '../../language/words.ts';
import { Button, Notice } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';

/** Names what else would go or change before anything is deleted. */
export function DeleteAsk({
  ids,
  onSure,
  onKeep,
}: {
  readonly ids: readonly string[];
  readonly onSure: () => void;
  readonly onKeep: () => void;
}) {
  const { map } = useDraw();
  const touched = dependents(map, ids);
  if (!touched.ok) return null;
  return (
    <Notice
      tone="caution"
      title={drawWords.deleteAsks(ids.map((id) => nameOf(map, id)).join(', '))}
      actions={
        <>
          <Button weight="main" onClick={onSure}>
            {drawWords.deleteSure}
          </Button>
          <Button onClick={onKeep}>{words.cancel}</Button>
        </>
      }
    >
      <ul>
        {touched.value.map(({ thing, effect }) => (
          <li key={`${thing} ${effect}`}>
            {nameOf(map, thing)} {dependentWords[effect]}
          </li>
        ))}
      </ul>
    </Notice>
  );
}
