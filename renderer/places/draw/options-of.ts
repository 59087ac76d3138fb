/** The choices of a list as values with their words, in the list's own order. */
export function optionsOf<T extends string>(
  values: readonly T[],
  wordOf: Readonly<Record<T, string>>,
): { readonly value: T; readonly label: string }[] {
  return values.map((value) => ({ value, label: wordOf[value] }));
}
