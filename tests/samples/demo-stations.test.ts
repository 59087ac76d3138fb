import { describe, expect, it } from 'vitest';
import { type CircuitLine, layStraight, segmentStationMm, spanAt } from '#core/circuit/circuit-line.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { panelsOver } from '#core/map/segment-needs.ts';
import type { CircuitId, NodeId, PanelId } from '#core/quantity/id.ts';
import { sampleJob, sampleMap } from './read-sample.ts';

/** Tape and drawing agree within this. */
const toleranceMm = 4;

interface Demo {
  readonly name: string;
  readonly circuitId: CircuitId;
  readonly conductorMm2: number;
  /** Places passed and their distance from the first end, as the invented jobs state them. */
  readonly stations: readonly (readonly [NodeId, number])[];
  /** What hides the wire at a few distances. */
  readonly hidden: readonly (readonly [number, PanelId])[];
  readonly trueMm: number;
}

const demos: readonly Demo[] = [
  {
    name: 'orlune-pivet',
    circuitId: 'circuit:wiper-feed',
    conductorMm2: 1,
    stations: [
      ['node:fuse-box', 0],
      ['node:left-a-foot', 700],
      ['node:left-b-foot', 1800],
      ['node:left-seat-corner', 2700],
      ['node:left-arch-rear', 3500],
      ['node:left-c-top', 4400],
      ['node:hinge', 4800],
      ['node:tailgate-plug', 5050],
      ['node:wiper-motor', 5650],
    ],
    hidden: [
      [150, 'panel:glovebox'],
      [550, 'panel:left-kick-trim'],
      [1200, 'panel:left-front-tread'],
      [1840, 'panel:left-lower-b-trim'],
      [2300, 'panel:left-rear-tread'],
      [3100, 'panel:left-boot-side'],
      [3900, 'panel:left-c-trim'],
      [4600, 'panel:headlining-rear'],
      [4900, 'panel:hinge-gaiter'],
      [5400, 'panel:tailgate-trim'],
    ],
    trueMm: 3900,
  },
  {
    name: 'varnholt-aldine',
    circuitId: 'circuit:rear-wiper-park-wire',
    conductorMm2: 0.75,
    stations: [
      ['node:body-module', 0],
      ['node:left-a-foot-plug', 600],
      ['node:left-b-foot-branch', 1800],
      ['node:left-rear-seat-corner', 2700],
      ['node:left-side-pocket-branch', 3400],
      ['node:rear-plug', 4200],
    ],
    hidden: [
      [300, 'panel:left-kick-trim'],
      [1200, 'panel:left-front-tread-plate'],
      [2500, 'panel:rear-seat-base'],
      [3300, 'panel:left-boot-side-trim'],
      [3700, 'panel:boot-floor'],
      [4150, 'panel:boot-sill-panel'],
    ],
    trueMm: 3300,
  },
  {
    name: 'brannock-scarp',
    circuitId: 'circuit:left-tail',
    conductorMm2: 0.75,
    stations: [
      ['node:fuse-box', 0],
      ['node:bulkhead', 800],
      ['node:rail-front', 1400],
      ['node:rail-middle', 3100],
      ['node:bed-mount', 4100],
      ['node:hanger', 5000],
      ['node:rail-end', 5700],
      ['node:left-lamp', 6100],
    ],
    hidden: [
      [400, 'panel:glovebox'],
      [1100, 'panel:left-arch-liner'],
      [2200, 'panel:rail-shield'],
      [3600, 'panel:on-stands'],
      [4600, 'panel:spare-wheel'],
      [5400, 'panel:bumper-edge'],
    ],
    trueMm: 4600,
  },
];

function laid(map: MapDocument, circuitId: CircuitId): CircuitLine {
  const circuit = map.circuits.get(circuitId);
  if (!circuit) throw new Error(`no ${circuitId}`);
  const line = layStraight(map, circuit);
  if (!line.ok) throw new Error(line.problem.code);
  return line.value;
}

describe.each(demos)('the demo job on $name', (demo) => {
  const map = sampleMap(demo.name);
  const line = laid(map, demo.circuitId);

  it('searches the circuit it tells of, in the wire size it tells of', () => {
    expect(sampleJob(demo.name).circuitId).toBe(demo.circuitId);
    expect(line.circuit.conductorMm2).toBe(demo.conductorMm2);
  });

  it('passes its landmarks at the distances it tells of', () => {
    for (const [nodeId, stationMm] of demo.stations) {
      const passed = line.nodes.find((node) => node.nodeId === nodeId);
      expect(Math.abs((passed?.stationMm ?? Number.NaN) - stationMm), nodeId).toBeLessThan(toleranceMm);
    }
  });

  it('is hidden by the trim it tells of', () => {
    for (const [stationMm, panelId] of demo.hidden) {
      const span = spanAt(line, stationMm);
      expect(panelsOver(span.segment, segmentStationMm(span, stationMm)), `${stationMm} mm`).toContain(
        panelId,
      );
    }
  });

  it('has a rub spot where the wire was really hurt', () => {
    const span = spanAt(line, demo.trueMm);
    const stationMm = segmentStationMm(span, demo.trueMm);
    const { points } = span.line;
    const there = points[
      span.line.stationsMm.findLastIndex((station) => station <= stationMm)
    ] as (typeof points)[number];
    const nearestMm = Math.min(
      ...[...map.rubSpots.values()].flatMap((spot) =>
        spot.points.map((point) =>
          Math.hypot(point.xMm - there.xMm, point.yMm - there.yMm, point.zMm - there.zMm),
        ),
      ),
    );
    expect(nearestMm).toBeLessThan(60);
  });
});

describe('the cross short on varnholt-aldine', () => {
  it('lies where both wires run side by side, 4.2 m from the module to the rear plug', () => {
    const map = sampleMap('varnholt-aldine');
    const park = laid(map, 'circuit:rear-wiper-park-wire');
    const reverse = laid(map, 'circuit:reverse-lamp-feed');
    expect(reverse.circuit.conductorMm2).toBe(0.75);
    const shared = park.spans.filter((span, i) => reverse.spans[i]?.segment === span.segment);
    expect(Math.abs((shared.at(-1)?.toMm ?? 0) - 4200)).toBeLessThan(toleranceMm);
  });
});
