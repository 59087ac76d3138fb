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
  'ohms-to-body': 3,
  'ohms-through': 3,
  'ohms-between-at-plug': 4,
};

/** Minutes for parting an inline plug that lies in reach and mating it again, besides those of the test (judgement). */
export const partingMinutes = 1;
