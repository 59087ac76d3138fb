/**
 * The first whole number after every `order` of a table: where something new is drawn, last. O(records).
 * @example
 * nextOrder(sample.map.panels) // => 2
 */
export function nextOrder(table: ReadonlyMap<string, { readonly order: number }>): number {
  let last = -1;
  for (const { order } of table.values()) last = Math.max(last, order);
  return Math.floor(last) + 1;
}
