/** The value all of them have; undefined where they differ. */
export function sharedValue<V>(values: readonly V[]): V | undefined {
  const [first] = values;
  return values.every((value) => value === first) ? first : undefined;
}

/** Whether all, some or none of several lists hold a word. */
export function shareOf<V>(lists: readonly (readonly V[])[], word: V): 'all' | 'some' | 'none' {
  const having = lists.filter((list) => list.includes(word)).length;
  if (having === 0) return 'none';
  return having === lists.length ? 'all' : 'some';
}
