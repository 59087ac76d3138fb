import { memo } from 'react';
import { Layer, Shape, Stage } from 'react-konva/es/ReactKonvaCore.js';
import type { BoardSheets } from './stage.ts';

/**
 * The stage: one layer for each sheet, lowest first, and in each one shape that paints. It is made once and
 * the sheets are then painted directly, so that moving the view asks nothing of React. Hits are found
 * through the board's own index, so nothing here listens.
 */
export const BoardLayers = memo(function BoardLayers({ sheets }: { readonly sheets: BoardSheets }) {
  const { far, ground, top } = sheets;
  // A change of the stage's size would wipe every layer; each sheet sees to a size of its own instead.
  return (
    <Stage width={1} height={1} listening={false}>
      {[far, ...ground, top].map((sheet, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the sheets never change their order.
        <Layer key={i} ref={sheet.hold} listening={false} clearBeforeDraw={false}>
          <Shape sceneFunc={sheet.sceneFunc} listening={false} perfectDrawEnabled={false} />
        </Layer>
      ))}
    </Stage>
  );
});
