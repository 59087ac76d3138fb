import type { MapDocument } from '../map/map-document.ts';
import type { MapNode } from '../map/records.ts';
import type { ChafeAssumptions } from './chafe-assumptions.ts';
import { runsAtNode } from './runs-at-node.ts';

/**
 * Hazard per hour of the metal in one joint (plug, splice, earth point), raised when a wet run meets there.
 * Zero for anything that is not a joint.
 * @example
 * jointHazard(sample.map, sample.map.nodes.get('node:middle'), defaultAssumptions) // => 0.001
 */
export function jointHazard(map: MapDocument, node: MapNode, assumptions: ChafeAssumptions): number {
  const rate = assumptions.jointRate[node.kind] ?? 0;
  if (rate === 0) return 0;
  const wet = runsAtNode(map, node.id).some((segment) => segment.traits.includes('wet'));
  return rate * (wet ? assumptions.baseRates.wetJointFactor : 1) * (assumptions.causeFactor.joint ?? 1);
}
