import { causesBetween } from '../chafe/causes-between.ts';
import type { HazardField } from '../chafe/hazard-field.ts';
import type { DigOpening } from '../dig/plan-dig.ts';
import { usualPriorShape } from '../locate/prior.ts';
import type { PlacedLook } from './dig-looks.ts';
import type { DigStep, StretchProbability, Told } from './ranking.ts';

/** The chance of each look, by its id, if one piece of evidence were not known. */
export interface ChancesWithout {
  readonly told: Told;
  readonly chances: ReadonlyMap<string, number>;
}

/**
 * The plan as the user reads it: numbered openings with running minutes and running chance, what is
 * then in view joined into pieces, and why each stands where it does.
 * @example
 * digSteps(sample.field, []) // => []
 */
export function digSteps(
  field: HazardField,
  openings: readonly DigOpening<PlacedLook>[],
  without: readonly ChancesWithout[] = [],
): DigStep[] {
  const minutesInAll = openings.reduce((sum, opening) => sum + opening.minutes, 0);
  const seenInAll = openings.reduce((sum, opening) => sum + opening.seen, 0);
  let runningMinutes = 0;
  let runningProbability = 0;
  return openings.map((opening, i) => {
    runningMinutes += opening.minutes;
    runningProbability += opening.seen;
    const looks = [...opening.looks].sort((a, b) => a.fromMm - b.fromMm || a.toMm - b.toMm);
    const parts = joinLooks(looks);
    const likeliest = parts.reduce<StretchProbability | null>(
      (best, part) => (best && best.probability >= part.probability ? best : part),
      null,
    );
    return {
      rank: i + 1,
      takeOff: opening.takeOff,
      minutes: opening.minutes,
      look: {
        segmentIds: [...new Set(looks.map((look) => look.segmentId))],
        fromMm: Math.min(...looks.map((look) => look.fromMm)),
        toMm: Math.max(...looks.map((look) => look.toMm)),
        parts,
        nodeIds: looks.flatMap((look) => (look.nodeId ? [look.nodeId] : [])),
      },
      probability: opening.seen,
      runningMinutes,
      runningProbability,
      reason: {
        causes: likeliest
          ? causesBetween(field, likeliest.fromMm, likeliest.toMm, usualPriorShape.evenFloor)
          : looks.map(({ nodeId }) => ({
              cause: 'joint',
              thing: nodeId,
              share: 1 / looks.length,
              figures: {},
            })),
        worthRatio: opening.seen / opening.minutes / (seenInAll / minutesInAll),
        alreadyOpen: opening.takeOff.length === 0,
        secondLook: opening.again,
        ...(opening.half ? { halfView: true as const } : {}),
      },
      ...(without.length > 0
        ? { told: without.map((each) => ({ told: each.told, without: seenWithout(opening, each.chances) })) }
        : {}),
    };
  });
}

/** What is seen in an opening is in proportion to the chances of its looks. */
function seenWithout(
  { looks, again, seen }: DigOpening<PlacedLook>,
  chances: ReadonlyMap<string, number>,
): number {
  let [now, then] = [0, 0];
  for (const { id, probability, quality } of looks) {
    const weight = again ? quality * (1 - quality) : quality;
    now += weight * probability;
    then += weight * (chances.get(id) ?? 0);
  }
  return now > 0 ? (seen * then) / now : 0;
}

/** Looks along the loom as pieces without inner borders; neighbours on one run are joined. */
function joinLooks(looks: readonly PlacedLook[]): StretchProbability[] {
  const parts: StretchProbability[] = [];
  for (const { segmentId, fromMm, toMm, probability, nodeId } of looks) {
    if (nodeId) continue;
    const last = parts.at(-1);
    if (last && last.segmentId === segmentId && last.toMm === fromMm) {
      parts[parts.length - 1] = { ...last, toMm, probability: last.probability + probability };
    } else parts.push({ segmentId, fromMm, toMm, probability });
  }
  return parts;
}
