import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { type GuidanceCode, guidanceSources } from '#core/chafe/aircraft-guidance.ts';
import { guidanceFlags } from '#core/chafe/guidance-flags.ts';
import { loomFigures } from '#core/chafe/loom-figures.ts';
import { runCauses } from '#core/chafe/run-causes.ts';
import { segmentHazard, wholeHazard } from '#core/chafe/segment-hazard.ts';
import { mapWithChange, type RunChange, whatIf } from '#core/chafe/what-if.ts';
import { rubSpotKinds } from '#core/map/kinds.ts';
import type { Segment } from '#core/map/records.ts';
import { diameterSpreadMm } from '#core/wire/bundle.ts';
import { guidanceSentence, guidanceWords } from '#renderer/language/guidance.ts';
import {
  causeWords,
  heldWords,
  rubSpotReasons,
  sayShare,
  shareWords,
  whyLine,
} from '#renderer/language/hazard.ts';
import { loomWords } from '#renderer/language/loom-figures.ts';
import { nameOf } from '#renderer/language/name-of.ts';
import { ReasonList } from '#renderer/parts/index.ts';
import { BeforeAfter } from '#renderer/places/draw/hazard/before-after.tsx';
import { bestClipMm } from '#renderer/places/draw/hazard/best-clip.ts';
import { hazardOfMap, mapHazards } from '#renderer/places/draw/hazard/map-hazards.ts';
import { shareOnStretch, stretchAround, worstStationMm } from '#renderer/places/draw/hazard/stretch.ts';
import { sample } from '#tests/sample.ts';

const hazard = segmentHazard(sample.map, sample.middle);
if (!hazard) throw new Error('the sample run has no hazard');
const said = (id: string): string => nameOf(sample.map, id);

describe('the stretch looked at', () => {
  test('is a hand wide around the place and lies inside the run', () => {
    expect(stretchAround(500, 250)).toEqual({ fromMm: 200, toMm: 300 });
    expect(stretchAround(500, 10)).toEqual({ fromMm: 0, toMm: 100 });
    expect(stretchAround(500, 500)).toEqual({ fromMm: 400, toMm: 500 });
    expect(stretchAround(60, 30)).toEqual({ fromMm: 0, toMm: 60 });
  });

  test('the worst place of the sample run is beside its raw edge, and holds more than its length’s share', () => {
    const worst = worstStationMm(hazard);
    expect(Math.abs(worst - 250)).toBeLessThanOrEqual(30);
    expect(shareOnStretch(hazard, stretchAround(500, worst))).toBeGreaterThan(0.2);
    expect(shareOnStretch(hazard, { fromMm: 0, toMm: 500 })).toBeCloseTo(1, 9);
  });

  test('the whole map’s hazard is that of its runs together', () => {
    const hazards = mapHazards(sample.map);
    const sum = [...hazards.values()].reduce((total, each) => total + wholeHazard(each), 0);
    expect(hazardOfMap(hazards)).toBeCloseTo(sum, 12);
  });
});

describe('reasons', () => {
  const causes = runCauses(hazard, 200, 300);

  test('name the raw edge with its gap, and say how the loom is held and covered', () => {
    const first = causes[0];
    if (!first) throw new Error('no cause');
    expect(causeWords(first, said, 'metric')).toMatch(
      /^Raw edge \(Seat rail edge\) (\d+ mm away|touching the loom)$/,
    );
    const held = heldWords(causes, 'metric');
    expect(held).toMatch(
      /^Next fixings \d+ mm apart, past this run’s end, the loom hangs \d+ mm between them, PVC tape only\.$/,
    );
    expect(heldWords(causes, 'imperial')).toMatch(/ in apart/);
  });

  test('never tell of fixings where none holds the loom', () => {
    const loose = new Map(
      [...sample.map.nodes].map(([id, node]) => [id, { ...node, kind: 'loose-end' as const }]),
    );
    const bare: typeof sample.map.segments = new Map([[sample.middle.id, { ...sample.middle, clips: [] }]]);
    const clipped: typeof sample.map.segments = new Map([[sample.segment.id, sample.segment]]);
    const heldIn = (segments: typeof sample.map.segments, run: Segment, atMm: number): string => {
      const alone = segmentHazard({ ...sample.map, nodes: loose, segments }, run);
      return alone ? heldWords(runCauses(alone, atMm, atMm + 100), 'metric') : '';
    };
    expect(heldIn(bare, sample.middle, 200)).toBe('No fixing drawn on it, PVC tape only.');
    expect(heldIn(clipped, sample.segment, 400)).toBe('Free for 100 mm past the last fixing, PVC tape only.');
    expect(heldIn(clipped, sample.segment, 200)).toMatch(/^Fixings 300 mm apart/);
  });

  test('are listed with their shares for the board and for the list of openings alike', () => {
    const html = renderToStaticMarkup(<ReasonList causes={causes} nameOf={said} lengths="metric" />);
    expect(html).toContain('Seat rail edge');
    expect(html).toMatch(/\d+ %/);
    expect(renderToStaticMarkup(<ReasonList causes={[]} nameOf={said} lengths="metric" />)).toContain(
      'Nothing makes this stretch worse',
    );
  });

  test('make one line for the printed sheet, with nothing in it where nothing is known', () => {
    const line = whyLine(causes, said, 'metric');
    expect(line).toMatch(/^\d+ % raw edge \(Seat rail edge\) .*\. Next fixings \d+ mm apart/);
    expect(whyLine([], said, 'metric')).toBe('');
  });

  test('every kind of rub spot has its one line', () => {
    for (const kind of rubSpotKinds) {
      expect(rubSpotReasons[kind]).toMatch(/^[A-Z].*\.$/);
      expect(rubSpotReasons[kind].length).toBeLessThan(90);
    }
  });

  test('a share is said in figures and in words', () => {
    expect(sayShare(0.004)).toBe('under 1 %');
    expect(sayShare(0.62)).toBe('62 %');
    expect(sayShare(0)).toBe('0 %');
    expect(shareWords(0.95)).toBe('nearly all');
    expect([0.4, 0.5, 0.58].map(shareWords)).toEqual(['a good part', 'about half', 'more than half']);
    expect(shareWords(0.01)).toBe('hardly any');
  });
});

