import { type Bounds, boundsOf } from '../../geometry/bounds.ts';
import { flattenOutline } from '../../geometry/outline-curve.ts';
import type { Chance } from '../../quantity/chance.ts';
import type { PanelId } from '../../quantity/id.ts';
import { fail, type Result } from '../../quantity/result.ts';
import type { StarterStyle } from '../body-proportions.ts';
import { usualBodySize } from '../body-starters.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import { nextOrder } from '../next-order.ts';
import { panelDefaults } from '../panel-defaults.ts';
import { panelPlace } from '../panel-places.ts';
import type { Patch } from '../patch.ts';

/**
 * Adds the panels a body style usually has, or only those with the given keys, as areas fitted to the
 * drawn shell (without one, to the style's usual size from x = 0), with their minutes, cautions and what
 * must be off first. A panel whose name the map has already is not added again, and the others wait for
 * that one. Refuses a key the style does not have (`not-found`).
 * @example
 * addDefaultPanels(sample.map, { style: 'van', keys: ['left-front-tread', 'left-kick-trim'] }, seededChance(1)).value.added.map((panel) => panel.name) // => ['Left front tread plate', 'Left kick trim']
 */
export function addDefaultPanels(
  map: MapDocument,
  input: { readonly style: StarterStyle; readonly keys?: readonly string[] },
  chance: Chance,
): Result<Patch> {
  const all = panelDefaults(input.style);
  for (const key of input.keys ?? []) {
    if (!all.some((panel) => panel.key === key)) return fail({ code: 'not-found', thing: key });
  }
  const named = new Map([...map.panels.values()].map((panel) => [panel.name, panel.id]));
  const draft = draftOf(map);
  const idOf = new Map<string, PanelId>();
  for (const { key, name } of all) {
    const here = named.get(name);
    if (here) idOf.set(key, here);
  }
  const wanted = all.filter(({ key }) => !idOf.has(key) && (input.keys?.includes(key) ?? true));
  const taken = new Set<PanelId>();
  for (const { key } of wanted) {
    let id: PanelId;
    do id = draft.freshId('panel', chance);
    while (taken.has(id));
    taken.add(id);
    idOf.set(key, id);
  }
  const shell = shellBounds(map, input.style);
  let order = nextOrder(map.panels);
  for (const { key, offFirst, ...panel } of wanted) {
    const firsts = offFirst.flatMap((first) => idOf.get(first) ?? []);
    draft.put({
      ...panel,
      cautions: [...panel.cautions],
      id: idOf.get(key) as PanelId,
      area: [...panelPlace(input.style, key, shell, map.details.driveSide)],
      offFirst: firsts,
      note: '',
      order: order++,
    });
  }
  return draft.finish();
}

/** The rectangle round the shell, else round all outlines, else a car of the usual size. */
function shellBounds(map: MapDocument, style: StarterStyle): Bounds {
  const outlines = [...map.outlines.values()];
  const shells = outlines.filter((outline) => outline.kind === 'shell');
  const drawn = boundsOf(
    (shells.length > 0 ? shells : outlines).flatMap(({ vertices, closed }) =>
      flattenOutline(vertices, closed),
    ),
  );
  if (drawn && drawn.maxXMm > drawn.minXMm && drawn.maxYMm > drawn.minYMm) return drawn;
  const { lengthMm, widthMm } = usualBodySize(style);
  const centre = map.details.centreLineYMm;
  return { minXMm: 0, maxXMm: lengthMm, minYMm: centre - widthMm / 2, maxYMm: centre + widthMm / 2 };
}
