import { invertPatch, isEmptyPatch, squashPatches } from '#core/map/patch.ts';
import type { Selection, Transaction } from '#core/map/transaction.ts';

/** What is done and what was undone, oldest first; two immutable lists. */
export interface History {
  readonly done: readonly Transaction[];
  readonly undone: readonly Transaction[];
}

export const emptyHistory: History = { done: [], undone: [] };

/** The history after an edit: what was undone can no longer be redone. */
export function withEdit(history: History, edit: Transaction): History {
  return { done: [...history.done, edit], undone: [] };
}

/** The step that takes the newest edit back, and the history after it; null when nothing is done. */
export function undoStep(
  history: History,
  selection: Selection,
): { readonly step: Transaction; readonly history: History } | null {
  const edit = history.done.at(-1);
  if (!edit) return null;
  return {
    step: {
      label: edit.label,
      origin: 'undo',
      patch: invertPatch(edit.patch),
      selectionBefore: selection,
      selectionAfter: edit.selectionBefore,
    },
    history: { done: history.done.slice(0, -1), undone: [edit, ...history.undone] },
  };
}

/** The step that does again what was undone last; null when there is none. */
export function redoStep(
  history: History,
  selection: Selection,
): { readonly step: Transaction; readonly history: History } | null {
  const edit = history.undone[0];
  if (!edit) return null;
  return {
    step: {
      label: edit.label,
      origin: 'redo',
      patch: edit.patch,
      selectionBefore: selection,
      selectionAfter: edit.selectionAfter,
    },
    history: { done: [...history.done, edit], undone: history.undone.slice(1) },
  };
}

/** Two edits as one; null when together they change nothing. */
export function joinedEdit(first: Transaction, second: Transaction): Transaction | null {
  const patch = squashPatches(first.patch, second.patch);
  if (isEmptyPatch(patch)) return null;
  return { ...second, patch, selectionBefore: first.selectionBefore };
}
