import { changePanel } from '#core/map/commands/change-panel.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Patch } from '#core/map/patch.ts';
import type { PanelId } from '#core/quantity/id.ts';
import { fail, type Result } from '#core/quantity/result.ts';
import { nameOf } from '../../../language/name-of.ts';
import { orderWords } from '../../../language/order.ts';

/** Puts the arrow from the one panel to the other in, or takes it out where it is. */
export function turnedArrow(map: MapDocument, first: PanelId, waits: PanelId): Result<Patch> {
  const waiting = map.panels.get(waits);
  if (!waiting) return fail({ code: 'not-found', thing: waits });
  const offFirst = waiting.offFirst.includes(first)
    ? waiting.offFirst.filter((id) => id !== first)
    : [...waiting.offFirst, first];
  return changePanel(map, { panelId: waits, changes: { offFirst } });
}

/** Why an arrow cannot be, naming the ring it would close; null for any other reason. */
export function ringSentence(
  map: MapDocument,
  first: PanelId,
  waits: PanelId,
  patch: Result<Patch>,
): string | null {
  if (patch.ok || patch.problem.code !== 'panel-cycle') return null;
  if (first === waits) return orderWords.self;
  const names = patch.problem.panels.map((id) => nameOf(map, id));
  return orderWords.ring(nameOf(map, first), nameOf(map, waits), names);
}
