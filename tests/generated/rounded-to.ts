/** Plain data with every number rounded to a step, to compare what only rounding may tell apart. */
export function roundedTo(value: unknown, step: number): unknown {
  if (typeof value === 'number') return Math.round(value / step) * step + 0;
  if (Array.isArray(value)) return value.map((each) => roundedTo(each, step));
  if (value && typeof value === 'object') {
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, roundedTo(each, step)]));
  }
  return value;
}
