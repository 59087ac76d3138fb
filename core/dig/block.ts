/**
 * Jobs done one after the other without a break, summed up so that blocks join in O(1). Weight is the
 * chance of seeing the fault, `inner` is the sum of weight times finishing minute counted from the
 * block's own start.
 */
export interface Block {
  readonly weight: number;
  readonly minutes: number;
  readonly inner: number;
  /** What the block consists of: a single job's number, or two blocks in order. */
  readonly job: number;
  readonly first: Block | null;
  readonly second: Block | null;
  /** Or single jobs one after another: those of a longer row from `from` up to but not `to`. */
  readonly row?: { readonly looks: readonly Block[]; readonly from: number; readonly to: number };
}

/** Single jobs in a fixed order with what the first n of them come to, n from 0 to all. */
export interface JobRow {
  readonly looks: readonly Block[];
  readonly weightUpTo: Float64Array;
  readonly minutesUpTo: Float64Array;
  /** Sum of weight times finishing minute when the row is begun at minute 0. */
  readonly innerUpTo: Float64Array;
  /** Sum of each job's weight times its own minutes. */
  readonly ownUpTo: Float64Array;
}

/**
 * Sums up a row of single jobs, so that any piece of it is a block in O(1).
 * @example
 * [...jobRow([jobBlock(0, 0.5, 2), jobBlock(1, 0.5, 2)]).innerUpTo] // => [0, 1, 3]
 */
export function jobRow(looks: readonly Block[]): JobRow {
  const weightUpTo = new Float64Array(looks.length + 1);
  const minutesUpTo = new Float64Array(looks.length + 1);
  const innerUpTo = new Float64Array(looks.length + 1);
  const ownUpTo = new Float64Array(looks.length + 1);
  for (let i = 0; i < looks.length; i++) {
    const { weight, minutes } = looks[i] as Block;
    weightUpTo[i + 1] = (weightUpTo[i] as number) + weight;
    minutesUpTo[i + 1] = (minutesUpTo[i] as number) + minutes;
    innerUpTo[i + 1] = (innerUpTo[i] as number) + weight * (minutesUpTo[i + 1] as number);
    ownUpTo[i + 1] = (ownUpTo[i] as number) + weight * minutes;
  }
  return { looks, weightUpTo, minutesUpTo, innerUpTo, ownUpTo };
}

/**
 * A piece of a row as one block.
 * @example
 * rowBlock(jobRow([jobBlock(0, 0.5, 2), jobBlock(1, 0.5, 2)]), 1, 2).inner // => 1
 */
export function rowBlock(row: JobRow, from: number, to: number): Block {
  if (to === from + 1) return row.looks[from] as Block;
  const before = row.minutesUpTo[from] as number;
  const weight = (row.weightUpTo[to] as number) - (row.weightUpTo[from] as number);
  const minutes = (row.minutesUpTo[to] as number) - before;
  const inner = (row.innerUpTo[to] as number) - (row.innerUpTo[from] as number) - weight * before;
  return { weight, minutes, inner, job: -1, first: null, second: null, row: { looks: row.looks, from, to } };
}

/**
 * Single jobs in the order given as one block.
 * @example
 * openBlock([jobBlock(0, 0.5, 2), jobBlock(1, 0.5, 2)]).inner // => 3
 */
export function openBlock(looks: readonly Block[]): Block {
  if (looks.length === 1) return looks[0] as Block;
  let weight = 0;
  let minutes = 0;
  let inner = 0;
  for (const look of looks) {
    weight += look.weight;
    minutes += look.minutes;
    inner += look.weight * minutes;
  }
  const row = { looks, from: 0, to: looks.length };
  return { weight, minutes, inner, job: -1, first: null, second: null, row };
}

/**
 * A block of one job.
 * @example
 * jobBlock(7, 0.5, 10).inner // => 5
 */
export function jobBlock(job: number, weight: number, minutes: number): Block {
  return { weight, minutes, inner: weight * minutes, job, first: null, second: null };
}

/**
 * Two blocks in order, as one.
 * @example
 * joinBlocks(jobBlock(0, 0, 4), jobBlock(1, 0.5, 2)).inner // => 3
 */
export function joinBlocks(first: Block, second: Block): Block {
  return {
    weight: first.weight + second.weight,
    minutes: first.minutes + second.minutes,
    inner: first.inner + second.inner + second.weight * first.minutes,
    job: -1,
    first,
    second,
  };
}

/**
 * Above zero when the first block is worth more per minute than the second. Multiplied out, so that
 * a block of no minutes needs no division: with any weight it comes before everything.
 * @example
 * Math.sign(compareWorth(jobBlock(0, 0.3, 3), jobBlock(1, 0.5, 10))) // => 1
 */
export function compareWorth(
  a: Pick<Block, 'weight' | 'minutes'>,
  b: Pick<Block, 'weight' | 'minutes'>,
): number {
  return a.weight * b.minutes - b.weight * a.minutes;
}

/**
 * The job numbers of some blocks in order. O(jobs), without recursion: blocks may be long chains.
 * @example
 * jobsOf([joinBlocks(jobBlock(4, 0, 1), jobBlock(2, 1, 1))]) // => [4, 2]
 */
export function jobsOf(blocks: readonly Block[]): number[] {
  const jobs: number[] = [];
  const waiting = blocks.toReversed();
  for (let at = waiting.pop(); at; at = waiting.pop()) {
    if (at.first && at.second) waiting.push(at.second, at.first);
    else if (at.row) for (let i = at.row.from; i < at.row.to; i++) jobs.push((at.row.looks[i] as Block).job);
    else jobs.push(at.job);
  }
  return jobs;
}
