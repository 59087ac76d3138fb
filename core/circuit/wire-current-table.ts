/**
 * Continuous current of one wire in a loom, in ampere by mm2: cautious figures from memory of maker's
 * tables at 40 K rise in a bundle, kept below the fuse usually fitted to the size. Judgement, editable.
 */
export const wireCurrentTable: readonly { readonly mm2: number; readonly amps: number }[] = [
  { mm2: 0.22, amps: 2 },
  { mm2: 0.35, amps: 4 },
  { mm2: 0.5, amps: 6 },
  { mm2: 0.75, amps: 9 },
  { mm2: 1, amps: 12 },
  { mm2: 1.5, amps: 16 },
  { mm2: 2.5, amps: 22 },
  { mm2: 4, amps: 30 },
  { mm2: 6, amps: 40 },
  { mm2: 10, amps: 55 },
];

/**
 * The current a wire bears: that of the largest size in the table that it is not thinner than; a wire
 * thinner than all carries in proportion.
 * @example
 * currentCarryingA(0.8) // => 9
 */
export function currentCarryingA(mm2: number): number {
  const [thinnest] = wireCurrentTable;
  let amps = thinnest ? (thinnest.amps * Math.min(mm2, thinnest.mm2)) / thinnest.mm2 : 0;
  for (const row of wireCurrentTable) if (row.mm2 <= mm2) amps = row.amps;
  return amps;
}
