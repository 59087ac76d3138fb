import type { DigStep } from '#core/job/ranking.ts';
import { findWords } from '../../language/find.ts';

/** What an opening is called: the panels to take off, the plug to part, or that it is open already. */
export function stepTitle(step: DigStep, nameOf: (id: string) => string): string {
  if (step.takeOff.length > 0) return step.takeOff.map(nameOf).join(', ');
  const plugs = step.look.nodeIds ?? [];
  const onlyPlug = step.look.toMm - step.look.fromMm < 1;
  if (plugs.length > 0 && onlyPlug) return findWords.list.part(plugs.map(nameOf).join(', '));
  return step.reason.secondLook ? findWords.list.lookAgain : findWords.list.nothingToTakeOff;
}

/** The same in one name, for inside a sentence: the panel that comes off last, a plug, or the run. */
export function shortName(step: DigStep, nameOf: (id: string) => string): string {
  const thing = step.takeOff.at(-1) ?? step.look.nodeIds?.[0] ?? step.look.segmentIds[0];
  return thing ? nameOf(thing) : '';
}
