import type { ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { layStraight } from '#core/circuit/circuit-line.ts';
import { teach } from '#core/history/teach.ts';
import type { Job, JobEntry } from '#core/job/job-document.ts';
import { pastJob } from '#core/job/past-job.ts';
import { rank } from '#core/job/rank.ts';
import { rankSensitivity } from '#core/job/rank-sensitivity.ts';
import { standingEntries } from '#core/job/standing-entries.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { firmSentence, historySentence, openingHistorySentence } from '#renderer/language/told.ts';
import { FindContext, type FindView } from '#renderer/places/find/find-context.ts';
import { firmnessOf, openingName } from '#renderer/places/find/firmness-of.ts';
import { KnownPanel } from '#renderer/places/find/known/known-panel.tsx';
import { mostRaised, openingTold } from '#renderer/places/find/known/opening-told.ts';
import { takenOutOfOrder } from '#renderer/places/find/order-taken.ts';
import {
  entriesFor,
  pairsOverOnePlace,
  panelStanding,
  panelsInTheWay,
} from '#renderer/places/find/wishes/panel-standing.ts';
import { WishPanel } from '#renderer/places/find/wishes/wish-panel.tsx';
import { jobSession } from '#renderer/session/job-session.ts';
import { provedAt } from '#tests/core/job/proved-at.ts';
import { sample } from '#tests/sample.ts';

const at = '2026-01-05T10:00:00Z';
const nothing = (): void => {};
const find = provedAt([{ segmentId: 'segment:middle', fromMm: 200, toMm: 300 }]);
const past = (['job:a', 'job:b'] as const).flatMap(
  (id) => pastJob(sample.map, { ...sample.job, id, entries: [...find] }) ?? [],
);
const history = teach(past, sample.map);
const name = (id: string): string => id;

function ranked(job: Job, map: MapDocument = sample.map) {
  const answer = rank(map, job, { history, withTold: true, regretSteps: 12 });
  if (!answer.ok) throw new Error(answer.problem.code);
  return answer.value;
}

function viewOf(job: Job, map: MapDocument = sample.map): FindView {
  const sum = { jobs: 2, found: history.found, expected: history.found };
  const line = layStraight(map, sample.circuit);
  return {
    session: jobSession('job:tiny', {
      client: async () => ({ ok: false, problem: { code: 'no-answer', detail: '' } }),
    }),
    open: {
      job,
      map,
      line: line.ok ? line.value : null,
      ranking: ranked(job, map),
      rankingBefore: null,
      changedBy: [],
      rankProblem: null,
      firmness: null,
      past: { all: sum, onMap: sum },
      thinking: false,
      saving: 'saved',
      saveProblem: null,
    },
    standing: standingEntries(job),
    lengths: 'metric',
    say: (each) => each,
    where: () => ({ figures: '', unit: '', words: '' }),
    pointed: [],
    pointedEntry: null,
    point: nothing,
    picked: null,
    pick: nothing,
    cautionsRead: new Set(),
    reading: null,
    openReading: nothing,
    closeReading: nothing,
  };
}

const shown = (view: FindView, part: ReactNode): string =>
  renderToStaticMarkup(<FindContext value={view}>{part}</FindContext>);

describe('what is known beforehand, under each opening', () => {
  const job: Job = { ...sample.job, recentWork: ['seat'], symptoms: [] };
  const ranking = ranked(job);
  const seat = ranking.digPlan.find(({ takeOff }) => takeOff.includes('panel:seat'));
  if (!seat) throw new Error('the seat is in the way');

  test('finds on this model are said with what they did, and so is work on the seat where it counts', () => {
    expect(openingTold(seat, ranking)).toEqual([expect.stringMatching(/^Seat out and back: raised this/)]);
    const atRear = provedAt([{ segmentId: 'segment:rear', fromMm: 200, toMm: 300 }]);
    const pastRear = (['job:c', 'job:d'] as const).flatMap(
      (id) => pastJob(sample.map, { ...sample.job, id, entries: [...atRear] }) ?? [],
    );
    const taught = rank(sample.map, sample.job, { history: teach(pastRear, sample.map), withTold: true });
    if (!taught.ok) throw new Error(taught.problem.code);
    const rear = taught.value.digPlan.find(({ look }) => look.segmentIds.includes('segment:rear'));
    if (!rear) throw new Error('the rear run hangs in the open');
    expect(openingTold(rear, taught.value)).toEqual([
      expect.stringMatching(/^Two finds on this model raised this from \d+ to \d+ %\.$/),
    ]);
    const alone = rank(sample.map, job, { withTold: true });
    if (!alone.ok) throw new Error(alone.problem.code);
    const step = alone.value.digPlan.find(({ takeOff }) => takeOff.includes('panel:seat'));
    if (!step) throw new Error('the seat is in the way');
    expect(openingTold(step, alone.value)).toEqual([
      expect.stringMatching(/^Seat out and back: raised this from \d+ to \d+ %\.$/),
    ]);
  });

  test('the summary names the opening that an answer raised most', () => {
    expect(mostRaised(ranking, 'seat')?.step.takeOff).toContain('panel:seat');
    expect(mostRaised(ranking, 'audio')).toBeNull();
  });

  test('the panel shows the switch, the counts and each answer with its effect', () => {
    const text = shown(viewOf(job), <KnownPanel onIntake={nothing} />);
    expect(text).toContain('Let past jobs change this order');
    expect(text).toContain('Two on this model, 2 in all that teach something.');
    expect(text).toMatch(/Two finds on this model raised “[^”]*(Seat rail|edge)[^”]*” from \d+ to \d+ %/);
    expect(text).toMatch(/Seat out and back<\/b>: raises Front seat most, from \d+ to \d+ %/);
  });

  test('switched off, the panel says nothing of what past jobs did', () => {
    const off: JobEntry = { id: 'entry:off', at, type: 'past-jobs', use: false };
    const text = shown(viewOf({ ...job, entries: [off] }), <KnownPanel onIntake={nothing} />);
    expect(text).not.toContain('on this model raised');
  });

  test('where nobody asked, it says so, and an asked nothing is not the same', () => {
    expect(shown(viewOf(sample.job), <KnownPanel onIntake={nothing} />)).toContain('Nobody asked yet');
    const asked = { ...sample.job, recentWork: [], symptoms: [] };
    expect(shown(viewOf(asked), <KnownPanel onIntake={nothing} />)).toContain('Asked: nothing done lately');
  });

  test('a change of less than a whole percent is not worth a sentence', () => {
    expect(openingHistorySentence(null, 0.201, 0.203)).toBeNull();
    expect(openingHistorySentence({ findsOnMap: 0, findsOfKind: 3 }, 0.06, 0.19)).toBe(
      'Three finds of this kind on other cars raised this from 6 to 19 %.',
    );
    expect(openingHistorySentence(null, 0.3, 0.2)).toBe(
      'Past jobs that found it elsewhere lowered this from 30 to 20 %.',
    );
    const effect = { cause: 'foot-load', thing: 'segment:middle', findsOfKind: 1 } as const;
    expect(historySentence({ ...effect, before: 0.06, after: 0.19, findsOnMap: 1 }, name)).toBe(
      'One find on this model raised “trodden on under the carpet” at segment:middle from 6 to 19 %.',
    );
  });
});

describe('how firm the order is', () => {
  const ranking = ranked(sample.job);
  const firmness = rankSensitivity(sample.map, sample.job, { draws: 8, history });
  if (!firmness.ok) throw new Error(firmness.problem.code);

  test('is said of the opening it speaks of, and of no other', () => {
    const [first] = ranking.digPlan;
    if (!first) throw new Error('a plan');
    expect(firmnessOf(first, firmness.value)?.rank).toBe(1);
    expect(firmnessOf({ ...first, takeOff: ['panel:other'] }, firmness.value)).toBeNull();
    expect(firmnessOf(first, null)).toBeNull();
  });

  test('names the one that could stand there instead', () => {
    const opening = { takeOff: ['panel:a'], segmentIds: [], share: 0.55 } as const;
    const rival = { takeOff: ['panel:b'], segmentIds: [], share: 0.4 } as const;
    const either = { rank: 1, standing: 'either', opening, rival } as const;
    expect(firmSentence(either, openingName(rival, name))).toBe('Could be either: this or panel:b');
    expect(firmSentence({ ...either, standing: 'firm' }, '')).toBe(
      'Firm: stands here in 55 % of tries with the unsure figures changed',
    );
    expect(firmSentence({ ...either, standing: 'unsettled' }, '')).toContain('Not settled');
  });
});

describe('wishes for the order', () => {
  test('a panel stands as its last entry says, and only what changes is entered', () => {
    const stays: JobEntry = {
      id: 'entry:s',
      at,
      type: 'panel-wish',
      panelId: 'panel:seat',
      wish: 'stays-on',
    };
    expect(panelStanding([stays], 'panel:seat')).toBe('stays-on');
    expect(panelStanding([stays], 'panel:tread')).toBe('as-planned');
    const off: JobEntry = { id: 'entry:o', at, type: 'panel-off', panelId: 'panel:seat' };
    expect(panelStanding([stays, off], 'panel:seat')).toBe('off');
    expect(entriesFor('panel:seat', 'off', 'off')).toEqual([]);
    expect(entriesFor('panel:seat', 'off', 'out-anyway')).toEqual([
      { type: 'panel-on', panelId: 'panel:seat' },
      { type: 'panel-wish', panelId: 'panel:seat', wish: 'out-anyway' },
    ]);
  });

  test('panels in the way are listed, and a pair only where one does not wait for the other', () => {
    expect(panelsInTheWay(sample.map, sample.line).map(({ id }) => id)).toEqual([
      'panel:tread',
      'panel:seat',
    ]);
    expect(pairsOverOnePlace(sample.map, sample.line)).toEqual([]);
    const panels = new Map(sample.map.panels);
    const seat = panels.get('panel:seat');
    if (!seat) throw new Error('the seat is on the map');
    panels.set('panel:seat', { ...seat, offFirst: [] });
    const free = { ...sample.map, panels };
    expect(pairsOverOnePlace(free, sample.line)).toEqual([['panel:seat', 'panel:tread']]);
    const text = shown(viewOf(sample.job, free), <WishPanel />);
    expect(text).toContain('Front seat or Tread plate');
    expect(text).toContain('One is enough');
  });

  test('in a closed job nothing can be wished any more', () => {
    const end: JobEntry = { id: 'entry:e', at, type: 'close', outcome: 'not-found', reason: 'x', advice: '' };
    expect(shown(viewOf({ ...sample.job, entries: [end] }), <WishPanel />)).toMatch(/<fieldset[^>]*disabled/);
    expect(shown(viewOf(sample.job), <WishPanel />)).not.toMatch(/<fieldset[^>]*disabled/);
  });
});

describe('another order than the list’s', () => {
  const ranking = ranked(sample.job);
  const [first] = ranking.digPlan;
  const later = ranking.digPlan.find(
    ({ takeOff, rank: place }) => place > 1 && takeOff.includes('panel:seat'),
  );
  if (!first || !later) throw new Error('a plan of several openings');

  test('is noticed when a panel comes off that only a later opening needs', () => {
    const off: JobEntry = { id: 'entry:o', at, type: 'panel-off', panelId: 'panel:seat' };
    expect(takenOutOfOrder(ranking, [off])).toBe(later);
    expect(later.regretMinutes).toBeGreaterThanOrEqual(0);
  });

  test('is not noticed when the list is followed, or when the intake changed', () => {
    const stretches = first.look.parts.map(({ segmentId }) => ({ segmentId, fromMm: 0, toMm: 100 }));
    const look: JobEntry = { ...find[0], id: 'entry:l', result: 'seen-sound', stretches };
    expect(takenOutOfOrder(ranking, [look])).toBeNull();
    expect(takenOutOfOrder(ranking, ['intake', 'past-jobs'])).toBeNull();
  });
});
