import { compareText } from '../quantity/compare-text.ts';
import type { PanelId } from '../quantity/id.ts';
import { samePlaceMm } from '../quantity/tolerance.ts';
import type { Segment } from './records.ts';

/** A piece of a run over which the same panels hide it. */
export interface NeededPanels {
  readonly fromMm: number;
  readonly toMm: number;
  /** Panels that must come off to see it, by id; empty where it is in view. */
  readonly panelIds: readonly PanelId[];
}

/**
 * A run cut into pieces by what must come off to see them, from its start to its end, by drawn station.
 * Confirmed and proposed tags count alike. Neighbours that need the same are one piece. What must come
 * off before those panels is not followed here. O(tags^2) in the few tags of one run.
 * @example
 * segmentNeeds(sample.middle, 500) // => [{ fromMm: 0, toMm: 100, panelIds: ['panel:tread'] }, { fromMm: 100, toMm: 500, panelIds: ['panel:seat', 'panel:tread'] }]
 */
export function segmentNeeds(segment: Segment, drawnLengthMm: number): readonly NeededPanels[] {
  const borders = [0, drawnLengthMm];
  for (const tag of segment.tags) {
    for (const stationMm of [tag.fromMm, tag.toMm]) {
      if (stationMm > samePlaceMm && stationMm < drawnLengthMm - samePlaceMm) borders.push(stationMm);
    }
  }
  borders.sort((a, b) => a - b);
  const pieces: { fromMm: number; toMm: number; panelIds: readonly PanelId[] }[] = [];
  for (let i = 1; i < borders.length; i++) {
    const fromMm = borders[i - 1] as number;
    const toMm = borders[i] as number;
    if (toMm === fromMm) continue;
    const middle = (fromMm + toMm) / 2;
    const over = segment.tags.filter((tag) => tag.fromMm <= middle && middle <= tag.toMm);
    const panelIds = [...new Set(over.map((tag) => tag.panelId))].sort(compareText);
    const last = pieces[pieces.length - 1];
    if (last && last.panelIds.join() === panelIds.join()) last.toMm = toMm;
    else pieces.push({ fromMm, toMm, panelIds });
  }
  return pieces;
}

/**
 * Panels that hide one station of a run, by id.
 * @example
 * panelsOver(sample.middle, 50) // => ['panel:tread']
 */
export function panelsOver(segment: Segment, stationMm: number): readonly PanelId[] {
  const over = segment.tags.filter((tag) => tag.fromMm <= stationMm && stationMm <= tag.toMm);
  return [...new Set(over.map((tag) => tag.panelId))].sort(compareText);
}
