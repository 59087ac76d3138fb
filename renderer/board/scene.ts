import type { MapDocument } from '#core/map/map-document.ts';
import type { MapNode, Outline, Panel, RubSpot, Segment } from '#core/map/records.ts';
import { compareText } from '#core/quantity/compare-text.ts';
import { idKind } from '#core/quantity/id.ts';
import type { BoardColours } from '../theme/tokens.ts';
import { type BoardIndex, idsInBox, moreInBox } from './board-index.ts';
import { type Camera, type ScreenSize, viewBox } from './camera.ts';
import type { Lit } from './lit.ts';
import type { Overlay } from './overlay.ts';
import { noUnderlays, type UnderlayPicture } from './underlay-picture.ts';

/** All a painter may look at. Only what is in view is listed, each list in its drawing order. */
export interface Scene {
  readonly map: MapDocument;
  readonly camera: Camera;
  readonly size: ScreenSize;
  readonly colours: BoardColours;
  readonly lit: Lit | null;
  readonly selection: ReadonlySet<string>;
  readonly hover: string | null;
  readonly overlay: Overlay;
  /** Lowest first. */
  readonly underlays: readonly UnderlayPicture[];
  readonly fontFamily: string;
  /** What is painted beyond each edge of the board, to be at hand when the view moves. `size` includes it. */
  readonly marginPx: number;
  /** So much is in view that marks would run into one another: lines and dots only, as thin as can be. */
  readonly crowded: boolean;
  readonly outlines: readonly Outline[];
  readonly panels: readonly Panel[];
  readonly segments: readonly Segment[];
  readonly rubSpots: readonly RubSpot[];
  readonly nodes: readonly MapNode[];
}

export type Painter = (c: CanvasRenderingContext2D, scene: Scene) => void;

export interface SceneInput {
  readonly index: BoardIndex;
  readonly camera: Camera;
  readonly size: ScreenSize;
  readonly colours: BoardColours;
  readonly lit: Lit | null;
  readonly selection: readonly string[];
  readonly hover: string | null;
  readonly overlay: Overlay;
  readonly underlays?: readonly UnderlayPicture[];
  readonly fontFamily: string;
  readonly marginPx?: number;
  /** Ids of what is left out of the lists, because it is painted elsewhere. */
  readonly without?: ReadonlySet<string>;
  /** Ids to list in place of what is in view. */
  readonly only?: ReadonlySet<string>;
}

/** Marks and names reach this far beyond their place. */
const reachPx = 80;

/** A large car has some 300 runs; four times that in view and no mark can be told from the next. */
const crowdedFrom = 1_200;

/** Gathers what is in view through the index. */
export function sceneOf(input: SceneInput): Scene {
  const { index, camera, size, marginPx = 0 } = input;
  const map = index.map;
  const outlines: Outline[] = [];
  const panels: Panel[] = [];
  const segments: Segment[] = [];
  const rubSpots: RubSpot[] = [];
  const nodes: MapNode[] = [];
  const put = <T>(list: T[], record: T | undefined): void => {
    if (record !== undefined) list.push(record);
  };
  for (const id of input.only ?? idsInBox(index, viewBox(camera, size, reachPx))) {
    if (input.without?.has(id)) continue;
    switch (idKind(id)) {
      case 'outline':
        put(outlines, map.outlines.get(id as `outline:${string}`));
        break;
      case 'panel':
        put(panels, map.panels.get(id as `panel:${string}`));
        break;
      case 'segment':
        put(segments, map.segments.get(id as `segment:${string}`));
        break;
      case 'rub-spot':
        put(rubSpots, map.rubSpots.get(id as `rub-spot:${string}`));
        break;
      case 'node':
        put(nodes, map.nodes.get(id as `node:${string}`));
        break;
    }
  }
  const byOrder = <T extends { readonly id: string; readonly order: number }>(a: T, b: T): number =>
    a.order - b.order || compareText(a.id, b.id);
  outlines.sort(byOrder);
  panels.sort(byOrder);
  return {
    map,
    camera,
    size,
    marginPx,
    colours: input.colours,
    lit: input.lit,
    selection: new Set(input.selection),
    hover: input.hover,
    overlay: input.overlay,
    underlays: input.underlays ?? noUnderlays,
    fontFamily: input.fontFamily,
    crowded: segments.length + nodes.length > crowdedFrom && isCrowded(input),
    outlines,
    panels,
    segments,
    rubSpots,
    nodes,
  };
}

/** Judged by the board alone, so that a margin does not change how the same view looks. */
function isCrowded({ index, camera, size, marginPx = 0 }: SceneInput): boolean {
  const box = viewBox(camera, size, reachPx - marginPx);
  return moreInBox(index, box, crowdedFrom, (id) => id.startsWith('segment:') || id.startsWith('node:'));
}
