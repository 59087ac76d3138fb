/**
 * Orders two texts by code unit, the same on every machine whatever its language setting.
 * @example
 * compareText('node:a', 'node:b') // => -1
 */
export function compareText(a: string, b: string): number {
  if (a < b) return -1;
  return a > b ? 1 : 0;
}
