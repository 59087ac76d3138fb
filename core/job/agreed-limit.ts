import type { EntryOf, JobEntry } from './job-document.ts';

/** What was agreed with the customer against what was spent. */
export interface AgreedLimit {
  /** Null: no limit in that measure. */
  readonly minutes: number | null;
  readonly amount: number | null;
  readonly spentMinutes: number;
  /** Null where the shop has set no hourly rate. */
  readonly spentAmount: number | null;
  /** The larger share used of the limits that can be compared; null without any. */
  readonly shareUsed: number | null;
  readonly stages: readonly EntryOf<'agreed'>[];
}

/**
 * The limit agreed, extensions added, against the minutes spent and what they cost at an hourly rate (in the
 * shop's currency; null when not set). An amount can only be compared with a rate.
 * @example
 * agreedLimit(sample.job.entries, 40, 60).shareUsed // => null
 */
export function agreedLimit(
  entries: readonly JobEntry[],
  spentMinutes: number,
  hourlyRate: number | null,
): AgreedLimit {
  const stages = entries.filter((entry) => entry.type === 'agreed');
  const sum = (measure: 'minutes' | 'amount'): number | null => {
    const own = stages.filter((stage) => stage.measure === measure);
    return own.length === 0 ? null : own.reduce((total, stage) => total + stage.adds, 0);
  };
  const minutes = sum('minutes');
  const amount = sum('amount');
  const spentAmount = hourlyRate === null ? null : (spentMinutes / 60) * hourlyRate;
  const shares = [
    ...(minutes === null ? [] : [shareOf(spentMinutes, minutes)]),
    ...(amount === null || spentAmount === null ? [] : [shareOf(spentAmount, amount)]),
  ];
  const shareUsed = shares.length === 0 ? null : Math.max(...shares);
  return { minutes, amount, spentMinutes, spentAmount, shareUsed, stages };
}

/** Anything spent against a limit of nothing is beyond it. */
function shareOf(spent: number, limit: number): number {
  if (limit > 0) return spent / limit;
  return spent > 0 ? Number.POSITIVE_INFINITY : 0;
}
