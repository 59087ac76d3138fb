import { describe, expect, it } from 'vitest';
import { bodyProportions, type StarterStyle } from '#core/map/body-proportions.ts';
import { panelDefaults } from '#core/map/panel-defaults.ts';
import { takeOffOrder } from '#core/map/panel-order.ts';
import { type Panel, panelSchema } from '#core/map/records.ts';
import type { PanelId } from '#core/quantity/id.ts';

const panelId = (key: string): PanelId => `panel:${key}`;

const asPanels = (style: StarterStyle): Panel[] =>
  panelDefaults(style).map((each, order) => ({
    id: panelId(each.key),
    name: each.name,
    kind: each.kind,
    area: [],
    minutesOff: each.minutesOff,
    minutesOn: each.minutesOn,
    offFirst: each.offFirst.map(panelId),
    cautions: [...each.cautions],
    note: '',
    order,
  }));

describe.each(Object.keys(bodyProportions) as StarterStyle[])('the usual panels of a %s', (style) => {
  const panels = asPanels(style);

  it('can be put on a map as they are, each once', () => {
    for (const panel of panels) expect(panelSchema.safeParse(panel).success, panel.name).toBe(true);
    expect(new Set(panels.map((panel) => panel.id)).size).toBe(panels.length);
    expect(panels.length).toBeGreaterThanOrEqual(12);
  });

  it('wait only for panels of the same car, in an order that can be followed', () => {
    const table = new Map(panels.map((panel) => [panel.id, panel]));
    const waited = panels.flatMap((panel) => panel.offFirst);
    expect(waited.filter((id) => !table.has(id))).toEqual([]);
    expect(takeOffOrder(table, table.keys())?.length).toBe(panels.length);
  });

  it('warn of the airbag at every seat, dash, console and upper pillar', () => {
    const bags = panels.filter((panel) => ['console', 'pillar'].includes(panel.kind));
    expect(bags.length).toBeGreaterThan(0);
    for (const panel of bags) expect(panel.cautions, panel.name).toContain('airbag');
    const seat = panels.find((panel) => panel.id === 'panel:left-front-seat');
    expect(seat?.cautions).toEqual(['airbag', 'belt-tensioner', 'battery', 'two-people']);
  });

  it('take at least as long to put back as to take off', () => {
    for (const panel of panels) expect(panel.minutesOn, panel.name).toBeGreaterThanOrEqual(panel.minutesOff);
  });
});
