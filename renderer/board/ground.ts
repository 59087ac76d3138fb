import type { MapDocument } from '#core/map/map-document.ts';
import { devicePixels, type Sheet, type SheetPlace } from './board-sheet.ts';
import { type Camera, panBy, type ScreenSize } from './camera.ts';
import { changedThings } from './changed-things.ts';
import { type PaintWork, paintWork } from './paint-work.ts';
import { type SceneInput, sceneOf } from './scene.ts';

/** A picture of the ground, finished or being painted. */
interface Picture {
  readonly sheet: Sheet;
  readonly input: SceneInput;
  readonly map: MapDocument;
  readonly ratio: number;
  readonly marginPx: number;
  readonly without: ReadonlySet<string>;
  readonly crowded: boolean;
  /** How many things are in it. */
  readonly things: number;
}

/** What the user is doing, and what a frame may spend on the ground meanwhile. */
export interface Motion {
  readonly moving: boolean;
  readonly budgetMs: number;
  /** A picture that takes no longer is painted at one go, and again at every frame. */
  readonly wholeMs: number;
}

export interface Ground {
  /** Paints for one frame's share of time and shows the newest finished picture where the view has it now. */
  readonly step: (wanted: SceneInput, motion: Motion) => void;
  /** Whether there is more to paint for this view. */
  readonly unfinished: (wanted: SceneInput, moving: boolean) => boolean;
  /** Whether some of the view lies beyond the shown picture. */
  readonly uncovered: (wanted: SceneInput) => boolean;
  /** Whether pictures take longer than a frame, so that the view can outrun them. */
  readonly slow: () => boolean;
  /** Ids of what the shown picture lacks or shows in an earlier state. */
  readonly lacking: (wanted: SceneInput) => ReadonlySet<string>;
  readonly crowded: () => boolean;
}

/** Painted beyond each edge once a picture takes more than a frame. */
const wideMarginPx = 256;
/** Something this near to the end of the margin starts the next picture. */
const nearEdgePx = 140;
/** A picture shown larger or smaller than this is painted anew while the view still moves. */
const mostEnlarged = 8;
const mostShrunk = 0.25;
/** More than this is not worth painting on its own at every frame. */
export const mostLacking = 200;
/**
 * With more than this in view nothing is painted at one go. What the browser does with the strokes takes longer
 * than making them, and cannot be timed from here.
 */
const mostWhole = 300;
const none: ReadonlySet<string> = new Set();

/**
 * The quiet part of the board on two sheets: one shows the last finished picture, moved and stretched to
 * where the view is; on the other the next is painted a few steps a frame. A picture that is done
 * within one frame's share is shown in that frame, so that a small drawing is always sharp.
 */
