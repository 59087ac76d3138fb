/** Flow under this share of all worth is rounding. */
const leastFlow = 1e-13;

/**
 * Which projects to take when each has a worth and needs some shared tools that cost once: the set
 * with the greatest worth less cost, empty where none is worth its cost. Among equals the smallest
 * set. By maximum flow from projects to tools (project selection, J. Rhys, Management Science 17,
 * 1970; shortest augmenting paths, J. Edmonds and R. Karp, Journal of the ACM 19, 1972; from memory).
 * @example
 * mostWorthSet([3, 4, 1], [[0], [0], [1]], [5, 2]) // => [0, 1]
 */
export function mostWorthSet(
  worth: readonly number[],
  needs: readonly (readonly number[])[],
  cost: readonly number[],
): number[] {
  const least = leastFlow * worth.reduce((sum, each) => sum + each, 0);
  const unpaid = Float64Array.from(worth);
  const unspent = Float64Array.from(cost);
  const paid = needs.map((tools) => new Float64Array(tools.length));
  const payers: { readonly project: number; readonly slot: number }[][] = cost.map(() => []);
  needs.forEach((tools, project) => {
    tools.forEach((tool, slot) => {
      payers[tool]?.push({ project, slot });
    });
  });
  payDirectly(needs, unpaid, unspent, paid);
  for (;;) {
    /** How each was reached: a project through the slot of one that gives way, a tool from a project. */
    const toolFrom = new Map<number, { project: number; slot: number }>();
    const projectFrom = new Map<number, { tool: number; slot: number } | null>();
    const waiting: number[] = [];
    unpaid.forEach((left, project) => {
      if (left <= least) return;
      projectFrom.set(project, null);
      waiting.push(project);
    });
    let end = -1;
    for (let at = 0; at < waiting.length && end < 0; at++) {
      const project = waiting[at] as number;
      for (const [slot, tool] of (needs[project] as readonly number[]).entries()) {
        if (toolFrom.has(tool)) continue;
        toolFrom.set(tool, { project, slot });
        if ((unspent[tool] as number) > least) {
          end = tool;
          break;
        }
        for (const payer of payers[tool] ?? []) {
          const flow = (paid[payer.project] as Float64Array)[payer.slot] as number;
          if (flow <= least || projectFrom.has(payer.project)) continue;
          projectFrom.set(payer.project, { tool, slot: payer.slot });
          waiting.push(payer.project);
        }
      }
    }
    if (end < 0) return [...projectFrom.keys()].sort((a, b) => a - b);
    pushAlong(end, toolFrom, projectFrom, unpaid, unspent, paid);
  }
}

/** Lets each project pay its own tools first; most of the flow needs no longer path than that. */
function payDirectly(
  needs: readonly (readonly number[])[],
  unpaid: Float64Array,
  unspent: Float64Array,
  paid: readonly Float64Array[],
): void {
  needs.forEach((tools, project) => {
    tools.forEach((tool, slot) => {
      const amount = Math.min(unpaid[project] as number, unspent[tool] as number);
      unpaid[project] = (unpaid[project] as number) - amount;
      unspent[tool] = (unspent[tool] as number) - amount;
      (paid[project] as Float64Array)[slot] = amount;
    });
  });
}

/** Sends as much as fits along the path that ends at a tool. */
function pushAlong(
  end: number,
  toolFrom: ReadonlyMap<number, { project: number; slot: number }>,
  projectFrom: ReadonlyMap<number, { tool: number; slot: number } | null>,
  unpaid: Float64Array,
  unspent: Float64Array,
  paid: readonly Float64Array[],
): void {
  const forward: { project: number; slot: number }[] = [];
  const backward: { project: number; slot: number }[] = [];
  let tool = end;
  let start = -1;
  while (start < 0) {
    const step = toolFrom.get(tool) as { project: number; slot: number };
    forward.push(step);
    const before = projectFrom.get(step.project);
    if (!before) start = step.project;
    else {
      backward.push({ project: step.project, slot: before.slot });
      tool = before.tool;
    }
  }
  let amount = Math.min(unpaid[start] as number, unspent[end] as number);
  for (const { project, slot } of backward) {
    amount = Math.min(amount, (paid[project] as Float64Array)[slot] as number);
  }
  unpaid[start] = (unpaid[start] as number) - amount;
  unspent[end] = (unspent[end] as number) - amount;
  const add = ({ project, slot }: { project: number; slot: number }, flow: number): void => {
    const row = paid[project] as Float64Array;
    row[slot] = (row[slot] as number) + flow;
  };
  for (const step of forward) add(step, amount);
  for (const step of backward) add(step, -amount);
}
