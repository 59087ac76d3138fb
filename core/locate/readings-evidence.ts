import type { ReadingsLikelihood } from '../circuit/reading-likelihood.ts';
import { componentAt, type Evidence, noneAt } from './hypotheses.ts';

/**
 * Middles of cells: the stations at which a likelihood must be worked out to serve as evidence on them.
 * @example
 * cellMiddlesMm(new Float64Array([0, 10, 20])) // => Float64Array.of(5, 15)
 */
export function cellMiddlesMm(cellEdgesMm: Float64Array): Float64Array {
  return Float64Array.from(
    { length: cellEdgesMm.length - 1 },
    (_, i) => ((cellEdgesMm[i] as number) + (cellEdgesMm[i + 1] as number)) / 2,
  );
}

/**
 * What the electrical readings say together, worked out at the middles of the same cells, as evidence.
 * A part the circuit knows nothing of stands as if nothing were wrong with the wire.
 * @example
 * readingsEvidence(readingsLogLikelihood(sample.map, sample.line, [], { stationsMm: Float64Array.of(5, 15) }))(layHypotheses(new Float64Array([0, 10, 20]), []))[0] // => 0
 */
export function readingsEvidence(
  said: Pick<ReadingsLikelihood, 'byClass' | 'components' | 'noFault' | 'noneOfThese'>,
): Evidence {
  return (hypotheses) => {
    const row = new Float64Array(hypotheses.size);
    hypotheses.classes.forEach((kind, k) => {
      row.set(said.byClass[kind], k * hypotheses.cellCount);
    });
    hypotheses.components.forEach(({ nodeId, place }, i) => {
      const part = said.components.find((each) => each.nodeId === nodeId && each.place === place);
      row[componentAt(hypotheses, i)] = part?.logLikelihood ?? said.noFault;
    });
    row[noneAt(hypotheses)] = said.noneOfThese;
    return row;
  };
}
