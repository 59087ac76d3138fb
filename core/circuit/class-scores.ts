import type { FaultClass } from '../map/kinds.ts';
import { type FaultResponse, faultResponse } from './fault-response.ts';
import { strengthGrid } from './fault-strength.ts';
import { type JoinedReadings, pushed, raised } from './joined-readings.ts';
import { injectorScore } from './shown-score.ts';
import { type ReadingTerm, type StrengthMarginal, strengthMarginal } from './strength-marginal.ts';
import type { LadderPlaces } from './wire-ladder.ts';

/**
 * Joint log-likelihood of connected readings for one class of fault at each place, its strength
 * integrated out.
 * @example
 * classScores({ readings: [] }, 'open', { link: Int32Array.of(0), share: Float64Array.of(0) }, null).bestFit // => 0
 */
export function classScores(
  { readings }: Pick<JoinedReadings, 'readings'>,
  faultClass: FaultClass,
  places: LadderPlaces,
  otherPlaces: LadderPlaces | null,
): StrengthMarginal {
  const terms: ReadingTerm[] = [];
  for (const { from, metered, drawn, score, leadOhms } of readings) {
    // A drop on a wire that is shorted to a live supply is taken with a load: the current comes out.
    const isDrawn = faultClass === 'short-to-supply' && drawn !== null;
    const circuit = isDrawn ? drawn : metered;
    const response = raised(faultResponse(circuit, faultClass, places, otherPlaces), leadOhms);
    terms.push({ response: isDrawn ? turned(response) : response, score });
    if (from.reading.test === 'drop' && !isDrawn)
      terms.push({
        response: faultResponse(pushed(metered), faultClass, places, otherPlaces),
        score: injectorScore,
      });
  }
  return strengthMarginal(terms, strengthGrid(faultClass), places.link.length);
}

/** The other sign: millivolts are noted as a size. */
function turned(response: FaultResponse): FaultResponse {
  return {
    ...response,
    sound: -response.sound,
    numerator: response.numerator.map((value) => -value),
  };
}
