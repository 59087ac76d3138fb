import type { PlacedLook } from '#core/job/dig-looks.ts';
import type { DrawnCar } from './drawn-car.ts';
import type { NextPlace } from './simple-orders.ts';

/** The simple rules a technician may go by. */
export const simpleRules = [
  'from the module outwards',
  'from the plug just tested',
  'cheapest panel first',
  'likeliest first, trim ignored',
] as const;
export type SimpleRule = (typeof simpleRules)[number];

/** By each rule, the place with the least key is opened next. */
export function ruleKeys({
  line,
  plugTest,
  plugMm,
}: DrawnCar): Readonly<Record<SimpleRule, (place: NextPlace<PlacedLook>) => number>> {
  const startMm = plugMm ?? line.lengthMm / 2;
  return {
    'from the module outwards': ({ look }) => look.fromMm,
    'from the plug just tested': ({ look }) => {
      const middle = (look.fromMm + look.toMm) / 2;
      const isWrongSide = plugTest !== null && (plugTest.stays ? middle > startMm : middle < startMm);
      return Math.abs(middle - startMm) + (isWrongSide ? line.lengthMm : 0);
    },
    'cheapest panel first': ({ trimMinutes }) => trimMinutes,
    'likeliest first, trim ignored': ({ look }) => -look.probability,
  };
}
