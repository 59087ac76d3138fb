import { type Look, lookMinutes } from '#core/dig/look.ts';
import type { Chance } from '#core/quantity/chance.ts';
import type { PanelId } from '#core/quantity/id.ts';
import { panelNamed, type SmallCar, table } from './small-cars.ts';

/**
 * A car-shaped case: panels lie along the route one after another, neighbours wait for one another, a
 * stretch is hidden by one or two panels that lie over it, and chance gathers around a few bad places.
 */
export function carShaped(chance: Chance, panelCount: number, lookCount: number): SmallCar {
  const ids = Array.from({ length: panelCount }, (_, i): PanelId => `panel:p${String(i).padStart(3, '0')}`);
  const panels = ids.map((id, i) => {
    const needs = i > 0 && chance() < 0.35 ? [ids[i - 1] as PanelId] : [];
    if (i > 2 && chance() < 0.1) needs.push(ids[i - 3] as PanelId);
    return panelNamed(id, 2 + Math.floor(chance() * 20), needs);
  });
  const badPlaces = Array.from({ length: 4 }, () => ({ at: chance(), weight: chance() ** 2 }));
  const weights = Array.from({ length: lookCount }, (_, i) => {
    const at = (i + 0.5) / lookCount;
    const near = badPlaces.map((bad) => bad.weight * Math.exp(-Math.abs(at - bad.at) * 25));
    return 0.02 + near.reduce((a, b) => a + b, 0) * (0.5 + chance());
  });
  const sum = weights.reduce((a, b) => a + b, 0);
  const looks = weights.map((weight, i): Look => {
    const over = Math.min(panelCount - 1, Math.floor((i / lookCount) * panelCount));
    const panelIds = chance() < 0.15 ? [] : [ids[over] as PanelId];
    if (over > 0 && chance() < 0.2) panelIds.push(ids[over - 1] as PanelId);
    return {
      id: `look ${String(i).padStart(5, '0')}`,
      panelIds,
      probability: weight / sum,
      quality: 0.9,
      minutes: lookMinutes(100 + chance() * 500),
    };
  });
  return { looks, panels: table(panels) };
}
