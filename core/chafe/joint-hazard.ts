import type { MapDocument } from '../map/map-document.ts';
import type { MapNode } from '../map/records.ts';
import type { ChafeAssumptions } from './chafe-assumptions.ts';
import { runsAtNode } from './runs-at-node.ts';

/**
 * Hazard per hour of the metal in one joint passed on the way (splice, earth point), raised when a wet run
 * meets there. Zero for anything else: plugs and end parts are weighed as parts.
 * @example
 * jointHazard(sample.map, { ...sample.map.nodes.get('node:middle'), kind: 'splice' }, defaultAssumptions) // => 0.0007
 */
export function jointHazard(map: MapDocument, node: MapNode, assumptions: ChafeAssumptions): number {
  const rate = assumptions.jointRate[node.kind] ?? 0;
  if (rate === 0) return 0;
  return rate * wetJointFactor(map, node, assumptions) * (assumptions.causeFactor.joint ?? 1);
}

/**
 * How much sooner metal fails at a node because a wet run meets there; 1 in the dry.
 * @example
 * wetJointFactor(sample.map, sample.map.nodes.get('node:middle'), defaultAssumptions) // => 1
 */
export function wetJointFactor(map: MapDocument, node: MapNode, { baseRates }: ChafeAssumptions): number {
  const wet = runsAtNode(map, node.id).some((segment) => segment.traits.includes('wet'));
  return wet ? baseRates.wetJointFactor : 1;
}
