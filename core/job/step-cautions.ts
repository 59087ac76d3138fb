import type { Caution } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { Circuit } from '../map/records.ts';
import type { NodeId, PanelId, SegmentId } from '../quantity/id.ts';

const dutyCautions: Readonly<Partial<Record<Circuit['duty'], Caution>>> = {
  restraint: 'airbag',
  'high-voltage': 'high-voltage',
};

/**
 * What to take care of in one opening: what its panels are marked with, and, where the circuit itself or another
 * through a plug that is parted is an airbag or high-voltage one, what goes with that (common practice, no source).
 * Each once, the circuit's own first.
 * @example
 * stepCautions(sample.map, sample.line.circuit, ['panel:seat'], []) // => ['airbag']
 */
export function stepCautions(
  map: MapDocument,
  circuit: Circuit,
  takeOff: readonly PanelId[],
  plugs: readonly NodeId[],
): readonly Caution[] {
  const parted = new Set(plugs);
  const touches = (segmentId: SegmentId): boolean => {
    const run = map.segments.get(segmentId);
    return run !== undefined && (parted.has(run.fromNodeId) || parted.has(run.toNodeId));
  };
  const through =
    plugs.length === 0
      ? []
      : [...map.circuits.values()].filter(({ path }) => path.some(({ segmentId }) => touches(segmentId)));
  const ofWires = [circuit, ...through].flatMap(({ duty }) => dutyCautions[duty] ?? []);
  const ofPanels = takeOff.flatMap((id) => map.panels.get(id)?.cautions ?? []);
  return [...new Set([...ofWires, ...ofPanels])];
}
