import type { NetNode, Network } from './network.ts';

/**
 * Groups of nodes that no resistor, branch or voltage source ties to the body, each sorted, in order of
 * their lowest node. Current sources tie nothing. O(nodes + parts).
 * @example
 * floatingIslands({ ...emptyNetwork, nodeCount: 3, resistors: [{ a: 0, b: 1, ohms: 1 }, { a: 2, b: 3, ohms: 1 }] }) // => [[2, 3]]
 */
export function floatingIslands(network: Network): readonly (readonly NetNode[])[] {
  const parent = Int32Array.from({ length: network.nodeCount + 1 }, (_, node) => node);
  const root = (node: NetNode): NetNode => {
    let at = node;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at] as number] as number;
      at = parent[at] as number;
    }
    return at;
  };
  const join = (a: NetNode, b: NetNode): void => {
    const low = Math.min(root(a), root(b));
    parent[root(a)] = low;
    parent[root(b)] = low;
  };
  for (const { a, b } of network.resistors) join(a, b);
  for (const { a, b } of network.branches) join(a, b);
  for (const { plus, minus } of network.voltageSources) join(plus, minus);
  const islands = new Map<NetNode, NetNode[]>();
  for (let node = 1; node <= network.nodeCount; node++) {
    const head = root(node);
    if (head === 0) continue;
    const island = islands.get(head);
    if (island) island.push(node);
    else islands.set(head, [node]);
  }
  return [...islands.values()];
}
