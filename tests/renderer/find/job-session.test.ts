import { describe, expect, test, vi } from 'vitest';
import { emptyTally } from '#core/history/past-jobs.ts';
import type { PastSums } from '#core/history/teach.ts';
import type { Job, JobEntry } from '#core/job/job-document.ts';
import { rank } from '#core/job/rank.ts';
import { rankSensitivity } from '#core/job/rank-sensitivity.ts';
import { mapToExchange } from '#core/map/exchange.ts';
import { seededChance } from '#core/quantity/chance.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { type Channel, clientOver } from '#electron/contract/client.ts';
import { intakeOf } from '#renderer/places/find/intake-of.ts';
import { type JobOpen, jobSession, type NewEntry } from '#renderer/session/job-session.ts';
import type { FirmAnswer, MakeRanker, RankAnswer, RankQuestion } from '#renderer/session/ranker.ts';
import { sample } from '#tests/sample.ts';

/** A host of one job, in memory. `refuse` makes the next appends fail with that problem. */
interface OneJobHost {
  job: Job;
  refuse: Problem | null;
  past: PastSums;
  /** Closed jobs not yet worked out, request by request. */
  waiting: number[];
  channel: Channel;
}

const nothing = { found: emptyTally, expected: emptyTally };
const oneFind = (jobs: number): PastSums => {
  const found = { ...emptyTally, rubSpotKinds: { 'raw-edge': jobs }, rubSpots: { 'rub-spot:edge': jobs } };
  const expected = { ...emptyTally, rubSpotKinds: { 'raw-edge': 0.4 }, rubSpots: { 'rub-spot:edge': 0.4 } };
  const sum = { jobs, found, expected };
  return { all: sum, onMap: sum };
};

function oneJobHost(): OneJobHost {
  const host: OneJobHost = {
    job: sample.job,
    refuse: null,
    past: { all: { jobs: 0, ...nothing }, onMap: { jobs: 0, ...nothing } },
    waiting: [],
    channel: async (name, input) => {
      if (name === 'job.open') {
        return { ok: true, value: { job: host.job, map: mapToExchange(sample.map) } };
      }
      if (name === 'jobs.taught') {
        return { ok: true, value: { sums: host.past, waiting: host.waiting.shift() ?? 0 } };
      }
      if (name === 'job.append') {
        const { expectedEntries, entries } = input as { expectedEntries: number; entries: JobEntry[] };
        if (host.refuse) return { ok: false, problem: host.refuse };
        const found = host.job.entries.length;
        if (found !== expectedEntries) {
          return { ok: false, problem: { code: 'stale-revision', expected: expectedEntries, found } };
        }
        host.job = { ...host.job, entries: [...host.job.entries, ...entries] };
        return { ok: true, value: { entryCount: host.job.entries.length } };
      }
      return { ok: true, value: {} };
    },
  };
  return host;
}

/** A ranker that answers only when told to, so that a test can let answers come late. */
function heldRanker() {
  const asked: RankQuestion[] = [];
  const taught: (PastSums | null)[] = [];
  let give: (answer: RankAnswer | FirmAnswer) => void = () => {};
  const makeRanker: MakeRanker = (_, answer) => {
    give = answer;
    return {
      ask: (question) => asked.push(question),
      teach: (past) => taught.push(past),
      stop: () => {},
    };
  };
  const answer = (question: RankQuestion | undefined): void => {
    if (question) give({ revision: question.revision, result: rank(sample.map, question.job) });
  };
  const answerFirm = (question: RankQuestion | undefined): void => {
    const firmness = rankSensitivity(sample.map, question?.job ?? sample.job, { draws: 2 });
    if (question && firmness.ok) give({ revision: question.revision, firmness: firmness.value });
  };
  return { asked, taught, makeRanker, answer, answerFirm };
}

