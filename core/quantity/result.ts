import type { Problem } from './problem.ts';

/** Either a value or one typed problem. Expected trouble travels this way; a throw means our own bug. */
export type Result<T, P = Problem> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: P };

/**
 * Wraps a value as a good result.
 * @example
 * ok(3) // => { ok: true, value: 3 }
 */
export function ok<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value };
}

/**
 * Wraps a problem as a failed result.
 * @example
 * fail({ code: 'map-empty' }) // => { ok: false, problem: { code: 'map-empty' } }
 */
export function fail<P>(problem: P): {
  readonly ok: false;
  readonly problem: P;
} {
  return { ok: false, problem };
}
