import type { Problem } from '#core/quantity/problem.ts';

/** The sentences about sending on what went wrong. */
export const copyWords = {
  copy: 'Copy details',
  copied: 'Details are on the clipboard',
  refused: 'The details could not be copied',
} as const;

/** Only these facts go on the clipboard: figures and codes, never a name or a sentence someone wrote. */
const shareable = (value: unknown): value is number | boolean | null =>
  value === null || typeof value === 'number' || typeof value === 'boolean';

/** Facts that are the program's own words, whatever they hold. */
const ownWords = new Set(['code', 'field', 'format', 'expected']);
/** Problems whose detail is the program's own too; in any other it may quote what someone wrote. */
const ownDetail = new Set<Problem['code']>(['store-damaged', 'no-answer']);

/**
 * A problem as lines to send on: its code, its figures and what the program itself wrote; ids and whatever the
 * user typed are left out by their names, so that no customer goes with it.
 */
export function problemDetails(problem: Problem, at: string): string {
  const lines = Object.entries(problem).map(([name, value]) => {
    const own = ownWords.has(name) || (name === 'detail' && ownDetail.has(problem.code));
    const told = own || shareable(value) ? String(value) : 'left out';
    return `${name}: ${told}`;
  });
  if (problem.code === 'our-bug') lines.push('Where it was: undertrim.log in the data folder');
  return [`Undertrim, ${at}`, ...lines].join('\n');
}

/** A trouble that is told by its code alone, as lines to send on. */
export function troubleDetails(code: string, at: string): string {
  return [`Undertrim, ${at}`, `code: ${code}`, 'Where it was: undertrim.log in the data folder'].join('\n');
}

/** A slip of ours as lines to send on: its kind and where in the program, not its message. */
export function slipDetails(error: unknown, at: string): string {
  const kind = error instanceof Error ? error.name : typeof error;
  const places = error instanceof Error ? (error.stack ?? '').split('\n').filter(isPlace) : [];
  return [`Undertrim, ${at}`, kind, ...places].join('\n');
}

/** Lines of a trace in the forms engines write them: “at f (file:1:2)” and “f@file:1:2”. */
const isPlace = (line: string): boolean => /^\s+at |@.*:\d+:\d+$/.test(line);
