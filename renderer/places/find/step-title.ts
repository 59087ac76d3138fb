import type { OpenBecause } from '#core/job/open-because.ts';
import type { DigStep } from '#core/job/ranking.ts';
import { findWords } from '../../language/find.ts';

/** What an opening is called: the panels to take off, the plug to part, or why nothing is in the way. */
export function stepTitle(step: DigStep, nameOf: (id: string) => string, because: OpenBecause): string {
  if (step.takeOff.length > 0) return step.takeOff.map(nameOf).join(', ');
  const plugs = step.look.nodeIds ?? [];
  if (plugs.length > 0 && isOnlyPlug(step)) return findWords.list.part(plugs.map(nameOf).join(', '));
  return step.reason.secondLook ? findWords.list.lookAgain : findWords.list.nothingToTakeOff[because];
}

/** The same in one name, for inside a sentence: the panel that comes off last, a plug looked into alone, or the run. */
export function shortName(step: DigStep, nameOf: (id: string) => string): string {
  const plug = isOnlyPlug(step) ? step.look.nodeIds?.[0] : undefined;
  const thing = step.takeOff.at(-1) ?? plug ?? step.look.segmentIds[0] ?? step.look.nodeIds?.[0];
  return thing ? nameOf(thing) : '';
}

const isOnlyPlug = ({ look }: DigStep): boolean => look.toMm - look.fromMm < 1;
