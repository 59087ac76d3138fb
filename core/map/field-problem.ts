import type { z } from 'zod';
import type { DocumentProblem } from '../quantity/problem.ts';

type Issue = z.core.$ZodIssue;

/** A field's name is shown to a person; one that goes on beyond this is no name. */
const longestName = 80;

/** The place of a field the way a person would write it: `segments[3].clips[0].stationMm`. */
function pathText(path: readonly PropertyKey[], root: string): string {
  let text = root;
  for (const part of path) {
    if (typeof part === 'number') text += `[${part}]`;
    else text += (text ? '.' : '') + String(part).slice(0, longestName);
  }
  return text;
}

/** What would have been right, as a short fact. */
function expectedText(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.expected;
    case 'invalid_value':
      return issue.values.map(String).join(' | ');
    case 'too_small':
      return `${sizeWord(issue.origin)}${issue.inclusive === false ? '>' : '>='} ${issue.minimum}`;
    case 'too_big':
      return `${sizeWord(issue.origin)}${issue.inclusive === false ? '<' : '<='} ${issue.maximum}`;
    case 'unrecognized_keys':
      return 'no such field';
    case 'invalid_union':
      return [...new Set(issue.errors.flatMap((branch) => branch.map(expectedText)))].join(' | ');
    case 'invalid_format':
      return 'pattern' in issue && issue.pattern ? `${issue.format} ${issue.pattern}` : issue.format;
    default:
      return issue.message;
  }
}

function sizeWord(origin: string): string {
  if (origin === 'string') return 'letters ';
  return origin === 'array' ? 'entries ' : '';
}

/**
 * The first fault zod found, as the path of the field and what would have been right there. `root` goes
 * before the path; a record's own id makes a good one.
 * @example
 * fieldProblem(mapExchangeSchema.safeParse({ ...mapToExchange(sample.map), revision: -1 }).error) // => { code: 'bad-field', path: 'revision', expected: '>= 0' }
 */
export function fieldProblem(error: z.ZodError, root = ''): Extract<DocumentProblem, { code: 'bad-field' }> {
  const issue = error.issues[0];
  if (!issue) return { code: 'bad-field', path: root, expected: '' };
  const path = issue.code === 'unrecognized_keys' ? [...issue.path, issue.keys[0] ?? ''] : issue.path;
  return { code: 'bad-field', path: pathText(path, root), expected: expectedText(issue) };
}
