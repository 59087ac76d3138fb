import type { NextTestKind } from './next-test.ts';

/** Minutes for doing a test once its places can be reached; leads, plugs and writing down included. All judgement. */
export const testMinutes: Readonly<Record<NextTestKind, number>> = {
  unplug: 3,
  drop: 8,
  'drop-both-ends': 12,
  'lamp-for-fuse': 8,
  'ohms-both-ends': 6,
  'ohms-between': 8,
  'drop-between': 10,
  'beep-between': 5,
  capacitance: 6,
  beep: 4,
  move: 2,
};
