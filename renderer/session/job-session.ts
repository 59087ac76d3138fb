import { createStore, type StoreApi } from 'zustand/vanilla';
import type { CircuitLine } from '#core/circuit/circuit-line.ts';
import { layJoined } from '#core/circuit/joined-wires.ts';
import type { PastSums } from '#core/history/teach.ts';
import type { Intake, Job, JobEntry } from '#core/job/job-document.ts';
import type { OpeningFirmness } from '#core/job/rank-sensitivity.ts';
import type { Ranking } from '#core/job/ranking.ts';
import { mapFromExchange } from '#core/map/exchange.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { type EntryId, type JobId, newId } from '#core/quantity/id.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { Client } from '#electron/contract/client.ts';
import { entryHistory } from './entry-history.ts';
import { type MakeRanker, type Ranker, workerRanker } from './ranker.ts';

/** An entry before it has its id and time. */
export type NewEntry = JobEntry extends infer Entry
  ? Entry extends JobEntry
    ? Omit<Entry, 'id' | 'at'>
    : never
  : never;

/** What made the newest answer differ from the one before it. */
export type ChangeCause = JobEntry | 'intake' | 'past-jobs';

/** An open job as the screen sees it. */
export interface JobOpen {
  readonly job: Job;
  /** The map as it stood when the job was opened. */
  readonly map: MapDocument;
  /** The circuit under search laid straight; null until one is chosen or while it cannot be laid. */
  readonly line: CircuitLine | null;
  /** The newest answer, kept on screen while the next one is worked out. */
  readonly ranking: Ranking | null;
  /** The answer before it, for saying what moved. */
  readonly rankingBefore: Ranking | null;
  /** What happened between the two. */
  readonly changedBy: readonly ChangeCause[];
  readonly rankProblem: Problem | null;
  /** How firm the first openings of the newest answer are; null until that is worked out. */
  readonly firmness: readonly OpeningFirmness[] | null;
  /** What past jobs teach about this map; null when it could not be asked for. */
  readonly past: PastSums | null;
  /** The newest answer is not yet the whole answer to the newest question. */
  readonly thinking: boolean;
  readonly saving: 'saved' | 'saving' | 'failed';
  readonly saveProblem: Problem | null;
}

export type JobState =
  | { readonly phase: 'opening' }
  | { readonly phase: 'failed'; readonly problem: Problem }
  | ({ readonly phase: 'open' } & JobOpen);

export interface JobSession {
  readonly store: StoreApi<JobState>;
  open(): Promise<void>;
  /** Adds entries at once on screen and then on disk. */
  add(...entries: readonly NewEntry[]): void;
  takeBack(entryId: EntryId): void;
  undo(): void;
  redo(): void;
  changeIntake(intake: Intake): Promise<Problem | null>;
  /** Asks again what past jobs teach: one may have been closed, or a wrong entry taken back, elsewhere. */
  refreshPast(): Promise<void>;
  /** Tries again to put on disk what could not be stored. */
  saveAgain(): void;
  /** Another window has added to the job: shows it with that. */
  follow(): Promise<void>;
  close(): void;
}

export interface JobSessionParts {
  readonly client: Client;
  readonly makeRanker?: MakeRanker;
  /** Time of an entry as ISO text. */
  readonly now?: () => string;
  readonly chance?: () => number;
}

const lineOf = (map: MapDocument, job: Job): CircuitLine | null => {
  const circuit = job.circuitId === null ? undefined : map.circuits.get(job.circuitId);
  if (!circuit) return null;
  const laid = layJoined(map, circuit);
  return laid.ok ? laid.value : null;
};

/** Entries that leave the order as it is: asking again would only hide what the last one changed. */
const saysNothingOfTheFault: ReadonlySet<JobEntry['type']> = new Set([
  'note',
  'time',
  'agreed',
  'caution-read',
]);

/** Between two requests while closed jobs are worked out for the first time: the host has other things to do. */
const learningPauseMs = 120;

