import { useCallback, useEffect } from 'react';
import { useStore } from 'zustand';
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Client } from '#electron/contract/client.ts';
import { hostClient } from './host.ts';

/** Whose forms they are: drafts of a job or a map are read and kept together. */
export type DraftOwner = `job:${string}` | `map:${string}`;

/** The fields that were typed in each form, by the form's name. */
type Forms = Readonly<Record<string, Readonly<Record<string, unknown>>>>;

/** Forms that were begun and not kept yet, of one owner. */
export interface Drafts {
  readonly store: StoreApi<{ readonly forms: Forms }>;
  /** Reads once what a former start left. */
  read(): Promise<void>;
  change(form: string, fields: Readonly<Record<string, unknown>>): void;
  drop(form: string): void;
}

/** On disk before anyone can lift a hand to the switch, and not at every letter. */
const keepAfterMs = 150;

const keyOf = (owner: DraftOwner): string => `drafts.${owner}`;

/** Keeps what is typed in an owner's forms until they are kept or dropped, also over a power cut. */
export function draftsOver(owner: DraftOwner, client: () => Client): Drafts {
  const store = createStore<{ readonly forms: Forms }>(() => ({ forms: {} }));
  /** Forms changed before the disk was read: newer than what it held. */
  const touched = new Set<string>();
  let reading: Promise<void> | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const keep = (): void => {
    clearTimeout(timer);
    timer = setTimeout(() => {
      // What the disk holds of other forms must not be written over before it was read.
      void read().then(() => {
        const { forms } = store.getState();
        const text = Object.keys(forms).length === 0 ? '' : JSON.stringify(forms);
        return client()('place.keep', { key: keyOf(owner), text });
      });
    }, keepAfterMs);
  };
  const read = (): Promise<void> => {
    reading ??= client()('place.read', { key: keyOf(owner) }).then((kept) => {
      if (!kept.ok) {
        reading = null;
        return;
      }
      const old = Object.entries(readForms(kept.value.text)).filter(([form]) => !touched.has(form));
      if (old.length > 0)
        store.setState({ forms: { ...Object.fromEntries(old), ...store.getState().forms } });
    });
    return reading;
  };
  return {
    store,
    read,
    change(form, fields) {
      touched.add(form);
      const { forms } = store.getState();
      store.setState({ forms: { ...forms, [form]: { ...forms[form], ...fields } } });
      keep();
    },
    drop(form) {
      touched.add(form);
      const { [form]: gone, ...rest } = store.getState().forms;
      if (gone === undefined) return;
      store.setState({ forms: rest });
      keep();
    },
  };
}

function readForms(text: string | null): Forms {
  if (!text) return {};
  try {
    const forms: unknown = JSON.parse(text);
    return typeof forms === 'object' && forms !== null && !Array.isArray(forms) ? (forms as Forms) : {};
  } catch {
    return {};
  }
}

/** A form's fields: as begun with, over them what was typed, where it is still of that kind. */
export function withTyped<T extends object>(first: T, typed: Forms[string] | undefined): T {
  if (!typed) return first;
  const fields = Object.entries(first).map(([field, value]) => {
    const now = typed[field];
    return [
      field,
      now !== undefined && (kindOf(now) === kindOf(value) || now === null || value === null) ? now : value,
    ];
  });
  return Object.fromEntries(fields) as T;
}

const kindOf = (value: unknown): string => (Array.isArray(value) ? 'list' : typeof value);

const owners = new Map<DraftOwner, Drafts>();

/** The drafts of an owner, the same for all of the page. */
export function draftsOf(owner: DraftOwner): Drafts {
  const known = owners.get(owner) ?? draftsOver(owner, hostClient);
  owners.set(owner, known);
  return known;
}

/**
 * The fields of a form that lose nothing that was typed: not by closing it, not by leaving the page, not by a
 * power cut. Gives the fields, how to change some of them, and how to drop the draft once it is kept.
 */
export function useDraft<T extends object>(
  owner: DraftOwner,
  form: string,
  first: T,
): readonly [T, (fields: Partial<T>) => void, () => void] {
  const drafts = draftsOf(owner);
  useEffect(() => void drafts.read(), [drafts]);
  const typed = useStore(drafts.store, ({ forms }) => forms[form]);
  const change = useCallback(
    (fields: Partial<T>) => drafts.change(form, fields as Readonly<Record<string, unknown>>),
    [drafts, form],
  );
  const drop = useCallback(() => drafts.drop(form), [drafts, form]);
  return [withTyped(first, typed), change, drop];
}
