import { z } from 'zod';
import type { DocumentProblem } from '../quantity/problem.ts';
import { fail, ok, type Result } from '../quantity/result.ts';
import { fieldProblem } from './field-problem.ts';

/** The longest list inside a record, and far more fields than any record has. */
const longestInnerList = 2_000;
const mostFields = 200;

/**
 * Checks a document against its schema and gives it, or its first fault. The lists of a document are
 * checked a record at a time: a file with a million faults is refused at the first, where checking all of
 * it would take minutes.
 * @example
 * checkedDocument(mapExchangeSchema, { ...mapToExchange(sample.map), nodes: [{ id: 7 }, { id: 8 }] })
 *   // => { ok: false, problem: { code: 'bad-field', path: 'nodes[0].id', expected: 'an id such as "node:left-sill"' } }
 */
export function checkedDocument<S extends z.ZodObject>(
  schema: S,
  document: object,
): Result<z.output<S>, DocumentProblem> {
  const head: Record<string, unknown> = { ...document };
  const lists: { name: string; schema: z.ZodArray; list: readonly unknown[] }[] = [];
  for (const [name, field] of Object.entries(schema.shape)) {
    const list = Object.hasOwn(document, name) ? head[name] : undefined;
    if (!(field instanceof z.ZodArray) || !Array.isArray(list)) continue;
    lists.push({ name, schema: field, list });
    head[name] = [];
  }
  const overgrown = overgrownIn(head, '');
  if (overgrown) return fail(overgrown);
  const checked = schema.safeParse(head);
  if (!checked.success) return fail(fieldProblem(checked.error));
  const whole = checked.data as Record<string, unknown>;
  for (const { name, schema: listSchema, list } of lists) {
    const records: unknown[] = [];
    for (const [index, record] of list.entries()) {
      const path = `${name}[${index}]`;
      const grown = overgrownIn(record, path);
      if (grown) return fail(grown);
      const read = z.safeParse(listSchema.element, record);
      if (!read.success) return fail(fieldProblem(read.error, path));
      records.push(read.data);
    }
    // What is asked of the list as such, for instance how long it may be.
    const asked = listSchema.def.checks?.length ? listSchema.safeParse(records) : null;
    if (asked && !asked.success) return fail(fieldProblem(asked.error, name));
    whole[name] = records;
  }
  return ok(whole as z.output<S>);
}

/** The first list or record in a value that is longer than any of ours, so long that checking it would take too long. */
function overgrownIn(value: unknown, path: string): DocumentProblem | null {
  if (typeof value !== 'object' || value === null) return null;
  if (Array.isArray(value)) {
    if (value.length > longestInnerList) {
      return { code: 'bad-field', path, expected: `entries <= ${longestInnerList}` };
    }
    for (const [index, each] of value.entries()) {
      const found = overgrownIn(each, `${path}[${index}]`);
      if (found) return found;
    }
    return null;
  }
  let fields = 0;
  for (const name in value) {
    fields += 1;
    if (fields > mostFields) return { code: 'bad-field', path, expected: `fields <= ${mostFields}` };
    const found = overgrownIn((value as Record<string, unknown>)[name], path ? `${path}.${name}` : name);
    if (found) return found;
  }
  return null;
}
