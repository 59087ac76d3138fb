import type { MapDocument } from '#core/map/map-document.ts';
import type { PanelId } from '#core/quantity/id.ts';
import { panelKindWords } from '../../../language/words.ts';

/** The panels of a map as choices, in their order; some may be left out. */
export function panelOptions(
  map: MapDocument,
  without: readonly PanelId[] = [],
): readonly { readonly value: PanelId; readonly label: string }[] {
  return [...map.panels.values()]
    .filter((panel) => !without.includes(panel.id))
    .sort((a, b) => a.order - b.order)
    .map((panel) => ({ value: panel.id, label: panel.name || panelKindWords[panel.kind] }));
}
