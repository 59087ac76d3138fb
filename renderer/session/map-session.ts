import { createStore, type StoreApi } from 'zustand/vanilla';
import { mapFromExchange } from '#core/map/exchange.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { recordOf } from '#core/map/map-draft.ts';
import { applyPatch, isEmptyPatch, type Patch } from '#core/map/patch.ts';
import type { Selection, Transaction } from '#core/map/transaction.ts';
import type { MapId } from '#core/quantity/id.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { Result } from '#core/quantity/result.ts';
import type { Client } from '#electron/contract/client.ts';
import { emptyHistory, type History, joinedEdit, redoStep, undoStep, withEdit } from './history.ts';

/** An open map as the screen sees it. */
export interface MapOpen {
  /** With every edit made here, on disk or still on its way there. */
  readonly document: MapDocument;
  /** The document with the gesture under way; the same object when there is none. */
  readonly shown: MapDocument;
  readonly selection: Selection;
  readonly history: History;
  readonly saving: 'saved' | 'saving' | 'failed';
  readonly saveProblem: Problem | null;
  /** True after another window's edits had to be taken over and ours since then were dropped. */
  readonly reloaded: boolean;
}

export type MapState =
  | { readonly phase: 'opening' }
  | { readonly phase: 'failed'; readonly problem: Problem }
  | ({ readonly phase: 'open' } & MapOpen);

/** What an edit is called, and what else is known of it. */
export interface EditNote {
  /** Key of the label in the language table, such as `edit.moveNode`. */
  readonly label: string;
  /** What is picked afterwards; without it the selection stays. */
  readonly select?: Selection;
  /** Edits with the same key within half a second are one: typing in one field. */
  readonly joinKey?: string;
}

export interface MapSession {
  readonly store: StoreApi<MapState>;
  open(): Promise<void>;
  /** Makes an edit at once on screen and then on disk. The problem comes back when it cannot be made. */
  edit(patch: Result<Patch>, note: EditNote): Problem | null;
  /** Shows an unfinished gesture; null drops it. Nothing of it is ever stored. */
  preview(patch: Patch | null): void;
  select(ids: Selection): void;
  undo(): void;
  redo(): void;
  /** Puts what waits on disk now; resolves when all is there or refused. */
  flush(): Promise<void>;
  /** Tries again after a refusal. */
  saveAgain(): void;
  close(): void;
}

export interface Timers {
  readonly nowMs: () => number;
  /** Runs a task later and gives what cancels it. */
  readonly later: (task: () => void, ms: number) => () => void;
}

const pageTimers: Timers = {
  nowMs: () => performance.now(),
  later: (task, ms) => {
    const timer = setTimeout(task, ms);
    return () => clearTimeout(timer);
  },
};

const joinMs = 500;
/** Whatever is typed is on disk within a second, so joining ends before that. */
const longestJoinMs = 900;
const retryMs = 2_000;

interface Held {
  readonly edit: Transaction;
  readonly joinKey: string | undefined;
  readonly sinceMs: number;
  readonly lastMs: number;
}

