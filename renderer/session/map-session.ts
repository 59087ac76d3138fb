import { createStore, type StoreApi } from 'zustand/vanilla';
import { mapFromExchange } from '#core/map/exchange.ts';
import type { MapDocument, MapRecord } from '#core/map/map-document.ts';
import { recordOf } from '#core/map/map-draft.ts';
import { applyPatch, isEmptyPatch, type Patch } from '#core/map/patch.ts';
import { sameValue } from '#core/map/same-value.ts';
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
  /** True after another window's edits were taken over and one of ours did not fit them any more. */
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
  /** Edits with the same key, each within half a second of the one before, are one: typing in one field. */
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
  /** Another window has put an edit on disk: shows the map with it. */
  follow(): Promise<void>;
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
/** Whatever is typed is on disk within a second, so of a longer burst the part so far goes ahead. */
const longestWaitMs = 900;
const retryMs = 2_000;

/** The newest edit while more of the same may still join it. */
interface Held {
  /** All of it, as one entry of the history. */
  readonly edit: Transaction;
  readonly joinKey: string;
  readonly lastMs: number;
  /** The part that is not on its way to the disk yet. */
  readonly waiting: { readonly edit: Transaction; readonly sinceMs: number } | null;
  /** An earlier part has gone ahead, which the rest joins there. */
  readonly ahead: boolean;
}

/** What goes to the disk; with `joins` it becomes one entry with the edit sent before it. */
interface Sent {
  readonly transaction: Transaction;
  readonly joins: boolean;
}

/** Keeps one map open: its document, the gesture under way, what is picked, the history, what is on disk. */
export function mapSession(mapId: MapId, client: Client, timers: Timers = pageTimers): MapSession {
  const store = createStore<MapState>(() => ({ phase: 'opening' }));
  /** Sent in turn; the first may be on its way. */
  let queue: Sent[] = [];
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

  /** Starts from what is on disk, and puts the edits that are not there yet onto it as far as they fit. */
  const load = async (): Promise<void> => {
    const opened = await client('map.open', { mapId });
    if (closed) return;
    if (!opened.ok) {
      store.setState({ phase: 'failed', problem: opened.problem }, true);
      return;
    }
    // Only now: what was drawn while the disk was read is among them.
    const ours = [
      ...queue.map(({ transaction }) => transaction),
      ...(held?.waiting ? [held.waiting.edit] : []),
    ];
    const { selection = [] } = openState() ?? {};
    let document = mapFromExchange(opened.value.map);
    let history: History = opened.value.history ?? emptyHistory;
    revision = document.revision;
    queue = [];
    held = null;
    cancelHold();
    for (const transaction of ours) {
      // A step back belongs to the order of edits it was made in, which is another one now.
      const next = transaction.origin === 'user' ? fitted(document, transaction.patch) : null;
      if (!next) break;
      document = next;
      history = withEdit(history, transaction);
      queue = [...queue, { transaction, joins: false }];
    }
    store.setState({
      phase: 'open',
      document,
      shown: document,
      selection: present(document, selection),
      history,
      saving: queue.length > 0 ? 'saving' : 'saved',
      saveProblem: null,
      reloaded: queue.length < ours.length,
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
      const reply = await client('map.commit', {
        mapId,
        expectedRevision: revision,
        transaction: next.transaction,
        ...(next.joins ? { joins: true } : {}),
      });
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
        await load();
        continue;
      }
      change({ saving: 'failed', saveProblem: reply.problem });
      cancelRetry = timers.later(() => void send(), retryMs);
      return;
    }
    if (queue.length === 0 && !held?.waiting) change({ saving: 'saved', saveProblem: null });
  };

  /** Sends what waits of the newest edit; more may still join it. */
  const sendAhead = (): void => {
    if (held?.waiting) {
      queue = [...queue, { transaction: held.waiting.edit, joins: held.ahead }];
      held = { ...held, waiting: null, ahead: true };
    }
    if (queue.length > 0) void send();
  };

  /** The newest edit is done with. */
  const release = (): void => {
    cancelHold();
    sendAhead();
    held = null;
  };

  const hold = (next: Held): void => {
    cancelHold();
    held = next;
    const endsMs = next.lastMs + joinMs;
    const dueMs = next.waiting ? Math.min(endsMs, next.waiting.sinceMs + longestWaitMs) : endsMs;
    cancelHold = timers.later(
      () => {
        sendAhead();
        if (timers.nowMs() >= endsMs || !held) release();
        else hold(held);
      },
      Math.max(0, dueMs - timers.nowMs()),
    );
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
    const joined = joinedTo(held, made, note.joinKey, nowMs);
    change({ document, shown: document, selection, saving: 'saving', reloaded: false });
    if (joined) {
      const before = { done: state.history.done.slice(0, -1), undone: state.history.undone };
      change({ history: withEdit(before, joined.edit) });
      hold(joined);
      return null;
    }
    release();
    change({ history: withEdit(state.history, made) });
    if (note.joinKey === undefined) {
      queue = [...queue, { transaction: made, joins: false }];
      void send();
    } else {
      const waiting = { edit: made, sinceMs: nowMs };
      hold({ edit: made, joinKey: note.joinKey, lastMs: nowMs, waiting, ahead: false });
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
    queue = [...queue, { transaction: taken.step, joins: false }];
    void send();
  };

  return {
    store,
    open: load,
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
    async follow() {
      const state = openState();
      if (!state || sending || held || queue.length > 0) return;
      const opened = await client('map.open', { mapId });
      // With an edit of our own under way, the disk will refuse it and both are brought together then.
      if (closed || !opened.ok || sending || held || queue.length > 0) return;
      const document = mapFromExchange(opened.value.map);
      if (document.revision <= revision) return;
      revision = document.revision;
      const selection = present(document, openState()?.selection ?? []);
      const history = opened.value.history ?? emptyHistory;
      change({ document, shown: document, selection, history, reloaded: false });
    },
    close() {
      release();
      void (sending ?? Promise.resolve()).then(() => {
        closed = true;
        cancelRetry();
      });
    },
  };
}

/** The map with an edit made on another state of it; null where the two touch the same thing. */
function fitted(document: MapDocument, patch: Patch): MapDocument | null {
  const isThere = (record: MapRecord): boolean => sameValue(recordOf(document, record.id), record);
  const fits = patch.removed.every(isThere) && patch.changed.every(([before]) => isThere(before));
  const result = fits ? applyPatch(document, patch) : null;
  return result?.ok ? result.value : null;
}

/** The edit under way with one more of the same; null where they are two entries of the history. */
function joinedTo(
  held: Held | null,
  made: Transaction,
  joinKey: string | undefined,
  nowMs: number,
): Held | null {
  if (!held || held.joinKey !== joinKey || nowMs - held.lastMs >= joinMs) return null;
  const edit = joinedEdit(held.edit, made);
  const rest = held.waiting ? joinedEdit(held.waiting.edit, made) : made;
  if (!edit || !rest) return null;
  const waiting = { edit: rest, sinceMs: held.waiting?.sinceMs ?? nowMs };
  return { ...held, edit, waiting, lastMs: nowMs };
}