describe('the loom where it is looked at', () => {
  test('gives thickness, weight, first frequency and sag, each between its bounds and in the user’s units', () => {
    const figures = loomFigures(sample.map, sample.middle);
    const span = figures?.spans[0];
    if (!figures || !span) throw new Error('the sample run has a shape');
    const { tight, loose } = diameterSpreadMm(figures.bundle);
    const thick = loomWords.thick(figures.bundle.diameterMm, [tight, loose], 'metric');
    expect(thick).toMatch(/^Bundle [\d.]+ mm \([\d.]+ to [\d.]+\)$/);
    expect(loomWords.thick(8.4, null, 'metric')).toBe('Bundle 8 mm, as drawn');
    expect(loomWords.heavy(0.068, 9)).toBe('68 g for each metre, 9 of its wires assumed');
    const swings = /^first frequency ([\d.]+) Hz \(([\d.]+) to ([\d.]+)\)$/.exec(loomWords.swings(span.hz));
    const [mean, low, high] = (swings ?? []).slice(1).map(Number) as [number, number, number];
    expect(low).toBeLessThan(mean);
    expect(mean).toBeLessThan(high);
    expect(loomWords.sags(span.sagMm, 'imperial')).toMatch(/^sag [\d.]+ in \([\d.]+ to [\d.]+\)$/);
  });
});

describe('what if', () => {
  const changes: readonly RunChange[] = [
    { add: 'clip', stationMm: 250 },
    { add: 'sleeve', covering: 'convoluted-tube' },
    { add: 'edge-strip', rubSpotId: 'rub-spot:edge' },
  ];
  test.each(changes)('the curve drawn after a change has the hazard the figure says ($add)', (change) => {
    const tried = whatIf(sample.map, 'segment:middle', change);
    const changed = mapWithChange(sample.map, 'segment:middle', change);
    if (!tried.ok || !changed.ok) throw new Error('refused');
    const run = changed.value.segments.get('segment:middle') as Segment;
    const after = segmentHazard(changed.value, run);
    expect(after && wholeHazard(after)).toBeCloseTo(tried.value.after, 12);
    expect(tried.value.fallsBy).toBeGreaterThan(0);
  });

  test('the best place for one fixing takes away no less than each place tried by hand', () => {
    const best = bestClipMm(sample.map, sample.middle, 500);
    if (best === null) throw new Error('no place helps');
    const falls = (stationMm: number): number => {
      const tried = whatIf(sample.map, 'segment:middle', { add: 'clip', stationMm });
      return tried.ok ? tried.value.fallsBy : 0;
    };
    for (const mm of [50, 120, 200, 250, 330, 450]) {
      expect(falls(best)).toBeGreaterThanOrEqual(falls(mm) - 0.02);
    }
  });

  test('a fall and a rise are said as what they are', () => {
    const html = (after: number): string =>
      renderToStaticMarkup(<BeforeAfter before={2} after={after} ofMap={0.5} />);
    expect(html(0.5)).toContain('falls by 75 %');
    expect(html(0.5)).toContain('38 %');
    expect(html(2.4)).toContain('rise by 20 %');
    expect(html(2)).toContain('next to nothing');
  });
});

describe('aircraft guidance beside a run', () => {
  test('says the figure, the one advised and where it stands', () => {
    const flags = guidanceFlags(sample.map, sample.middle);
    const said = flags.map((flag) => [
      guidanceSentence(flag, (id) => nameOf(sample.map, id), 'metric'),
      guidanceWords.source(flag.code),
    ]);
    expect(said).toContainEqual([
      expect.stringMatching(/^Seat rail edge: a raw edge \d+ mm from the loom\. Advised: 10 mm at least/),
      'AC 43.13-1B paragraph 11-115',
    ]);
  });

  test('has a sentence of its own for every piece of guidance, and says which are from memory', () => {
    const codes = Object.keys(guidanceSources) as GuidanceCode[];
    const sentences = codes.map((code) =>
      guidanceSentence({ code, thing: 'x', atMm: 1, mm: 2, advisedMm: 3 }, () => 'Thing', 'metric'),
    );
    expect(new Set(sentences).size).toBe(codes.length);
    expect(guidanceWords.source('splice-near-end')).toBe('AC 43.13-1B, from memory');
    expect(guidanceWords.source('tight-bend')).toBe('TM 1-1500-204-23-4 item 27');
  });
});