/** Keeps one map open: its document, the gesture under way, what is picked, the history, what is on disk. */
export function mapSession(mapId: MapId, client: Client, timers: Timers = pageTimers): MapSession {
  const store = createStore<MapState>(() => ({ phase: 'opening' }));
  /** Sent in turn; the first may be on its way. */
  let queue: Transaction[] = [];
  /** The newest edit while more of the same may still join it. */
  let held: Held | null = null;
  let cancelHold: () => void = () => {};
  let cancelRetry: () => void = () => {};
  let revision = 0;
  let sending: Promise<void> | null = null;
  let closed = false;

  const openState = () => {
    const state = store.getState();
    return state.phase === 'open' ? state : null;
  };
  const change = (next: Partial<MapOpen>): void => {
    if (openState()) store.setState(next);
  };

  const load = async (reloaded: boolean): Promise<void> => {
    const opened = await client('map.open', { mapId });
    if (closed) return;
    if (!opened.ok) {
      store.setState({ phase: 'failed', problem: opened.problem }, true);
      return;
    }
    const document = mapFromExchange(opened.value.map);
    revision = document.revision;
    queue = [];
    held = null;
    cancelHold();
    store.setState({
      phase: 'open',
      document,
      shown: document,
      selection: [],
      history: opened.value.history ?? emptyHistory,
      saving: 'saved',
      saveProblem: null,
      reloaded,
    });
  };

  const send = (): Promise<void> => {
    sending ??= sendAll().finally(() => {
      sending = null;
    });
    return sending;
  };

  const sendAll = async (): Promise<void> => {
    cancelRetry();
    for (let next = queue[0]; next && !closed; next = queue[0]) {
      const reply = await client('map.commit', { mapId, expectedRevision: revision, transaction: next });
      if (closed) return;
      if (reply.ok) {
        revision = reply.value.revision;
        queue = queue.slice(1);
        const state = openState();
        // The revision is part of the document only as a number: records keep their identity.
        if (state) {
          const document = { ...state.document, revision };
          const shown = state.shown === state.document ? document : { ...state.shown, revision };
          change({ document, shown });
        }
        continue;
      }
      if (reply.problem.code === 'stale-revision') {
        await load(true);
        return;
      }
      change({ saving: 'failed', saveProblem: reply.problem });
      cancelRetry = timers.later(() => void send(), retryMs);
      return;
    }
    if (queue.length === 0 && !held) change({ saving: 'saved', saveProblem: null });
  };

  const release = (): void => {
    cancelHold();
    if (held) queue = [...queue, held.edit];
    held = null;
    if (queue.length > 0) void send();
  };

  const hold = (edit: Transaction, joinKey: string | undefined, sinceMs: number): void => {
    const nowMs = timers.nowMs();
    cancelHold();
    held = { edit, joinKey, sinceMs, lastMs: nowMs };
    if (joinKey === undefined) {
      release();
      return;
    }
    cancelHold = timers.later(release, Math.max(0, Math.min(joinMs, sinceMs + longestJoinMs - nowMs)));
  };

  const applied = (document: MapDocument, patch: Patch): MapDocument | Problem => {
    const result = applyPatch(document, patch);
    return result.ok ? result.value : result.problem;
  };

  /** Only what is still on the map stays picked; a fixing is on the map as part of its run. */
  const present = (document: MapDocument, ids: Selection): Selection =>
    ids.filter(
      (id) =>
        recordOf(document, id) !== null ||
        (id.startsWith('clip:') &&
          [...document.segments.values()].some((segment) => segment.clips.some((clip) => clip.id === id))),
    );

  const edit = (patch: Result<Patch>, note: EditNote): Problem | null => {
    const state = openState();
    if (!state) return null;
    if (!patch.ok) return patch.problem;
    if (isEmptyPatch(patch.value)) {
      change({ shown: state.document });
      return null;
    }
    const document = applied(state.document, patch.value);
    if ('code' in document) return document;
    const selection = present(document, note.select ?? state.selection);
    const made: Transaction = {
      label: note.label,
      origin: 'user',
      patch: patch.value,
      selectionBefore: state.selection,
      selectionAfter: selection,
    };
    const nowMs = timers.nowMs();
    const joins =
      held !== null &&
      note.joinKey !== undefined &&
      held.joinKey === note.joinKey &&
      nowMs - held.lastMs < joinMs &&
      nowMs - held.sinceMs < longestJoinMs;
    change({ document, shown: document, selection, saving: 'saving', reloaded: false });
    if (!joins || !held) {
      release();
      change({ history: withEdit(state.history, made) });
      hold(made, note.joinKey, nowMs);
      return null;
    }
    const joined = joinedEdit(held.edit, made);
    const before = { done: state.history.done.slice(0, -1), undone: state.history.undone };
    if (joined) {
      change({ history: withEdit(before, joined) });
      hold(joined, note.joinKey, held.sinceMs);
    } else {
      held = null;
      cancelHold();
      change({ history: before });
      void send();
    }
    return null;
  };

  const turn = (take: typeof undoStep): void => {
    release();
    const state = openState();
    const taken = state && take(state.history, state.selection);
    if (!state || !taken) return;
    const document = applied(state.document, taken.step.patch);
    if ('code' in document) return;
    change({
      document,
      shown: document,
      selection: present(document, taken.step.selectionAfter),
      history: taken.history,
      saving: 'saving',
    });
    queue = [...queue, taken.step];
    void send();
  };

  return {
    store,
    open: () => load(false),
    edit,
    preview(patch) {
      const state = openState();
      if (!state) return;
      const shown = patch ? applied(state.document, patch) : state.document;
      if (!('code' in shown) && shown !== state.shown) change({ shown });
    },
    select(ids) {
      const state = openState();
      if (state) change({ selection: present(state.document, ids) });
    },
    undo: () => turn(undoStep),
    redo: () => turn(redoStep),
    async flush() {
      release();
      await (sending ?? Promise.resolve());
    },
    saveAgain: () => void send(),
    close() {
      release();
      void (sending ?? Promise.resolve()).then(() => {
        closed = true;
        cancelRetry();
      });
    },
  };
}
