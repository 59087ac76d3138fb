import { useCallback, useMemo, useRef, useState } from 'react';
import type { MapId } from '#core/quantity/id.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { BundleSummary, ImportSummary, MapDifference, WhenOther } from '#electron/contract/contract.ts';
import { hostClient } from '../../session/host.ts';
import { readFile } from '../../session/read-file.ts';
import { base64Of } from '../draw/picture-bytes.ts';
import { faultsIn, type MoreFaults } from './faults-in.ts';

/** What a file holds, and what becomes of it when it is kept. */
export type FileContent = {
  /** What becomes of a map that is here in another state. */
  readonly whenOther: WhenOther;
} & (
  | { readonly kind: 'document'; readonly text: string; readonly summary: ImportSummary }
  | { readonly kind: 'bundle'; readonly base64: string; readonly summary: BundleSummary }
);

export type BringInStep =
  | { readonly at: 'choose' }
  | { readonly at: 'reading'; readonly share: number }
  | { readonly at: 'checking' }
  | {
      readonly at: 'refused';
      readonly file: string;
      readonly problem: Problem;
      readonly more: MoreFaults | null;
    }
  | { readonly at: 'asking'; readonly content: FileContent }
  | { readonly at: 'storing' }
  | { readonly at: 'stored'; readonly name: string; readonly mapId: MapId | null };

/** More than the host takes in one message as text. */
const mostTextBytes = 64_000_000;
const mostBundleBytes = 70_000_000;

/** Brings a file in: reads it, has the host say what it holds, and stores it only when told to. */
export function useBringIn() {
  const [step, setStep] = useState<BringInStep>({ at: 'choose' });
  const stopper = useRef<AbortController | null>(null);

  const reset = useCallback((): void => {
    stopper.current?.abort();
    stopper.current = null;
    setStep({ at: 'choose' });
  }, []);

  const read = useCallback(async (file: File): Promise<void> => {
    stopper.current?.abort();
    const control = new AbortController();
    stopper.current = control;
    const show = (next: BringInStep): void => {
      if (!control.signal.aborted) setStep(next);
    };
    const refuse = (problem: Problem, more: MoreFaults | null = null): void =>
      show({ at: 'refused', file: file.name, problem, more });
    show({ at: 'reading', share: 0 });
    if (file.size > mostBundleBytes) {
      refuse({ code: 'too-large', thing: file.name, bytes: file.size, mostBytes: mostBundleBytes });
      return;
    }
    const bytes = await readFile(file, (share) => show({ at: 'reading', share }), control.signal);
    if (control.signal.aborted) return;
    if (!bytes) {
      refuse({
        code: 'file-unreadable',
        file: file.name,
        detail: file.size === 0 ? 'it is empty' : 'it was moved or is locked',
      });
      return;
    }
    show({ at: 'checking' });
    const looked = isZip(bytes) ? await lookAtBundle(bytes) : await lookAtDocument(file, bytes);
    const content = 'problem' in looked ? looked : await withUsualChoice(looked);
    if ('problem' in content) refuse(content.problem, content.more);
    else show({ at: 'asking', content });
  }, []);

  /** Another answer to what becomes of a map that is here in another state; says anew what would be stored. */
  const choose = useCallback(async (content: FileContent, whenOther: WhenOther): Promise<void> => {
    const control = new AbortController();
    stopper.current = control;
    setStep({ at: 'asking', content: { ...content, whenOther } });
    const looked = await lookAgain(content, whenOther);
    if (control.signal.aborted) return;
    setStep(
      'problem' in looked
        ? { at: 'refused', file: nameOfContent(content), ...looked }
        : { at: 'asking', content: looked },
    );
  }, []);

  const keep = useCallback(async (content: FileContent): Promise<void> => {
    setStep({ at: 'storing' });
    const kept = await keepContent(content);
    setStep(
      'problem' in kept
        ? { at: 'refused', file: nameOfContent(content), problem: kept.problem, more: null }
        : { at: 'stored', ...kept },
    );
  }, []);

  return useMemo(() => ({ step, read, choose, keep, reset }), [step, read, choose, keep, reset]);
}

/** First letters of a zip file (PKWARE APPNOTE 4.3.7). */
const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b;

type Refusal = { readonly problem: Problem; readonly more: MoreFaults | null };

async function lookAtDocument(file: File, bytes: Uint8Array<ArrayBuffer>): Promise<FileContent | Refusal> {
  if (bytes.length > mostTextBytes) {
    const problem = {
      code: 'too-large',
      thing: file.name,
      bytes: bytes.length,
      mostBytes: mostTextBytes,
    } as const;
    return { problem, more: null };
  }
  const text = new TextDecoder().decode(bytes);
  const looked = await hostClient()('file.bringIn', { text, store: false });
  return looked.ok
    ? { kind: 'document', text, whenOther: 'both', summary: looked.value.summary }
    : { problem: looked.problem, more: faultsIn(text) };
}

async function lookAtBundle(bytes: Uint8Array<ArrayBuffer>): Promise<FileContent | Refusal> {
  const base64 = await base64Of(bytes);
  const looked = await hostClient()('file.bringInBundle', { base64, store: false });
  return looked.ok
    ? { kind: 'bundle', base64, whenOther: 'both', summary: looked.value.summary }
    : { problem: looked.problem, more: null };
}

/** The maps of a file that are here in another state, as they differ. */
export function differencesIn({ kind, summary }: FileContent): readonly MapDifference[] {
  const documents = kind === 'document' ? [summary] : summary.documents;
  return documents.flatMap(({ differs }) => differs ?? []);
}

/** Where ours was never edited here, theirs is most likely the same drawing taken further. */
async function withUsualChoice(content: FileContent): Promise<FileContent | Refusal> {
  const differences = differencesIn(content);
  const further = differences.length > 0 && differences.every(({ oursEdited }) => !oursEdited);
  return further ? lookAgain(content, 'theirs') : content;
}

/** Past jobs may go to another map by another choice, so a bundle is looked through again. */
async function lookAgain(content: FileContent, whenOther: WhenOther): Promise<FileContent | Refusal> {
  if (content.kind === 'document') return { ...content, whenOther };
  const { base64 } = content;
  const looked = await hostClient()('file.bringInBundle', { base64, store: false, whenOther });
  return looked.ok
    ? { ...content, whenOther, summary: looked.value.summary }
    : { problem: looked.problem, more: null };
}

async function keepContent(
  content: FileContent,
): Promise<{ readonly name: string; readonly mapId: MapId | null } | { readonly problem: Problem }> {
  const name = nameOfContent(content);
  const { whenOther } = content;
  if (content.kind === 'document') {
    const kept = await hostClient()('file.bringIn', { text: content.text, store: true, whenOther });
    return kept.ok ? { name, mapId: kept.value.mapId } : { problem: kept.problem };
  }
  const kept = await hostClient()('file.bringInBundle', { base64: content.base64, store: true, whenOther });
  return kept.ok ? { name, mapId: kept.value.mapIds[0] ?? null } : { problem: kept.problem };
}

const nameOfContent = (content: FileContent): string =>
  content.kind === 'document'
    ? content.summary.name
    : content.summary.documents
        .map((document) => document.name)
        .filter(Boolean)
        .join(', ');
