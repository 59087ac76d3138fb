/**
 * Whether two pieces of a record say the same: lists in the same order, fields in any order, a field that
 * is missing like one that is undefined.
 * @example
 * sameValue({ a: 1, b: [2] }, { b: [2], a: 1 }) // => true
 */
export function sameValue(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) {
    if (!Array.isArray(a) || !Array.isArray(b) || a.length !== b.length) return false;
    return a.every((each, i) => sameValue(each, b[i]));
  }
  const left = a as Readonly<Record<string, unknown>>;
  const right = b as Readonly<Record<string, unknown>>;
  for (const field in left) if (!sameValue(left[field], right[field])) return false;
  for (const field in right) if (!(field in left) && right[field] !== undefined) return false;
  return true;
}
