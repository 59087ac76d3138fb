import { useMemo, useRef, useState } from 'react';
import type { StretchProbability } from '#core/job/ranking.ts';
import { Board } from '../../board/board.tsx';
import type { BoardPointer } from '../../board/board-pointer.ts';
import type { Camera, ScreenPoint } from '../../board/camera.ts';
import { MarksKey } from '../../board/marks-key.tsx';
import { findWords } from '../../language/find.ts';
import type { Theme } from '../../theme/tokens.ts';
import { useFind } from './find-context.ts';
import { litOf } from './lit-of.ts';
import { PointedPlace } from './pointed-place.tsx';
import { saidMap } from './said-map.ts';
import { stretchUnder } from './stretch-under.ts';

/** A press that moves less than this is a click, not a drag of the view. */
const clickPx = 6;
const notResting = { under: null, right: false } as const;

/** The board with the searched circuit lit; pointing and clicking work on its stretches. */
export function JobBoard({ theme }: { readonly theme: Theme }) {
  const { open, standing, pointed, point, pick, picked, say } = useFind();
  const [camera, setCamera] = useState<Camera | null>(null);
  const pressed = useRef<ScreenPoint | null>(null);
  const frame = useRef<HTMLDivElement>(null);
  const [resting, setResting] = useState<{
    readonly under: StretchProbability | null;
    readonly right: boolean;
  }>(notResting);
  const { line, ranking, map } = open;
  const lit = useMemo(
    () => (line ? litOf(line, ranking, standing, picked ? [...pointed, picked] : pointed) : null),
    [line, ranking, standing, pointed, picked],
  );
  const shown = useMemo(() => saidMap(map, say), [map, say]);
  const onPointer = (pointer: BoardPointer): void => {
    if (!line) return;
    if (pointer.type === 'leave') {
      point([]);
      setResting(notResting);
    }
    const under = stretchUnder(line, ranking?.posterior.stretches ?? [], pointer.hits);
    if (pointer.type === 'move') {
      point(under ? [under] : []);
      const middlePx = (frame.current?.parentElement?.clientWidth ?? 0) / 2;
      const right = pointer.screen.xPx > middlePx;
      const next = pressed.current ? null : under;
      setResting((before) =>
        before.under === next && before.right === right ? before : { under: next, right },
      );
    }
    if (pointer.type === 'down') {
      pressed.current = pointer.screen;
      setResting(notResting);
    }
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
      <div ref={frame}>
        <PointedPlace under={resting.under} pointerRight={resting.right} />
      </div>
      <MarksKey theme={theme} withJob />
    </Board>
  );
}
