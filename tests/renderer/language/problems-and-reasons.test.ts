import { describe, expect, test } from 'vitest';
import type { CauseShare } from '#core/chafe/cause.ts';
import type { Reason } from '#core/job/ranking.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { problemSentence } from '#renderer/language/problems.ts';
import { reasonSentence } from '#renderer/language/reasons.ts';

const names: Readonly<Record<string, string>> = {
  'segment:sill': 'Left sill',
  'panel:seat': 'Front seat',
  'panel:tread': 'Tread plate',
  'rub-spot:edge': 'Seat rail edge',
  'circuit:wiper': 'Rear wiper',
};
const nameOf = (id: string): string => names[id] ?? id;

describe('problems in words', () => {
  const cases: readonly (readonly [Problem, readonly string[]])[] = [
    [
      { code: 'panel-cycle', panels: ['panel:seat', 'panel:tread'] },
      ['Front seat, then Tread plate, then Front seat', 'offFirst'],
    ],
    [
      { code: 'missing-reference', thing: 'segment:sill', field: 'toNodeId', missing: 'node:gone' },
      ['Left sill', 'toNodeId', 'node:gone'],
    ],
    [
      {
        code: 'beyond-end',
        thing: 'segment:sill',
        field: 'clips[0].stationMm',
        stationMm: 900,
        lengthMm: 500.04,
      },
      ['Left sill', 'clips[0].stationMm', '900 mm', '500 mm'],
    ],
    [
      {
        code: 'picture-oversized',
        file: 'scan.png',
        widthPx: 60_000,
        heightPx: 900,
        mostPixels: 120_000_000,
        longestSidePx: 30_000,
      },
      ['scan.png', '60 000 × 900 pixels', 'at most 30 000 pixels a side', '120 million'],
    ],
    [{ code: 'zero-length', thing: 'segment:sill' }, ['Left sill', 'no length']],
    [
      {
        code: 'circuit-broken',
        circuit: 'circuit:wiper',
        afterSegment: 'segment:sill',
        nextSegment: 'segment:roof',
      },
      ['Rear wiper', 'not connected', 'segment:roof'],
    ],
    [{ code: 'newer-version', found: 3, known: 1 }, ['version 3', 'up to 1']],
    [
      { code: 'file-unreadable', file: 'a.json', detail: 'there is no such file' },
      ['a.json', 'no such file'],
    ],
  ];

  test.each(cases)('%j says what, where and what to do', (problem, words) => {
    const { message, hint } = problemSentence(problem, nameOf);
    for (const word of words) expect(`${message} ${hint}`).toContain(word);
    expect(message).toMatch(/^\S.*\.$/);
    expect(hint).toMatch(/^[A-Z].*\.$/);
  });

  test('without names the ids stand', () => {
    expect(problemSentence({ code: 'zero-length', thing: 'segment:sill' }).message).toContain('segment:sill');
  });
});

describe('reasons in words', () => {
  const reason = (causes: readonly CauseShare[], changes: Partial<Reason> = {}): Reason => ({
    causes,
    worthRatio: 1,
    alreadyOpen: false,
    ...changes,
  });
  const edge: CauseShare = {
    cause: 'rub-spot',
    thing: 'rub-spot:edge',
    share: 0.8,
    figures: { rubSpotKind: 'raw-edge', clearanceMm: 3.2, spanMm: 330, missingClips: 1, timesFound: 2 },
  };

  test('a rub spot with its figures', () => {
    expect(reasonSentence(reason([edge]), nameOf)).toBe(
      '80 % raw edge (Seat rail edge) 3 mm away, found here before: 2. Fixings 330 mm apart, 1 fixing missing.',
    );
  });

  test('small sizes follow the user’s units', () => {
    expect(reasonSentence(reason([edge]), nameOf, 'imperial')).toContain('0.13 in away');
  });

  test('a cause too small to matter is not named, and a marked one hides the even floor', () => {
    const wet: CauseShare = { cause: 'wet', thing: null, share: 0.05, figures: {} };
    const even: CauseShare = { cause: 'anywhere', thing: null, share: 0.5, figures: {} };
    const sentence = reasonSentence(reason([even, { ...edge, share: 0.45 }, wet]), nameOf);
    expect(sentence).not.toContain('water');
    expect(sentence).not.toContain('nothing drawn');
    expect(sentence).toContain('Seat rail edge');
  });

  test('nothing marked is said plainly, with what the opening is worth', () => {
    expect(reasonSentence(reason([], { worthRatio: 2.04 }), nameOf)).toBe(
      'Nothing drawn here, chance by length alone. 2.0 times the usual chance for each minute.',
    );
    expect(reasonSentence(reason([], { worthRatio: 0.2 }), nameOf)).toContain('Slow to reach');
    expect(reasonSentence(reason([], { alreadyOpen: true }), nameOf)).toContain('Already open');
    expect(reasonSentence(reason([], { alreadyOpen: true, secondLook: true }), nameOf)).toContain(
      'second look',
    );
  });
});
