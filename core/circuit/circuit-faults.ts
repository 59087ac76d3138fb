import type { MapDocument } from '../map/map-document.ts';
import type { Problem } from '../quantity/problem.ts';
import { layStraight } from './circuit-line.ts';

/**
 * What is wrong with the traces of a map's circuits: gaps, missing or shapeless runs, ends that do not
 * match. A circuit that was not traced yet is no fault. O(total path).
 * @example
 * circuitFaults(sample.map) // => []
 */
export function circuitFaults(map: MapDocument): readonly Problem[] {
  const problems: Problem[] = [];
  for (const circuit of map.circuits.values()) {
    if (circuit.path.length === 0) continue;
    const laid = layStraight(map, circuit);
    if (!laid.ok) problems.push(laid.problem);
  }
  return problems;
}
