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
 * The job numbers of a block in order. O(jobs), without recursion: blocks may be long chains.
 * @example
 * jobsOf(joinBlocks(jobBlock(4, 0, 1), jobBlock(2, 1, 1))) // => [4, 2]
 */
export function jobsOf(block: Block): number[] {
  const jobs: number[] = [];
  const waiting: Block[] = [block];
  for (let at = waiting.pop(); at; at = waiting.pop()) {
    if (at.first && at.second) waiting.push(at.second, at.first);
    else jobs.push(at.job);
  }
  return jobs;
}
