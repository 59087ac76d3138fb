import type { DetailsHand } from '../details-hand.ts';

/** Ticks panels in a list that is folded away once there are many. */
export async function tickPanels(
  { side, unfold }: DetailsHand,
  label: string,
  names: readonly string[],
): Promise<void> {
  const group = side.getByRole('group', { name: label, exact: true });
  if ((await group.count()) === 0) await unfold(label);
  for (const name of names) await group.getByRole('checkbox', { name, exact: true }).check();
}