export function boardGround(sheets: readonly [Sheet, Sheet]): Ground {
  let shown: Picture | null = null;
  let next: { readonly picture: Picture; readonly work: PaintWork } | null = null;
  let marginPx = 0;
  let lackingOf: { shown: Picture; map: MapDocument; ids: ReadonlySet<string> } | null = null;

  const lacking = (wanted: SceneInput): ReadonlySet<string> => {
    if (!shown) return none;
    const { map } = wanted.index;
    if (lackingOf?.shown === shown && lackingOf.map === map) return lackingOf.ids;
    const changed = changedThings(shown.map, map);
    const ids = shown.without.size === 0 ? changed : new Set([...changed, ...shown.without]);
    lackingOf = { shown, map, ids };
    return ids;
  };

  /** What is left out of the next picture; null when the shown one will do for now. */
  const wantsNext = (wanted: SceneInput, moving: boolean): ReadonlySet<string> | null => {
    if (!shown || shown.ratio !== devicePixels() || !sameLook(shown.input, wanted)) return none;
    const ids = lacking(wanted);
    const apart = moving && marginPx > 0 && ids.size <= mostLacking ? ids : none;
    if (ids.size > 0 && !(moving && within(ids, shown.without))) return apart;
    if (shown.input.camera === wanted.camera) return !moving && shown.marginPx < marginPx ? none : null;
    return !moving || marginPx === 0 || !serves(shown, wanted) ? apart : null;
  };

  const begin = (wanted: SceneInput, without: ReadonlySet<string>): void => {
    const sheet = shown?.sheet === sheets[0] ? sheets[1] : sheets[0];
    const size = widened(wanted.size, marginPx);
    const camera = panBy(wanted.camera, marginPx, marginPx);
    const scene = sceneOf({ ...wanted, camera, size, marginPx, without });
    sheet.clear(size);
    const picture = {
      sheet,
      input: wanted,
      map: wanted.index.map,
      ratio: devicePixels(),
      marginPx,
      without,
      crowded: scene.crowded,
      things: scene.segments.length + scene.nodes.length + scene.panels.length + scene.rubSpots.length,
    };
    next = { picture, work: paintWork(sheet, scene) };
  };

  return {
    lacking,
    crowded: () => shown?.crowded ?? false,
    slow: () => marginPx > 0,
    uncovered: (wanted) => shown !== null && !covers(shown, wanted, 0),
    unfinished: (wanted, moving) => next !== null || wantsNext(wanted, moving) !== null,
    step: (wanted, { moving, budgetMs, wholeMs }) => {
      const startMs = performance.now();
      let begun = false;
      if (!next) {
        const without = wantsNext(wanted, moving);
        if (without) {
          begin(wanted, without);
          begun = true;
        }
      }
      if (next) {
        // A view that was painted whole at every frame so far may take a little more before that changes.
        const atOnce = begun && marginPx === 0 && next.picture.things <= mostWhole;
        const shareMs = atOnce ? wholeMs : budgetMs;
        // The first picture of all is waited for; nothing else can be shown.
        next.work.go(shown ? startMs + shareMs : Number.POSITIVE_INFINITY);
        if (next.work.done()) {
          const quick = begun && next.picture.things <= mostWhole && performance.now() - startMs <= shareMs;
          marginPx = quick ? 0 : wideMarginPx;
          const before: Picture | null = shown;
          shown = next.picture;
          next = null;
          before?.sheet.lay(null);
        }
      }
      if (shown) shown.sheet.lay(placeOf(shown, wanted.camera));
    },
  };
}

const widened = ({ widthPx, heightPx }: ScreenSize, marginPx: number): ScreenSize => ({
  widthPx: widthPx + 2 * marginPx,
  heightPx: heightPx + 2 * marginPx,
});

const within = (ids: ReadonlySet<string>, others: ReadonlySet<string>): boolean => {
  for (const id of ids) if (!others.has(id)) return false;
  return true;
};

/** The same drawing otherwise: theme, light, type and size; not where one looks, nor what an edit changed. */
export function sameLook(input: SceneInput, wanted: SceneInput): boolean {
  const apart = new Set(['index', 'camera', 'selection', 'hover', 'overlay', 'size']);
  return (
    input.size.widthPx === wanted.size.widthPx &&
    input.size.heightPx === wanted.size.heightPx &&
    (Object.keys(wanted) as (keyof SceneInput)[]).every((key) => apart.has(key) || input[key] === wanted[key])
  );
}

/** Whether a picture still serves a view: not too far stretched and with some margin left on every side. */
function serves(picture: Picture, wanted: SceneInput): boolean {
  const stretched = wanted.camera.pxPerMm / picture.input.camera.pxPerMm;
  if (stretched > mostEnlarged || stretched < mostShrunk) return false;
  // Zooming out always uncovers the edges; they come when the view rests.
  return stretched < 1 || covers(picture, wanted, nearEdgePx);
}

/** Whether a picture reaches at least so far beyond every edge of a view. */
function covers(picture: Picture, { camera, size }: SceneInput, byPx: number): boolean {
  const { xPx, yPx, stretched } = placeOf(picture, camera);
  const { widthPx, heightPx } = widened(picture.input.size, picture.marginPx);
  return (
    xPx <= -byPx &&
    yPx <= -byPx &&
    xPx + stretched * widthPx >= size.widthPx + byPx &&
    yPx + stretched * heightPx >= size.heightPx + byPx
  );
}

/** Where a view has a picture now. */
function placeOf({ input, marginPx, ratio }: Picture, camera: Camera): SheetPlace {
  const stretched = camera.pxPerMm / input.camera.pxPerMm;
  const whole = (px: number): number => (stretched === 1 ? Math.round(px * ratio) / ratio : px);
  return {
    xPx: whole(camera.xPx - stretched * (input.camera.xPx + marginPx)),
    yPx: whole(camera.yPx - stretched * (input.camera.yPx + marginPx)),
    stretched,
  };
}
