import type { MapDocument } from '../map/map-document.ts';

/** Remembers what the readings of a job say while only looks and panels change. Holds one map's answers. */
export interface ReadingsCache {
  /** The answer kept for the same map, cells and question, or `work()`, then kept. */
  readonly kept: <T>(map: MapDocument, cellEdgesMm: Float64Array, question: string, work: () => T) => T;
}

/** Answers kept at a time: a user takes readings back and sets them again. */
const mostKept = 400;

/**
 * An empty memory. Pass it to `rank` again and again; what it gives back is the same as without it.
 * @example
 * createReadingsCache().kept(sample.map, new Float64Array([0, 1]), 'one', () => 1) // => 1
 */
export function createReadingsCache(): ReadingsCache {
  let keptMap: MapDocument | null = null;
  let keptEdges: Float64Array = new Float64Array(0);
  const answers = new Map<string, unknown>();
  return {
    kept<T>(map: MapDocument, cellEdgesMm: Float64Array, question: string, work: () => T): T {
      if (map !== keptMap || !sameNumbers(cellEdgesMm, keptEdges)) {
        answers.clear();
        keptMap = map;
        keptEdges = cellEdgesMm;
      }
      const known = answers.has(question);
      const answer = known ? (answers.get(question) as T) : work();
      // Put last, so that the one not asked for longest goes first.
      answers.delete(question);
      answers.set(question, answer);
      const oldest = answers.keys().next().value;
      if (answers.size > mostKept && oldest !== undefined) answers.delete(oldest);
      return answer;
    },
  };
}

function sameNumbers(a: Float64Array, b: Float64Array): boolean {
  return a === b || (a.length === b.length && a.every((value, i) => value === b[i]));
}
