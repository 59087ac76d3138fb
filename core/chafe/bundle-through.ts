import type { MapDocument } from '../map/map-document.ts';
import type { Circuit } from '../map/records.ts';
import type { SegmentId } from '../quantity/id.ts';
import { type Bundle, bundleOf } from '../wire/bundle.ts';
import { wallStrokes } from '../wire/wall-strokes.ts';
import type { Wire } from '../wire/wire-shape.ts';

/**
 * A map traces a few of a loom's wires. Up to this many, the rest are taken to be this one: ten wires of
 * 0.5 mm2 thin wall, 5.8 mm across. Common practice, no source.
 */
export const usualBundle: { readonly wires: number; readonly wire: Wire } = {
  wires: 10,
  wire: { conductorMm2: 0.5, insulation: 'thin-wall' },
};

/** What runs through one stretch of loom. */
export interface BundleThrough {
  readonly bundle: Bundle;
  /** Circuits traced through the run. */
  readonly circuits: readonly Circuit[];
  /** Wires added to make up the usual bundle; 0 when enough were traced. */
  readonly assumedWires: number;
  /** The diameter was set by hand. */
  readonly diameterGiven: boolean;
}

const none: readonly Circuit[] = [];
const knownCircuits = new WeakMap<MapDocument['circuits'], Map<SegmentId, Circuit[]>>();
const knownBundles = new WeakMap<readonly Circuit[], Map<number | null, BundleThrough>>();

/**
 * The circuits traced through a run. The table is built once per table of circuits.
 * @example
 * circuitsThrough(sample.map, 'segment:middle').length // => 1
 */
export function circuitsThrough(map: MapDocument, segmentId: SegmentId): readonly Circuit[] {
  let table = knownCircuits.get(map.circuits);
  if (!table) {
    table = new Map();
    for (const circuit of map.circuits.values()) {
      for (const step of circuit.path) {
        const held = table.get(step.segmentId);
        if (!held) table.set(step.segmentId, [circuit]);
        else if (held[held.length - 1] !== circuit) held.push(circuit);
      }
    }
    knownCircuits.set(map.circuits, table);
  }
  return table.get(segmentId) ?? none;
}

/**
 * The bundle in a run: traced circuits, made up to the usual bundle; its diameter computed from them unless
 * one was set by hand, which then stands for more or fewer wires of the same mix.
 * @example
 * bundleThrough(sample.map, 'segment:middle').assumedWires // => 9
 */
export function bundleThrough(map: MapDocument, segmentId: SegmentId): BundleThrough {
  return bundleWith(circuitsThrough(map, segmentId), map.segments.get(segmentId)?.bundleDiameterMm ?? null);
}

/**
 * As `bundleThrough`, from the circuits and the diameter themselves. Remembered per list of circuits.
 * @example
 * bundleWith([], null).bundle.diameterMm // => 5.84237
 */
export function bundleWith(circuits: readonly Circuit[], givenDiameterMm: number | null): BundleThrough {
  let bySize = knownBundles.get(circuits);
  if (!bySize) {
    bySize = new Map();
    knownBundles.set(circuits, bySize);
  }
  let through = bySize.get(givenDiameterMm);
  if (!through) {
    const assumedWires = Math.max(0, usualBundle.wires - circuits.length);
    const wires: Wire[] = [...circuits];
    for (let i = 0; i < assumedWires; i++) wires.push(usualBundle.wire);
    through = {
      bundle: bundleOf(wires, givenDiameterMm),
      circuits,
      assumedWires,
      diameterGiven: givenDiameterMm !== null,
    };
    bySize.set(givenDiameterMm, through);
  }
  return through;
}

/**
 * The wire of a run that copper shows through first: the thinnest wall of those traced, or the usual one.
 * @example
 * weakestWire(circuitsThrough(sample.map, 'segment:middle')).conductorMm2 // => 0.35
 */
export function weakestWire(circuits: readonly Circuit[]): Wire {
  let weakest: Wire | null = null;
  let strokes = Number.POSITIVE_INFINITY;
  for (const circuit of circuits) {
    const each = wallStrokes(circuit);
    if (each < strokes) {
      strokes = each;
      weakest = circuit;
    }
  }
  return weakest ?? usualBundle.wire;
}
