import { faultClasses } from '../map/kinds.ts';
import { faultResponse, soundReading } from './fault-response.ts';
import { strengthGrid } from './fault-strength.ts';
import type { JoinedReadings } from './joined-readings.ts';
import { logScore, type ShownScore } from './shown-score.ts';
import type { LadderPlaces } from './wire-ladder.ts';

/** A reading that nothing in the list explains misses by about 2.8 u (judgement). */
export const unexplainedNats = 4;

/** Decades of figures, in nats, over which something unforeseen may make a meter show anything: 0.01 to 1e7. */
const anywhereNats = Math.log(1e9);

/** Places looked at for what a reading could speak against. */
const mostPlaces = 9;

/**
 * How badly something not in the list would explain the readings: each misses by as much as an unforeseen
 * thing would make it, but by no more than it misses under the worst there is in the list. A reading
 * that could not have come out otherwise so says nothing here either.
 * @example
 * unexplainedScore({ readings: [] }, placesOnLadder(layLadder(sample.map, sample.line, []), [250]), null) // => 0
 */
export function unexplainedScore(
  { readings }: Pick<JoinedReadings, 'readings'>,
  places: LadderPlaces,
  otherPlaces: LadderPlaces | null,
): number {
  const some = thinned(places);
  const others = otherPlaces && thinned(otherPlaces);
  let sum = 0;
  for (const { metered, score, leadOhms } of readings) {
    let worst = logScore(score, soundReading(metered) + leadOhms);
    for (const kind of faultClasses) {
      const { sound, numerator, offset } = faultResponse(metered, kind, some, others);
      const { lnLeast, lnMost } = strengthGrid(kind);
      // What is shown rises or falls with the strength all along, so the worst is at its least or most.
      for (const ln of [lnLeast, lnMost])
        numerator.forEach((bend, i) => {
          const shown = sound - bend / (Math.exp(ln) + (offset[i] as number)) + leadOhms;
          worst = Math.min(worst, logScore(score, shown));
        });
    }
    sum += Math.max(-unforeseenNats(score), worst);
  }
  return sum;
}

/**
 * A sharp figure would have to be hit by what is not in the list, as a fault in the list has to hit it with
 * its strength: the chance that a figure spread evenly over the decades falls within this one's error.
 */
function unforeseenNats(score: ShownScore): number {
  if (score.kind !== 'figure') return unexplainedNats;
  const share = score.spread / Math.max(score.spread, Math.abs(score.value));
  return Math.max(unexplainedNats, -Math.log((Math.sqrt(2 * Math.PI) * share) / anywhereNats));
}

function thinned({ link, share }: LadderPlaces): LadderPlaces {
  const count = Math.min(mostPlaces, link.length);
  const at = Array.from({ length: count }, (_, i) =>
    count === 1 ? 0 : Math.round((i * (link.length - 1)) / (count - 1)),
  );
  return {
    link: Int32Array.from(at, (i) => link[i] as number),
    share: Float64Array.from(at, (i) => share[i] as number),
  };
}
