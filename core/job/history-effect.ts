import type { CauseShare } from '../chafe/cause.ts';
import { causesBetween } from '../chafe/causes-between.ts';
import { defaultAssumptions } from '../chafe/chafe-assumptions.ts';
import { hazardAlong } from '../chafe/hazard-along.ts';
import type { CircuitLine } from '../circuit/circuit-line.ts';
import { type History, withHistory } from '../history/teach.ts';
import { usualPriorShape } from '../locate/prior.ts';
import type { MapDocument } from '../map/map-document.ts';

/** What past jobs did to one cause on a circuit: its share of the chance along the wire before and after. */
export interface HistoryEffect {
  readonly cause: CauseShare['cause'];
  readonly thing: string | null;
  readonly before: number;
  readonly after: number;
  /** Finds of this spot or cause on this map, and of its kind on every map; shared-out finds are rounded. */
  readonly findsOnMap: number;
  readonly findsOfKind: number;
}

/** A cause whose share moved by less than this is not worth a word. */
const leastChange = 0.005;

/**
 * What past jobs changed along a circuit, largest change first: "two finds on this model raised this from 6
 * to 19 percent". Empty without past jobs.
 * @example
 * historyEffect(sample.map, sample.line, teach([], sample.map)) // => []
 */
export function historyEffect(map: MapDocument, line: CircuitLine, history: History): HistoryEffect[] {
  const shares = (taught: History | null) => {
    const field = hazardAlong(map, line, withHistory(defaultAssumptions, taught));
    const listed = causesBetween(field, 0, line.lengthMm, usualPriorShape.evenFloor);
    return new Map(listed.map((each) => [`${each.cause} ${each.thing}`, each]));
  };
  const before = shares(null);
  const after = shares(history);
  const effects: HistoryEffect[] = [];
  for (const key of new Set([...before.keys(), ...after.keys()])) {
    const each = after.get(key) ?? before.get(key);
    if (!each) continue;
    const [was, is] = [before.get(key)?.share ?? 0, after.get(key)?.share ?? 0];
    const finds = findsOf(map, each, history);
    if (Math.abs(is - was) < leastChange) continue;
    effects.push({ cause: each.cause, thing: each.thing, before: was, after: is, ...finds });
  }
  return effects.sort((a, b) => Math.abs(b.after - b.before) - Math.abs(a.after - a.before));
}

function findsOf(
  map: MapDocument,
  { cause, thing }: CauseShare,
  { found, foundOnMap }: History,
): Pick<HistoryEffect, 'findsOnMap' | 'findsOfKind'> {
  const spot = thing ? map.rubSpots.get(thing as `rub-spot:${string}`) : undefined;
  // What treads on a spot is learnt from both: the spot's own finds, and those of the cause anywhere.
  const [onMap, ofKind] = [foundOnMap.causes[cause] ?? 0, found.causes[cause] ?? 0];
  return {
    findsOnMap: Math.round(onMap + (spot ? (foundOnMap.rubSpots[spot.id] ?? 0) : 0)),
    findsOfKind: Math.round(ofKind + (spot ? (found.rubSpotKinds[spot.kind] ?? 0) : 0)),
  };
}
