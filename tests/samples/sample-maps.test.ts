import { describe, expect, it } from 'vitest';
import { layStraight } from '#core/circuit/circuit-line.ts';
import { flattenOutline } from '#core/geometry/outline-curve.ts';
import { polygonContains } from '#core/geometry/polygon.ts';
import { rangesInside } from '#core/geometry/ranges-inside.ts';
import { documentText } from '#core/map/document-text.ts';
import { mapToExchange } from '#core/map/exchange.ts';
import { mapFaults } from '#core/map/map-faults.ts';
import { panelCycle } from '#core/map/panel-order.ts';
import { readMap } from '#core/map/read-map.ts';
import { readiness } from '#core/map/readiness.ts';
import { segmentLine } from '#core/map/segment-line.ts';
import { segmentNeeds } from '#core/map/segment-needs.ts';
import { sampleMap, sampleNames, sampleText } from './read-sample.ts';

describe.each(sampleNames)('the sample map %s', (name) => {
  const map = sampleMap(name);

  it('is written as the program would write it', () => {
    expect(documentText(mapToExchange(map))).toBe(sampleText(name, 'map'));
  });

  it('is read without a problem and hangs together', () => {
    const read = readMap(sampleText(name, 'map'));
    expect(read).toEqual({ ok: true, value: { map, problems: [] } });
    expect(mapFaults(map)).toEqual([]);
  });

  it('lacks nothing on the checklist for a job', () => {
    expect(readiness(map).filter((item) => !item.done)).toEqual([]);
  });

  it('has a scale, twelve panels, four routes and six traced circuits at least', () => {
    expect(map.details.scale).not.toBeNull();
    expect(map.panels.size).toBeGreaterThanOrEqual(12);
    const routes = new Set([...map.segments.values()].map((segment) => segment.routeName));
    expect(routes.size).toBeGreaterThanOrEqual(4);
    expect(map.circuits.size).toBeGreaterThanOrEqual(6);
  });

  it('asks to prop the tailgate wherever something on it comes off', () => {
    const onTailgate = [...map.panels.values()].filter((panel) => panel.kind === 'tailgate');
    expect(onTailgate.filter((panel) => !panel.cautions.includes('glass'))).toEqual([]);
  });

  it('has every circuit traced end to end, with pins only at places it passes', () => {
    for (const circuit of map.circuits.values()) {
      const laid = layStraight(map, circuit);
      expect(laid.ok, circuit.name).toBe(true);
      if (!laid.ok) continue;
      const passed = new Set(laid.value.nodes.map((node) => node.nodeId));
      expect(circuit.pins.filter((pin) => !passed.has(pin.nodeId))).toEqual([]);
    }
  });

  it('has every run in some circuit or it would carry no wire', () => {
    const used = new Set(
      [...map.circuits.values()].flatMap((circuit) => circuit.path.map((step) => step.segmentId)),
    );
    const idle = [...map.segments.keys()].filter((id) => !used.has(id));
    expect(idle).toEqual([]);
  });

  it('has minutes on every panel and an order of coming off that can be followed', () => {
    expect(panelCycle(map.panels)).toBeNull();
    for (const panel of map.panels.values()) {
      expect(panel.minutesOff, panel.name).toBeGreaterThan(0);
      expect(panel.minutesOn, panel.name).toBeGreaterThan(0);
      expect(panel.area.length, panel.name).toBeGreaterThanOrEqual(3);
    }
  });

  it('keeps clips and panel tags on their runs, clips in order and tags confirmed', () => {
    for (const segment of map.segments.values()) {
      const drawnMm = segmentLine(map, segment)?.lengthMm ?? 0;
      const stations = segment.clips.map((clip) => clip.stationMm);
      expect(stations, segment.name).toEqual([...stations].sort((a, b) => a - b));
      expect(Math.max(0, ...stations), segment.name).toBeLessThanOrEqual(drawnMm);
      for (const tag of segment.tags) {
        expect(tag.confirmed).toBe(true);
        expect(tag.fromMm).toBeLessThan(tag.toMm);
        expect(tag.toMm).toBeLessThanOrEqual(drawnMm);
      }
    }
  });

  it('says for every millimetre of loom what must come off to see it', () => {
    for (const segment of map.segments.values()) {
      const drawnMm = segmentLine(map, segment)?.lengthMm ?? 0;
      const open = segmentNeeds(segment, drawnMm).filter((piece) => piece.panelIds.length === 0);
      expect(open, segment.name).toEqual([]);
    }
  });

  it('has every run drawn inside the body shell', () => {
    const shells = [...map.outlines.values()].filter((outline) => outline.kind === 'shell');
    const areas = shells.map((shell) => flattenOutline(shell.vertices, true));
    for (const segment of map.segments.values()) {
      const outside = (segmentLine(map, segment)?.points ?? []).filter(
        (point) => !areas.some((area) => polygonContains(area, point)),
      );
      expect(outside, segment.name).toEqual([]);
    }
  });

  it('has panel areas that would propose nine tenths of the confirmed tags by overlap', () => {
    let confirmedMm = 0;
    let proposedMm = 0;
    for (const segment of map.segments.values()) {
      const line = segmentLine(map, segment);
      if (!line) continue;
      for (const tag of segment.tags) {
        confirmedMm += tag.toMm - tag.fromMm;
        for (const range of rangesInside(line, map.panels.get(tag.panelId)?.area ?? [])) {
          proposedMm += Math.max(0, Math.min(range.toMm, tag.toMm) - Math.max(range.fromMm, tag.fromMm));
        }
      }
    }
    expect(proposedMm / confirmedMm).toBeGreaterThan(0.9);
  });
});
