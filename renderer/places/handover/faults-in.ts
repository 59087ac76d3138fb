import { readMap } from '#core/map/read-map.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { nameOf } from '../../language/name-of.ts';

/** What is wrong in a refused map document beyond what was named already, and what its things are called. */
export interface MoreFaults {
  readonly problems: readonly Problem[];
  readonly nameOf: (id: string) => string;
}

const asIs = (id: string): string => id;

/** Reads a refused document once more for everything that does not hang together on it. */
export function faultsIn(text: string): MoreFaults {
  const read = readMap(text.replace(/^\uFEFF/, ''));
  if (!read.ok) return { problems: [], nameOf: asIs };
  const { map, problems } = read.value;
  return { problems: problems.slice(1), nameOf: (id) => nameOf(map, id) };
}
