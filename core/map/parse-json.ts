import type { DocumentProblem } from '../quantity/problem.ts';
import { fail, ok, type Result } from '../quantity/result.ts';

/** No document or message of ours nests half as deep; a file made to hurt a reader nests by the million. */
const deepestNesting = 40;

/**
 * The value of a JSON text, a byte order mark before it forgiven. Problems: `not-json`, and `bad-field` for
 * brackets that nest more than 40 deep, which is told before anything is built. O(length of the text).
 * @example
 * parseJson('[1, 2]') // => { ok: true, value: [1, 2] }
 */
export function parseJson(text: string): Result<unknown, DocumentProblem> {
  const bare = text.startsWith('\uFEFF') ? text.slice(1) : text;
  if (nestsDeeper(bare, deepestNesting)) {
    return fail({ code: 'bad-field', path: '', expected: `brackets <= ${deepestNesting} deep` });
  }
  try {
    return ok(JSON.parse(bare));
  } catch (error) {
    return fail({ code: 'not-json', detail: error instanceof Error ? error.message : String(error) });
  }
}

function nestsDeeper(text: string, deepest: number): boolean {
  let depth = 0;
  for (let at = 0; at < text.length; at++) {
    const letter = text[at];
    if (letter === '"') at = stringEnd(text, at);
    else if (letter === '[' || letter === '{') {
      depth += 1;
      if (depth > deepest) return true;
    } else if (letter === ']' || letter === '}') depth -= 1;
  }
  return false;
}

/** Where a string that begins at `from` ends: at the next quote with an even number of backslashes before it. */
function stringEnd(text: string, from: number): number {
  for (let end = text.indexOf('"', from + 1); end >= 0; end = text.indexOf('"', end + 1)) {
    let slash = end;
    while (text[slash - 1] === '\\') slash -= 1;
    if ((end - slash) % 2 === 0) return end;
  }
  return text.length;
}
