import { describe, expect, test } from 'vitest';
import type { JobEntry } from '#core/job/job-document.ts';
import { rank } from '#core/job/rank.ts';
import { litOf } from '#renderer/places/find/lit-of.ts';
import { lookPieces } from '#renderer/places/find/look-pieces.ts';
import { openingRanks } from '#renderer/places/find/opening-ranks.ts';
import { stretchUnder } from '#renderer/places/find/stretch-under.ts';
import { sample } from '#tests/sample.ts';

const ranked = rank(sample.map, sample.job);
if (!ranked.ok) throw new Error('the tiny sample can be ranked');
const ranking = ranked.value;
const look = (result: 'seen-sound' | 'found'): JobEntry => ({
  id: 'entry:look',
  at: '2026-01-05T10:00:00Z',
  type: 'inspection',
  stretches: [{ segmentId: 'segment:middle', fromMm: 100, toMm: 300 }],
  result,
  lookQuality: 0.95,
  note: '',
});

describe('the circuit lit on the board', () => {
  const lit = litOf(sample.line, ranking, [], [{ fromMm: 450, toMm: 600 }]);

  test('covers every run of the circuit from end to end without gaps', () => {
    for (const span of sample.line.spans) {
      const stretches = [...(lit.stretches.get(span.segment.id) ?? [])].sort((a, b) => a.fromMm - b.fromMm);
      expect(stretches[0]?.fromMm).toBeCloseTo(0, 6);
      expect(stretches.at(-1)?.toMm).toBeCloseTo(span.line.lengthMm, 6);
      for (const [i, stretch] of stretches.slice(1).entries()) {
        expect(stretch.fromMm).toBeCloseTo(stretches[i]?.toMm as number, 6);
      }
    }
  });

  test('is brightest where a place is likeliest for its length', () => {
    const { cellEdgesMm, cellProbability } = ranking.posterior;
    const density = Array.from(
      cellProbability,
      (p, i) => p / ((cellEdgesMm[i + 1] as number) - (cellEdgesMm[i] as number)),
    );
    const peakMm = cellEdgesMm[density.indexOf(Math.max(...density))] as number;
    const span = sample.line.spans.find((each) => peakMm >= each.fromMm && peakMm < each.toMm);
    const at = peakMm - (span?.fromMm ?? 0) + 0.01;
    const all = [...lit.stretches.values()].flat();
    const here = (lit.stretches.get(span?.segment.id as 'segment:middle') ?? []).find(
      (stretch) => at >= stretch.fromMm && at <= stretch.toMm,
    );
    expect(here?.level).toBe(Math.max(...all.map((stretch) => stretch.level)));
  });

  test('what is pointed at is given run by run', () => {
    expect(lit.pointed).toEqual([
      { segmentId: 'segment:front', fromMm: 450, toMm: 500 },
      { segmentId: 'segment:middle', fromMm: 0, toMm: 100 },
    ]);
  });

  test('a look leaves its mark, and a proved cause ends the numbering', () => {
    expect(litOf(sample.line, ranking, [look('seen-sound')], []).marks).toEqual([
      { kind: 'clean', segmentId: 'segment:middle', fromMm: 100, toMm: 300 },
    ]);
    const found = litOf(sample.line, ranking, [look('found')], []);
    expect(found.marks).toEqual([{ kind: 'found', segmentId: 'segment:middle', atMm: 200 }]);
    const ranks = (of: typeof lit): number =>
      [...of.stretches.values()].flat().filter((stretch) => stretch.rank !== undefined).length;
    expect(ranks(lit)).toBeGreaterThan(0);
    expect(ranks(found)).toBe(0);
  });
});

describe('the numerals of the openings', () => {
  test('each stands on a place its own opening shows, and the first opening has one', () => {
    const { peaks } = openingRanks(ranking);
    expect(peaks[0]?.rank).toBe(1);
    for (const peak of peaks) {
      const step = ranking.digPlan.find((each) => each.rank === peak.rank);
      const shown = step ? lookPieces(step) : [];
      expect(shown.some((piece) => peak.stationMm >= piece.fromMm && peak.stationMm <= piece.toMm)).toBe(
        true,
      );
    }
  });
});

describe('which openings are numbered on the board', () => {
  const many = {
    ...ranking,
    digPlan: Array.from({ length: 9 }, (_, i) => ({
      ...(ranking.digPlan[0] as (typeof ranking.digPlan)[number]),
      rank: i + 1,
      probability: i === 8 ? 0.05 : 0.01,
      look: {
        segmentIds: [],
        fromMm: i * 160,
        toMm: i * 160 + 150,
        parts: [
          { segmentId: 'segment:front' as const, fromMm: i * 160, toMm: i * 160 + 150, probability: 0.01 },
        ],
      },
    })),
  };

  test('the first six, and later ones with two percent or more; the rest would only crowd it', () => {
    const numbered = [...litOf(sample.line, many, [], []).stretches.values()]
      .flat()
      .flatMap((stretch) => (stretch.rank === undefined ? [] : [stretch.rank]));
    expect(numbered.sort()).toEqual([1, 2, 3, 4, 5, 6, 9]);
    const { peaks } = openingRanks(many);
    expect(peaks.filter((peak) => !peak.worthShowing).map((peak) => peak.rank)).toEqual([7, 8]);
  });
});

describe('pointing at the board', () => {
  const { stretches } = ranking.posterior;
  const at = { xMm: 750, yMm: 0 };

  test('finds the stretch under the pointer, also when a fixing lies over it', () => {
    const run = { kind: 'segment', id: 'segment:middle', stationMm: 250, at, distanceMm: 2 } as const;
    const clip = {
      kind: 'clip',
      id: 'clip:a',
      segmentId: 'segment:front',
      stationMm: 100,
      at,
      distanceMm: 1,
    } as const;
    const onRun = stretchUnder(sample.line, stretches, [run]);
    expect(onRun && onRun.fromMm <= 750 && onRun.toMm >= 750).toBe(true);
    expect(stretchUnder(sample.line, stretches, [clip])?.segmentId).toBe('segment:front');
  });

  test('gives nothing away from the circuit', () => {
    const other = { kind: 'segment', id: 'segment:other', stationMm: 5, at, distanceMm: 2 } as const;
    expect(stretchUnder(sample.line, stretches, [other])).toBeNull();
    expect(stretchUnder(sample.line, stretches, [])).toBeNull();
  });
});
