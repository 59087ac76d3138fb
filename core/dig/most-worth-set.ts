/** Flow under this share of all worth is rounding. */
const leastFlow = 1e-13;

/**
 * Which projects to take when each has a worth and needs some shared tools that cost once: the set
 * with the greatest worth less cost, empty where none is worth its cost. Among equals the smallest
 * set. By maximum flow from projects to tools (project selection, J. Rhys, Management Science 17,
 * 1970), along all shortest paths at once (E. A. Dinic, Soviet Mathematics Doklady 11, 1970; both from
 * memory).
 * @example
 * mostWorthSet([3, 4, 1], [[0], [0], [1]], [5, 2]) // => [0, 1]
 */
export function mostWorthSet(
  worth: readonly number[],
  needs: readonly (readonly number[])[],
  cost: readonly number[],
): number[] {
  const payments = new Payments(worth, needs, cost);
  payments.payDirectly();
  while (payments.findLevels()) payments.payAlongLevels();
  return payments.reached();
}

/** What projects have paid towards their tools; every need of a project is one line of payments. */
class Payments {
  readonly #unpaid: Float64Array;
  readonly #unspent: Float64Array;
  /** Lines of a project: from `#lineFrom[project]` up to but not that of the next. */
  readonly #lineFrom: Int32Array;
  readonly #projectOf: Int32Array;
  readonly #toolOf: Int32Array;
  readonly #paid: Float64Array;
  /** Lines of each tool. */
  readonly #payers: readonly number[][];
  readonly #least: number;
  /** Steps from a project that has not paid all; -1 where none leads there. */
  readonly #projectLevel: Int32Array;
  readonly #toolLevel: Int32Array;
  /** What has not been tried yet on the present levels. */
  readonly #nextLine: Int32Array;
  readonly #nextPayer: Int32Array;
  readonly #queue: Int32Array;

  constructor(worth: readonly number[], needs: readonly (readonly number[])[], cost: readonly number[]) {
    const lines = needs.reduce((sum, tools) => sum + tools.length, 0);
    this.#unpaid = Float64Array.from(worth);
    this.#unspent = Float64Array.from(cost);
    this.#lineFrom = new Int32Array(worth.length + 1);
    this.#projectOf = new Int32Array(lines);
    this.#toolOf = new Int32Array(lines);
    this.#paid = new Float64Array(lines);
    const payers: number[][] = cost.map(() => []);
    let line = 0;
    for (let project = 0; project < worth.length; project++) {
      for (const tool of needs[project] as readonly number[]) {
        this.#projectOf[line] = project;
        this.#toolOf[line] = tool;
        payers[tool]?.push(line++);
      }
      this.#lineFrom[project + 1] = line;
    }
    this.#payers = payers;
    this.#least = leastFlow * worth.reduce((sum, each) => sum + each, 0);
    this.#projectLevel = new Int32Array(worth.length);
    this.#toolLevel = new Int32Array(cost.length);
    this.#nextLine = new Int32Array(worth.length);
    this.#nextPayer = new Int32Array(cost.length);
    this.#queue = new Int32Array(worth.length);
  }

  /** Lets each project pay its own tools first; most of the flow needs no longer path than that. */
  payDirectly(): void {
    for (let line = 0; line < this.#paid.length; line++) {
      const project = this.#projectOf[line] as number;
      const tool = this.#toolOf[line] as number;
      const amount = Math.min(this.#unpaid[project] as number, this.#unspent[tool] as number);
      this.#unpaid[project] = (this.#unpaid[project] as number) - amount;
      this.#unspent[tool] = (this.#unspent[tool] as number) - amount;
      this.#paid[line] = amount;
    }
  }

  /** Measures the steps from projects with worth left; true where a tool that can still be paid is reached. */
  findLevels(): boolean {
    this.#projectLevel.fill(-1);
    this.#toolLevel.fill(-1);
    let waiting = 0;
    for (let project = 0; project < this.#unpaid.length; project++) {
      if ((this.#unpaid[project] as number) <= this.#least) continue;
      this.#projectLevel[project] = 0;
      this.#queue[waiting++] = project;
    }
    let end = Number.POSITIVE_INFINITY;
    for (let at = 0; at < waiting; at++) {
      const project = this.#queue[at] as number;
      const level = (this.#projectLevel[project] as number) + 1;
      if (level > end) break;
      for (
        let line = this.#lineFrom[project] as number;
        line < (this.#lineFrom[project + 1] as number);
        line++
      ) {
        const tool = this.#toolOf[line] as number;
        if ((this.#toolLevel[tool] as number) >= 0) continue;
        this.#toolLevel[tool] = level;
        if ((this.#unspent[tool] as number) > this.#least) end = level;
        for (const payer of this.#payers[tool] as readonly number[]) {
          const other = this.#projectOf[payer] as number;
          if ((this.#paid[payer] as number) <= this.#least || (this.#projectLevel[other] as number) >= 0)
            continue;
          this.#projectLevel[other] = level + 1;
          this.#queue[waiting++] = other;
        }
      }
    }
    return end < Number.POSITIVE_INFINITY;
  }

  /** Sends what fits along every shortest path. */
  payAlongLevels(): void {
    this.#nextPayer.fill(0);
    this.#nextLine.set(this.#lineFrom.subarray(0, this.#nextLine.length));
    for (let project = 0; project < this.#unpaid.length; project++) {
      if (this.#projectLevel[project] !== 0) continue;
      for (let left = this.#unpaid[project] as number; left > this.#least; ) {
        const amount = this.#payFrom(project, left);
        if (amount === 0) break;
        left -= amount;
        this.#unpaid[project] = left;
      }
    }
  }

  #payFrom(project: number, most: number): number {
    const level = (this.#projectLevel[project] as number) + 1;
    const end = this.#lineFrom[project + 1] as number;
    for (let line = this.#nextLine[project] as number; line < end; this.#nextLine[project] = ++line) {
      const tool = this.#toolOf[line] as number;
      if (this.#toolLevel[tool] !== level) continue;
      const amount = this.#payTool(tool, most);
      if (amount === 0) continue;
      this.#paid[line] = (this.#paid[line] as number) + amount;
      return amount;
    }
    return 0;
  }

  /** Pays a tool itself, or lets another project that pays it pay elsewhere. */
  #payTool(tool: number, most: number): number {
    const unspent = this.#unspent[tool] as number;
    if (unspent > this.#least) {
      const amount = Math.min(most, unspent);
      this.#unspent[tool] = unspent - amount;
      return amount;
    }
    const payers = this.#payers[tool] as readonly number[];
    const level = (this.#toolLevel[tool] as number) + 1;
    for (let at = this.#nextPayer[tool] as number; at < payers.length; this.#nextPayer[tool] = ++at) {
      const line = payers[at] as number;
      const project = this.#projectOf[line] as number;
      const paid = this.#paid[line] as number;
      if (paid <= this.#least || this.#projectLevel[project] !== level) continue;
      const amount = this.#payFrom(project, Math.min(most, paid));
      if (amount === 0) continue;
      this.#paid[line] = paid - amount;
      return amount;
    }
    return 0;
  }

  /** Projects that were reached when nothing more could be paid: the set sought. */
  reached(): number[] {
    const projects: number[] = [];
    for (let project = 0; project < this.#projectLevel.length; project++)
      if ((this.#projectLevel[project] as number) >= 0) projects.push(project);
    return projects;
  }
}
