import { z } from 'zod';
import { idKind } from '../quantity/id.ts';
import { fail, ok, type Result } from '../quantity/result.ts';
import type { CopiedThings } from './copied-things.ts';
import { documentText } from './document-text.ts';
import { fieldProblem } from './field-problem.ts';
import type { MapRecord, TableKind } from './map-document.ts';
import { parseJson } from './parse-json.ts';
import { schemaOfKind } from './records.ts';

export const copiedFormat = 'undertrim.things';
const copiedVersion = 1;

/** What tells our text from any other on a clipboard, before its fields are looked at. */
const headSchema = z.looseObject({ format: z.literal(copiedFormat), version: z.number().int().min(1) });
const bodySchema = z.strictObject({ records: z.array(z.looseObject({ id: z.string() })).max(200_000) });

/**
 * Copied things as text that can lie on a clipboard, one record a line.
 * @example
 * copiedText({ records: [] }) // => '{\n  "format": "undertrim.things",\n  "version": 1,\n  "records": []\n}\n'
 */
export function copiedText(things: CopiedThings): string {
  return documentText({ format: copiedFormat, version: copiedVersion, records: things.records });
}

/**
 * Copied things from a clipboard's text. Refuses text that did not come from a drawing (`not-copied-things`),
 * a copy made by a later version (`newer-version`) and a damaged one (`bad-field`). O(length of the text).
 * @example
 * readCopied('Seat switch, pin 4') // => { ok: false, problem: { code: 'not-copied-things' } }
 */
export function readCopied(text: string): Result<CopiedThings> {
  const parsed = parseJson(text);
  if (!parsed.ok) return fail({ code: 'not-copied-things' });
  const head = headSchema.safeParse(parsed.value);
  if (!head.success) return fail({ code: 'not-copied-things' });
  const { format: _, version, ...rest } = head.data;
  if (version > copiedVersion) return fail({ code: 'newer-version', found: version, known: copiedVersion });
  const body = bodySchema.safeParse(rest);
  if (!body.success) return fail(fieldProblem(body.error));
  const records: MapRecord[] = [];
  for (const [index, record] of body.data.records.entries()) {
    const kind = idKind(record.id) as TableKind;
    if (!Object.hasOwn(schemaOfKind, kind)) {
      const expected = Object.keys(schemaOfKind).join(' | ');
      return fail({ code: 'bad-field', path: `records[${index}].id`, expected });
    }
    // By the schema of its own kind, so that the fault named is the fault there is.
    const checked = schemaOfKind[kind].safeParse(record);
    if (!checked.success) return fail(fieldProblem(checked.error, record.id));
    records.push(checked.data);
  }
  return ok({ records });
}