async function openSession(prepare: (host: OneJobHost) => void = () => {}) {
  const host = oneJobHost();
  prepare(host);
  const ranker = heldRanker();
  const session = jobSession('job:tiny', {
    client: clientOver(host.channel),
    makeRanker: ranker.makeRanker,
    now: () => '2026-01-05T10:00:00Z',
    chance: seededChance(5),
  });
  await session.open();
  const state = (): JobOpen => {
    const now = session.store.getState();
    if (now.phase !== 'open') throw new Error('the job is open');
    return now;
  };
  return { host, ranker, session, state };
}

const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
const treadOff = { type: 'panel-off', panelId: 'panel:tread' } as const;
const soundLook: NewEntry = {
  type: 'inspection',
  stretches: [{ segmentId: 'segment:middle', fromMm: 100, toMm: 500 }],
  result: 'seen-sound',
  lookQuality: 0.95,
  note: '',
};

describe('an open job', () => {
  test('is ranked as soon as it is open', async () => {
    const { ranker, state } = await openSession();
    expect(ranker.asked).toHaveLength(1);
    expect(state().ranking).toBeNull();
    ranker.answer(ranker.asked[0]);
    expect(state().ranking?.digPlan.length).toBeGreaterThan(0);
    expect(state().line?.lengthMm).toBe(1500);
  });

  test('shows an entry at once and has it on disk a moment later', async () => {
    const { host, session, state } = await openSession();
    session.add(treadOff);
    expect(state().job.entries).toHaveLength(1);
    expect(state().saving).toBe('saving');
    await settled();
    expect(state().saving).toBe('saved');
    expect(host.job.entries.map((entry) => entry.type)).toEqual(['panel-off']);
  });

  test('stores entries made while another was being stored, each once and in order', async () => {
    const { host, session } = await openSession();
    session.add(treadOff);
    session.add({ type: 'note', text: 'second' });
    session.add({ type: 'note', text: 'third' });
    await settled();
    expect(host.job.entries.map((entry) => entry.type)).toEqual(['panel-off', 'note', 'note']);
    expect(new Set(host.job.entries.map((entry) => entry.id)).size).toBe(3);
  });

  test('an answer to an older question is dropped', async () => {
    const { ranker, session, state } = await openSession();
    ranker.answer(ranker.asked[0]);
    const before = state().ranking;
    session.add(soundLook);
    session.add(treadOff);
    ranker.answer(ranker.asked[1]);
    expect(state().ranking).toBe(before);
    expect(state().thinking).toBe(true);
    ranker.answer(ranker.asked[2]);
    expect(state().ranking).not.toBe(before);
    expect(state().rankingBefore).toBe(before);
    expect(state().thinking).toBe(false);
  });

  test('a stretch seen sound becomes less likely, and undoing brings the order back', async () => {
    const { ranker, session, state } = await openSession();
    ranker.answer(ranker.asked[0]);
    const chance = (): number =>
      (state().ranking?.posterior.stretches ?? [])
        .filter((stretch) => stretch.fromMm >= 600 && stretch.toMm <= 1000)
        .reduce((sum, stretch) => sum + stretch.probability, 0);
    const before = chance();
    session.add(soundLook);
    ranker.answer(ranker.asked.at(-1));
    expect(chance()).toBeLessThan(before / 2);
    session.undo();
    ranker.answer(ranker.asked.at(-1));
    expect(chance()).toBeCloseTo(before, 12);
    session.redo();
    ranker.answer(ranker.asked.at(-1));
    expect(chance()).toBeLessThan(before / 2);
    await settled();
    expect(state().saving).toBe('saved');
  });

  test('what could not be stored stays on screen and is stored when tried again', async () => {
    const { host, session, state } = await openSession();
    host.refuse = { code: 'store-full' };
    session.add(treadOff);
    await settled();
    expect(state().saving).toBe('failed');
    expect(state().saveProblem).toEqual({ code: 'store-full' });
    expect(state().job.entries).toHaveLength(1);
    host.refuse = null;
    session.saveAgain();
    await settled();
    expect(state().saving).toBe('saved');
    expect(host.job.entries).toHaveLength(1);
  });

  test('when another window wrote meanwhile, both records are kept, theirs first', async () => {
    const { host, session, state } = await openSession();
    const other: JobEntry = { id: 'entry:other', at: '2026-01-05T10:00:00Z', type: 'note', text: 'other' };
    host.job = { ...host.job, entries: [other] };
    session.add(treadOff);
    await settled();
    expect(state().saving).toBe('saved');
    expect(host.job.entries.map(({ type }) => type)).toEqual(['note', treadOff.type]);
    expect(state().job.entries).toEqual(host.job.entries);
  });

  test('a window where nothing is entered follows what another one enters', async () => {
    const { host, session, state, ranker } = await openSession();
    const other = { ...treadOff, id: 'entry:other', at: '2026-01-05T10:00:00Z' } as JobEntry;
    host.job = { ...host.job, entries: [other] };
    await session.follow();
    expect(state().job.entries).toEqual([other]);
    expect(ranker.asked.at(-1)?.job.entries).toEqual([other]);
    session.undo();
    await settled();
    expect(host.job.entries.map(({ type }) => type)).toEqual([treadOff.type, 'take-back']);
  });

  test('a job that is not there says so instead of opening', async () => {
    const problem: Problem = { code: 'not-found', thing: 'job:gone' };
    const session = jobSession('job:gone', {
      client: clientOver(async () => ({ ok: false, problem })),
      makeRanker: heldRanker().makeRanker,
    });
    await session.open();
    expect(session.store.getState()).toEqual({ phase: 'failed', problem });
  });

  test('what past jobs teach is there before the first question', async () => {
    const { ranker, state } = await openSession((host) => {
      host.past = oneFind(2);
    });
    expect(ranker.taught).toEqual([oneFind(2)]);
    expect(state().past?.onMap.jobs).toBe(2);
    expect(ranker.asked).toHaveLength(1);
  });

  test('closed jobs still to be worked out are waited for, and change the order once', async () => {
    const { host, ranker, state } = await openSession((each) => {
      each.waiting = [3, 2, 0];
    });
    ranker.answer(ranker.asked[0]);
    host.past = oneFind(1);
    await vi.waitFor(() => expect(ranker.taught).toHaveLength(2));
    expect(ranker.asked).toHaveLength(2);
    ranker.answer(ranker.asked[1]);
    expect(state().changedBy).toEqual(['past-jobs']);
  });

  test('asking again for past jobs asks for a new order only when they taught something new', async () => {
    const { host, ranker, session, state } = await openSession();
    await session.refreshPast();
    expect(ranker.asked).toHaveLength(1);
    host.past = oneFind(1);
    await session.refreshPast();
    expect(ranker.asked).toHaveLength(2);
    expect(state().past).toEqual(oneFind(1));
  });

  test('how firm the order is belongs to the newest question alone', async () => {
    const { ranker, session, state } = await openSession();
    ranker.answer(ranker.asked[0]);
    ranker.answerFirm(ranker.asked[0]);
    expect(state().firmness?.length).toBeGreaterThan(0);
    session.add(soundLook);
    expect(state().firmness).toBeNull();
    ranker.answerFirm(ranker.asked[0]);
    expect(state().firmness).toBeNull();
    ranker.answer(ranker.asked[1]);
    ranker.answerFirm(ranker.asked[1]);
    expect(state().firmness?.length).toBeGreaterThan(0);
  });

  test('what changed the order is told with it, a correction at intake included', async () => {
    const { ranker, session, state } = await openSession();
    ranker.answer(ranker.asked[0]);
    expect(state().changedBy).toEqual([]);
    session.add(soundLook);
    session.add(treadOff);
    ranker.answer(ranker.asked.at(-1));
    expect(state().changedBy).toMatchObject([{ type: 'inspection' }, { type: 'panel-off' }]);
    expect(await session.changeIntake({ ...intakeOf(state().job), recentWork: ['seat'] })).toBeNull();
    ranker.answer(ranker.asked.at(-1));
    expect(state().changedBy).toEqual(['intake']);
    expect(state().job.recentWork).toEqual(['seat']);
  });
});
