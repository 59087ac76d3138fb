import { defaultAssumptions } from '../chafe/chafe-assumptions.ts';
import { wetJointFactor } from '../chafe/joint-hazard.ts';
import type { CircuitLine } from '../circuit/circuit-line.ts';
import type { ComponentHypothesis } from '../locate/hypotheses.ts';
import { componentWeight } from '../locate/prior.ts';
import type { NodeKind } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';

/** Parts passed on the way that may be at fault themselves; splices and earth points on the way belong to the hazard. */
const onTheWay: ReadonlySet<NodeKind> = new Set(['inline-connector']);

/**
 * The parts a circuit may fail in: what sits at either end and the plugs between, each once, with its
 * weight against the others. Bare branches, pass-throughs and loose ends are not parts.
 * @example
 * circuitComponents(sample.map, sample.line).map(({ part }) => part.nodeId) // => ['node:west', 'node:middle', 'node:far']
 */
export function circuitComponents(
  map: MapDocument,
  line: CircuitLine,
): { readonly part: ComponentHypothesis; readonly weight: number }[] {
  const parts: { part: ComponentHypothesis; weight: number }[] = [];
  const met = new Set<string>();
  line.nodes.forEach(({ nodeId, stationMm }, i) => {
    const node = map.nodes.get(nodeId);
    const isFirst = i === 0;
    const isEnd = isFirst || i === line.nodes.length - 1;
    if (!node || met.has(nodeId) || !(isEnd || onTheWay.has(node.kind))) return;
    const weight = componentWeight[node.kind];
    if (weight === 0) return;
    met.add(nodeId);
    const place = onTheWay.has(node.kind) ? 'plug' : isFirst ? 'first-end' : 'second-end';
    parts.push({
      part: { nodeId, stationMm, place },
      weight: weight * wetJointFactor(map, node, defaultAssumptions),
    });
  });
  return parts;
}
