/**
 * Throws when our own reasoning was wrong. Never used for what a person or a file may get wrong.
 * @example
 * assert(1 + 1 === 2, 'arithmetic holds') // => undefined
 */
export function assert(condition: unknown, message: string): asserts condition {
  if (!condition) throw new Error(`Undertrim bug: ${message}`);
}
