import { useMemo, useRef, useState } from 'react';
import { Board } from '../../board/board.tsx';
import type { BoardPointer } from '../../board/board-pointer.ts';
import type { Camera, ScreenPoint } from '../../board/camera.ts';
import { MarksKey } from '../../board/marks-key.tsx';
import { findWords } from '../../language/find.ts';
import type { Theme } from '../../theme/tokens.ts';
import { useFind } from './find-context.ts';
import { litOf } from './lit-of.ts';
import { saidMap } from './said-map.ts';
import { stretchUnder } from './stretch-under.ts';

/** A press that moves less than this is a click, not a drag of the view. */
const clickPx = 6;

/** The board with the searched circuit lit; pointing and clicking work on its stretches. */
export function JobBoard({ theme }: { readonly theme: Theme }) {
  const { open, standing, pointed, point, pick, picked, say } = useFind();
  const [camera, setCamera] = useState<Camera | null>(null);
  const pressed = useRef<ScreenPoint | null>(null);
  const { line, ranking, map } = open;
  const lit = useMemo(
    () => (line ? litOf(line, ranking, standing, picked ? [...pointed, picked] : pointed) : null),
    [line, ranking, standing, pointed, picked],
  );
  const shown = useMemo(() => saidMap(map, say), [map, say]);
  const onPointer = (pointer: BoardPointer): void => {
    if (!line) return;
    if (pointer.type === 'leave') point([]);
    const under = stretchUnder(line, ranking?.posterior.stretches ?? [], pointer.hits);
    if (pointer.type === 'move') point(under ? [under] : []);
    if (pointer.type === 'down') pressed.current = pointer.screen;
    if (pointer.type !== 'up') return;
    const from = pressed.current;
    pressed.current = null;
    if (!from || !under) return;
    if (Math.hypot(pointer.screen.xPx - from.xPx, pointer.screen.yPx - from.yPx) < clickPx) pick(under);
  };
  return (
    <Board
      map={shown}
      theme={theme}
      camera={camera}
      onCamera={setCamera}
      label={findWords.boardLabel}
      lit={lit}
      cursor={pointed.length > 0 ? 'pointer' : 'default'}
      onPointer={onPointer}
    >
      <MarksKey theme={theme} withJob />
    </Board>
  );
}
