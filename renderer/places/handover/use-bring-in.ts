import { useCallback, useMemo, useRef, useState } from 'react';
import type { MapId } from '#core/quantity/id.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { BundleSummary, ImportSummary } from '#electron/contract/contract.ts';
import { hostClient } from '../../session/host.ts';
import { readFile } from '../../session/read-file.ts';
import { base64Of } from '../draw/picture-bytes.ts';
import { faultsIn, type MoreFaults } from './faults-in.ts';

/** What a file holds, and what becomes of it when it is kept. */
export type FileContent =
  | { readonly kind: 'document'; readonly text: string; readonly summary: ImportSummary }
  | { readonly kind: 'bundle'; readonly base64: string; readonly summary: BundleSummary };

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
    if ('problem' in looked) refuse(looked.problem, looked.more);
    else show({ at: 'asking', content: looked });
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

  return useMemo(() => ({ step, read, keep, reset }), [step, read, keep, reset]);
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
    ? { kind: 'document', text, summary: looked.value.summary }
    : { problem: looked.problem, more: faultsIn(text) };
}

async function lookAtBundle(bytes: Uint8Array<ArrayBuffer>): Promise<FileContent | Refusal> {
  const base64 = await base64Of(bytes);
  const looked = await hostClient()('file.bringInBundle', { base64, store: false });
  return looked.ok
    ? { kind: 'bundle', base64, summary: looked.value.summary }
    : { problem: looked.problem, more: null };
}

async function keepContent(
  content: FileContent,
): Promise<{ readonly name: string; readonly mapId: MapId | null } | { readonly problem: Problem }> {
  const name = nameOfContent(content);
  if (content.kind === 'document') {
    const kept = await hostClient()('file.bringIn', { text: content.text, store: true });
    return kept.ok ? { name, mapId: kept.value.mapId } : { problem: kept.problem };
  }
  const kept = await hostClient()('file.bringInBundle', { base64: content.base64, store: true });
  return kept.ok ? { name, mapId: kept.value.mapIds[0] ?? null } : { problem: kept.problem };
}

const nameOfContent = (content: FileContent): string =>
  content.kind === 'document'
    ? content.summary.name
    : content.summary.documents
        .map((document) => document.name)
        .filter(Boolean)
        .join(', ');
