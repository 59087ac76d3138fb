import { compareText } from '../quantity/compare-text.ts';
import type { PanelId } from '../quantity/id.ts';
import { samePlaceMm } from '../quantity/tolerance.ts';
import type { PanelTag } from './records.ts';

const inOrder = (a: PanelTag, b: PanelTag): number =>
  a.fromMm - b.fromMm || a.toMm - b.toMm || compareText(a.panelId, b.panelId);

/**
 * Tags in their normal order, with those of one panel and one standing (confirmed or not) that touch or
 * overlap made into one. Tags shorter than a tape can show are dropped. O(n log n).
 * @example
 * mergedTags([{ panelId: 'panel:a', fromMm: 50, toMm: 90, confirmed: true }, { panelId: 'panel:a', fromMm: 0, toMm: 50, confirmed: true }]) // => [{ panelId: 'panel:a', fromMm: 0, toMm: 90, confirmed: true }]
 */
export function mergedTags(tags: readonly PanelTag[]): PanelTag[] {
  const open = new Map<string, PanelTag>();
  const merged: PanelTag[] = [];
  for (const tag of [...tags].sort(inOrder)) {
    if (tag.toMm - tag.fromMm < samePlaceMm) continue;
    const key = `${tag.panelId} ${tag.confirmed}`;
    const last = open.get(key);
    if (last && tag.fromMm <= last.toMm + samePlaceMm) {
      open.set(key, { ...last, toMm: Math.max(last.toMm, tag.toMm) });
    } else {
      if (last) merged.push(last);
      open.set(key, tag);
    }
  }
  return [...merged, ...open.values()].sort(inOrder);
}

/**
 * Tags without one panel's part between two stations; a tag that reaches beyond keeps its ends.
 * @example
 * erasedTags([{ panelId: 'panel:a', fromMm: 0, toMm: 90, confirmed: true }], 'panel:a', 0, 30) // => [{ panelId: 'panel:a', fromMm: 30, toMm: 90, confirmed: true }]
 */
export function erasedTags(
  tags: readonly PanelTag[],
  panelId: PanelId,
  fromMm: number,
  toMm: number,
): PanelTag[] {
  const left: PanelTag[] = [];
  for (const tag of tags) {
    if (tag.panelId !== panelId || tag.toMm <= fromMm || tag.fromMm >= toMm) {
      left.push(tag);
      continue;
    }
    if (tag.fromMm < fromMm) left.push({ ...tag, toMm: fromMm });
    if (tag.toMm > toMm) left.push({ ...tag, fromMm: toMm });
  }
  return mergedTags(left);
}

/**
 * Tags with one panel painted over a stretch: what a person says counts as confirmed, and takes the
 * place of a proposal there.
 * @example
 * paintedTags([], 'panel:a', 0, 30) // => [{ panelId: 'panel:a', fromMm: 0, toMm: 30, confirmed: true }]
 */
export function paintedTags(
  tags: readonly PanelTag[],
  panelId: PanelId,
  fromMm: number,
  toMm: number,
): PanelTag[] {
  return mergedTags([...erasedTags(tags, panelId, fromMm, toMm), { panelId, fromMm, toMm, confirmed: true }]);
}
