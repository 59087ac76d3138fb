/** The base word with the smallest number that makes a name nobody has yet: "Route 3". */
export function freeName(base: string, taken: Iterable<{ readonly name: string }>): string {
  const names = new Set<string>();
  for (const { name } of taken) names.add(name);
  let number = 1;
  while (names.has(`${base} ${number}`)) number++;
  return `${base} ${number}`;
}

/** One more than the highest order number in use, so that a new record comes last. */
export function nextOrder(records: Iterable<{ readonly order: number }>): number {
  let next = 0;
  for (const { order } of records) next = Math.max(next, order + 1);
  return next;
}
