import { useState } from 'react';
import { dependents } from '#core/map/dependents.ts';
import { dependentWords, drawWords } from '../../language/draw.ts';
import { nameOf } from '../../language/name-of.ts';
import { words } from '../../language/words.ts';
import { Button, Disclosure, Notice } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';

/** So that the buttons stay in sight, more than this is folded away. */
const mostInSight = 8;
const mostNames = 5;

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
  const [open, setOpen] = useState(false);
  const touched = dependents(map, ids);
  if (!touched.ok) return null;
  const lines = touched.value.map(({ thing, effect }) => (
    <li key={`${thing} ${effect}`}>
      {nameOf(map, thing)} {dependentWords[effect]}
    </li>
  ));
  return (
    <Notice
      tone="caution"
      title={drawWords.deleteAsks(namesOf(ids.map((id) => nameOf(map, id))))}
      actions={
        <>
          <Button weight="main" onClick={onSure}>
            {drawWords.deleteSure}
          </Button>
          <Button onClick={onKeep}>{words.cancel}</Button>
        </>
      }
    >
      <ul>{lines.slice(0, mostInSight)}</ul>
      {lines.length > mostInSight ? (
        <Disclosure label={drawWords.andMore(lines.length - mostInSight)} open={open} onToggle={setOpen}>
          <ul>{lines.slice(mostInSight)}</ul>
        </Disclosure>
      ) : null}
    </Notice>
  );
}

/** The first few names, and how many more there are. */
function namesOf(names: readonly string[]): string {
  const first = names.slice(0, mostNames).join(', ');
  return names.length > mostNames ? `${first} ${drawWords.andMore(names.length - mostNames)}` : first;
}
