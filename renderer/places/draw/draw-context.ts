import { createContext, useContext } from 'react';
import type { Bounds } from '#core/geometry/bounds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Patch } from '#core/map/patch.ts';
import { assert } from '#core/quantity/assert.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { Result } from '#core/quantity/result.ts';
import type { Overlay } from '../../board/overlay.ts';
import type { MachineSettings } from '../../session/machine-settings.ts';
import type { EditNote, MapOpen, MapSession } from '../../session/map-session.ts';
import type { ToolName } from '../../tools/tool-name.ts';
import type { Copying } from './copy/use-copying.ts';
import type { Layers } from './layers.ts';
import type { PictureIntake } from './use-picture-intake.ts';

/** What every part of the drawing place works with. */
export interface Draw {
  readonly open: MapOpen;
  readonly map: MapDocument;
  readonly session: MapSession;
  readonly lengths: MachineSettings['lengths'];
  /** What the last edit was refused for; gone with the next one that works. */
  readonly problem: Problem | null;
  /** Makes an edit; says whether it was made. */
  readonly make: (patch: Result<Patch>, note: EditNote) => boolean;
  /** Picks things and brings them into view. */
  readonly goTo: (ids: readonly string[]) => void;
  /** Brings a part of the plan into view; nothing without one. */
  readonly lookAt: (box: Bounds | null) => void;
  /** Lays marks over the board, until others take their place. */
  readonly mark: (marks: Overlay) => void;
  /** Deletes things, after naming what depends on them. */
  readonly remove: (ids: readonly string[]) => void;
  /** Takes up a drawing action. */
  readonly takeTool: (name: ToolName) => void;
  /** Brings the whole drawing into view, as it stands at that moment. */
  readonly showAll: () => void;
  readonly copying: Copying;
  readonly pictureIntake: PictureIntake;
  /** SHA-256 of pictures whose bytes this machine does not have. */
  readonly picturesGone: ReadonlySet<string>;
  readonly layers: Layers;
  readonly setLayers: (layers: Layers) => void;
}

export const DrawContext = createContext<Draw | null>(null);

export function useDraw(): Draw {
  const draw = useContext(DrawContext);
  assert(draw, 'inside the drawing place');
  return draw;
}
