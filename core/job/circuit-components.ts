import { defaultAssumptions } from '../chafe/chafe-assumptions.ts';
import { wetJointFactor } from '../chafe/joint-hazard.ts';
import { type CircuitLine, lineEnds, type PassedNode } from '../circuit/circuit-line.ts';
import type { ComponentHypothesis } from '../locate/hypotheses.ts';
import { componentWeight } from '../locate/prior.ts';
import type { NodeKind } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';

/** Parts passed on the way that may be at fault themselves; splices and earth points on the way belong to the hazard. */
const onTheWay: ReadonlySet<NodeKind> = new Set(['inline-connector']);

/**
 * The parts a circuit may fail in: what sits at its ends and those of its branches, and the plugs
 * between, each once, with its weight against the others. Bare branches, pass-throughs and loose ends are not parts.
 * @example
 * circuitComponents(sample.map, sample.line).map(({ part }) => part.nodeId) // => ['node:west', 'node:middle', 'node:far']
 */
export function circuitComponents(
  map: MapDocument,
  line: CircuitLine,
): { readonly part: ComponentHypothesis; readonly weight: number }[] {
  const parts: { part: ComponentHypothesis; weight: number }[] = [];
  const met = new Set<string>();
  const ends = lineEnds(line);
  const add = ({ nodeId, stationMm }: PassedNode, end: ComponentHypothesis['place'] | null): void => {
    const node = map.nodes.get(nodeId);
    const isPart = end !== null && ends.some((each) => each.nodeId === null || each.nodeId === nodeId);
    if (!node || met.has(nodeId) || !(isPart || onTheWay.has(node.kind))) return;
    const weight = componentWeight[node.kind];
    if (weight === 0) return;
    met.add(nodeId);
    parts.push({
      part: { nodeId, stationMm, place: end === null || onTheWay.has(node.kind) ? 'plug' : end },
      weight: weight * wetJointFactor(map, node, defaultAssumptions),
    });
  };
  line.nodes.forEach((node, i) => {
    add(node, i === 0 ? 'first-end' : i === line.nodes.length - 1 ? 'second-end' : null);
  });
  for (const { nodes } of line.branches)
    nodes.forEach((node, i) => {
      add(node, i === nodes.length - 1 ? 'branch-end' : null);
    });
  return parts;
}