/** Keeps one job open: its record, what is on disk of it, and its newest ranking. */
export function jobSession(jobId: JobId, parts: JobSessionParts): JobSession {
  const { client, makeRanker = workerRanker } = parts;
  const now = parts.now ?? (() => new Date().toISOString());
  const chance = parts.chance ?? Math.random;
  const store = createStore<JobState>(() => ({ phase: 'opening' }));
  let ranker: Ranker | null = null;
  let revision = 0;
  let quickShown = false;
  let causes: ChangeCause[] = [];
  let stored = 0;
  let storing = false;
  let closed = false;

  const change = (next: Partial<JobOpen>): void => {
    if (store.getState().phase === 'open') store.setState(next);
  };

  const ask = (...because: readonly ChangeCause[]): void => {
    const state = store.getState();
    if (state.phase !== 'open' || !ranker) return;
    revision += 1;
    quickShown = false;
    causes = [...causes, ...because];
    change({ thinking: true, firmness: null });
    ranker.ask({ revision, job: state.job });
  };

  const show = (job: Job, map: MapDocument, past: PastSums | null): void => {
    ranker?.stop();
    stored = job.entries.length;
    causes = [];
    store.setState({
      phase: 'open',
      job,
      map,
      line: lineOf(map, job),
      ranking: null,
      rankingBefore: null,
      changedBy: [],
      rankProblem: null,
      firmness: null,
      past,
      thinking: false,
      saving: 'saved',
      saveProblem: null,
    });
    ranker = makeRanker(map, (answer) => {
      const state = store.getState();
      // An answer to an older question would show evidence that is no longer so.
      if (closed || answer.revision !== revision || state.phase !== 'open') return;
      if ('firmness' in answer) {
        change({ firmness: answer.firmness });
        return;
      }
      if (answer.result.ok) {
        change({
          ranking: answer.result.value,
          // The whole answer after a quick one is still compared with the answer before both.
          rankingBefore: quickShown ? state.rankingBefore : state.ranking,
          changedBy: quickShown ? state.changedBy : causes,
          rankProblem: null,
          thinking: answer.partial === true,
        });
        quickShown = answer.partial === true;
        causes = [];
      } else
        change({ ranking: null, rankingBefore: null, rankProblem: answer.result.problem, thinking: false });
    });
    ranker.teach(past);
    ask();
  };

  const open = async (): Promise<void> => {
    // Together: an order without past jobs that changes a moment later would only confuse.
    const [opened, taught] = await Promise.all([
      client('job.open', { jobId }),
      client('jobs.taught', { jobId }),
    ]);
    if (closed) return;
    if (!opened.ok) {
      store.setState({ phase: 'failed', problem: opened.problem }, true);
      return;
    }
    show(opened.value.job, mapFromExchange(opened.value.map), taught.ok ? taught.value.sums : null);
    if (taught.ok && taught.value.waiting > 0) void refreshPast();
  };

  const refreshPast = async (): Promise<void> => {
    let taught = await client('jobs.taught', { jobId });
    while (!closed && taught.ok && taught.value.waiting > 0) {
      await new Promise((resolve) => setTimeout(resolve, learningPauseMs));
      taught = await client('jobs.taught', { jobId });
    }
    const state = store.getState();
    if (closed || !taught.ok || state.phase !== 'open') return;
    const { sums } = taught.value;
    if (JSON.stringify(sums) === JSON.stringify(state.past)) return;
    change({ past: sums });
    ranker?.teach(sums);
    ask('past-jobs');
  };

  /** What another window has put on disk, with what is not there yet of ours behind it. */
  const takeOver = async (): Promise<boolean> => {
    const opened = await client('job.open', { jobId });
    const state = store.getState();
    if (closed || !opened.ok || state.phase !== 'open') return false;
    const theirs = opened.value.job;
    const ours = state.job.entries.slice(stored);
    const known = new Set(state.job.entries.map(({ id }) => id));
    const news = theirs.entries.filter(({ id }) => !known.has(id));
    stored = theirs.entries.length;
    const job = { ...theirs, entries: [...theirs.entries, ...ours] };
    change({ job, line: lineOf(state.map, job) });
    ask(...news);
    return true;
  };

  const storeEntries = async (): Promise<void> => {
    if (storing) return;
    storing = true;
    for (;;) {
      const state = store.getState();
      if (state.phase !== 'open') break;
      const entries = state.job.entries.slice(stored);
      if (entries.length === 0) {
        change({ saving: 'saved', saveProblem: null });
        break;
      }
      change({ saving: 'saving' });
      const reply = await client('job.append', { jobId, expectedEntries: stored, entries });
      if (reply.ok) stored += entries.length;
      else if (reply.problem.code === 'stale-revision' && (await takeOver())) continue;
      else {
        change({ saving: 'failed', saveProblem: reply.problem });
        break;
      }
    }
    storing = false;
  };

  const add = (...entries: readonly NewEntry[]): void => {
    const state = store.getState();
    if (state.phase !== 'open' || entries.length === 0) return;
    const at = now();
    const whole = entries.map((entry) => ({ ...entry, id: newId('entry', chance), at }) as JobEntry);
    change({ job: { ...state.job, entries: [...state.job.entries, ...whole] } });
    if (whole.some(({ type }) => !saysNothingOfTheFault.has(type))) ask(...whole);
    void storeEntries();
  };

  const takeBack = (...entryIds: readonly EntryId[]): void =>
    add(...entryIds.map((entryId) => ({ type: 'take-back', entryId }) as const));

  const history = () => {
    const state = store.getState();
    return state.phase === 'open' ? entryHistory(state.job) : { undo: [], redo: [] };
  };

  return {
    store,
    open,
    add,
    takeBack: (entryId) => takeBack(entryId),
    undo: () => takeBack(...history().undo),
    redo: () => takeBack(...history().redo),
    async changeIntake(intake) {
      const reply = await client('job.changeIntake', { jobId, ...intake });
      if (!reply.ok) return reply.problem;
      const state = store.getState();
      if (state.phase !== 'open') return null;
      const job = { ...state.job, ...intake };
      change({ job, line: lineOf(state.map, job) });
      ask('intake');
      return null;
    },
    refreshPast,
    saveAgain: () => void storeEntries(),
    async follow() {
      const state = store.getState();
      // With an entry of our own on its way, the disk refuses it and both are brought together then.
      if (state.phase === 'open' && !storing && state.job.entries.length === stored) await takeOver();
    },
    close() {
      closed = true;
      ranker?.stop();
    },
  };
}
