/** The options of a choice, from a table of words. */
export const optionsOf = <T extends string>(
  labels: Readonly<Record<T, string>>,
): { readonly value: T; readonly label: string }[] =>
  (Object.entries(labels) as [T, string][]).map(([value, label]) => ({ value, label }));
