import { describe, expect, test } from 'vitest';
import { type NextTest, type NextTestKind, nextTestKinds } from '#core/job/next-test.ts';
import { formsOfTest } from '#renderer/places/find/readings/forms-of-test.ts';
import type { ReadingForm, ReadingTest } from '#renderer/places/find/readings/reading-form.ts';
import { sample } from '#tests/sample.ts';

const { map, line } = sample;
const ground = { map, line, standing: [], meter: null, picked: null };
const bothApart = {
  apartNodeIds: ['node:west', 'node:far'],
  switchClosed: null,
  ignitionOn: false,
  batteryConnected: false,
} as const satisfies NextTest['state'];

const proposed = (kind: NextTestKind, changes: Partial<NextTest> = {}): NextTest => ({
  kind,
  nodeIds: ['node:west', 'node:far'],
  sides: [null, null],
  towardsId: null,
  other: null,
  ranges: [],
  stretches: [],
  state: bothApart,
  takeOff: [],
  outcomes: [],
  minutes: 5,
  minutesSaved: 3,
  bits: 1,
  injection: null,
  expected: null,
  betterAfterOpening: false,
  ...changes,
});
const wire = (nodeId: string) => ({ on: 'wire', nodeId });
const supply = {
  way: 'limited-supply',
  amps: 0.1,
  supplyVolts: 12,
  seriesOhms: 120,
  seriesWatts: 2.4,
  fuseA: 1,
  longestS: 30,
} as const;

/** What each proposed test asks to be written down: only the figure or the answer is left empty. */
const expected: Readonly<
  Record<NextTestKind, readonly (readonly [ReadingTest, Partial<Record<keyof ReadingForm, unknown>>])[]>
> = {
  unplug: [['symptom', { yes: null }]],
  move: [['move', { pieces: [{ fromMm: 200, toMm: 400 }], tried: '10', changed: '' }]],
  beep: [['beep', { from: wire('node:west'), to: wire('node:far'), yes: null }]],
  drop: [['drop', { from: wire('node:west'), to: wire('node:far'), current: '0.1' }]],
  'drop-both-ends': [
    ['drop', { from: wire('node:west'), to: wire('node:far') }],
    ['drop', { from: wire('node:far'), to: wire('node:west') }],
  ],
  'lamp-for-fuse': [['drop', { from: wire('node:west'), to: wire('node:far') }]],
  'ohms-both-ends': [
    ['ohms', { from: wire('node:west'), to: { on: 'body' } }],
    ['ohms', { from: wire('node:far'), to: { on: 'body' } }],
  ],
  capacitance: [
    ['capacitance', { from: wire('node:west') }],
    ['capacitance', { from: wire('node:far') }],
  ],
  'beep-between': [['beep', { to: { ...wire('node:west'), circuitId: 'circuit:beside' } }]],
  'ohms-between': [
    ['ohms', { from: wire('node:west'), to: { ...wire('node:west'), circuitId: 'circuit:beside' } }],
    ['ohms', { from: wire('node:far'), to: { ...wire('node:far'), circuitId: 'circuit:beside' } }],
  ],
  'ohms-to-body': [['ohms', { from: { ...wire('node:middle'), side: 'second-end' }, to: { on: 'body' } }]],
  'ohms-through': [['ohms', { from: wire('node:west'), to: { ...wire('node:middle'), side: 'first-end' } }]],
  'ohms-between-at-plug': [
    [
      'ohms',
      {
        from: { ...wire('node:middle'), side: 'second-end' },
        to: { ...wire('node:middle'), side: 'first-end', circuitId: 'circuit:beside' },
      },
    ],
  ],
  'drop-between': [['drop', { from: wire('node:west'), to: wire('node:far') }]],
};

/** Where the leads of tests at a parted plug go; those of the others go to the two ends. */
const places: Partial<Record<NextTestKind, Partial<NextTest>>> = {
  'ohms-to-body': { nodeIds: ['node:middle'], sides: ['second-end'], towardsId: 'node:far' },
  'ohms-through': { nodeIds: ['node:west', 'node:middle'], sides: [null, 'first-end'] },
  'ohms-between-at-plug': {
    nodeIds: ['node:middle'],
    sides: ['second-end'],
    other: { circuitId: 'circuit:beside', nodeIds: ['node:middle'], sides: ['first-end'] },
  },
};

describe('the reading of a proposed test', () => {
  for (const kind of nextTestKinds) {
    test(`${kind}: leads, place and car are filled in, only what it showed is left`, () => {
      const forms = formsOfTest(
        proposed(kind, {
          injection: kind === 'drop' ? supply : null,
          ranges: kind === 'move' ? [{ fromMm: 200, toMm: 400 }] : [],
          other: kind.endsWith('between')
            ? { circuitId: 'circuit:beside', nodeIds: ['node:west', 'node:far'], sides: [null, null] }
            : null,
          ...places[kind],
        }),
        ground,
      );
      expect(forms.map((form) => form.test)).toEqual(expected[kind].map(([name]) => name));
      for (const [i, [, fields]] of expected[kind].entries()) {
        expect(forms[i]).toMatchObject(fields);
        expect(forms[i]).toMatchObject({ figure: '', instead: null, state: bothApart });
      }
    });
  }
});
