import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { jobSchema } from '#core/job/job-document.ts';
import { mapExchangeSchema } from '#core/map/exchange.ts';

const text = readFileSync(join(import.meta.dirname, '../../sample-vehicles/FORMAT.md'), 'utf8');

/** Every property name and every fixed word a schema allows, from its published JSON Schema form. */
function wordsOf(schema: z.ZodType): ReadonlySet<string> {
  const words = new Set<string>();
  const visit = (part: unknown): void => {
    if (Array.isArray(part)) {
      part.forEach(visit);
      return;
    }
    if (typeof part !== 'object' || part === null) return;
    const { properties, enum: choices, const: only } = part as Record<string, unknown>;
    if (properties) for (const name of Object.keys(properties)) words.add(name);
    for (const word of [...(Array.isArray(choices) ? choices : []), only]) {
      if (typeof word === 'string') words.add(word);
    }
    Object.values(part).forEach(visit);
  };
  visit(z.toJSONSchema(schema, { unrepresentable: 'any' }));
  return words;
}

describe('the written format', () => {
  for (const [name, schema] of [
    ['map', mapExchangeSchema],
    ['job', jobSchema],
  ] as const) {
    test(`names every field and every fixed word of a ${name}`, () => {
      const words = wordsOf(schema);
      expect(words.size).toBeGreaterThan(30);
      const unnamed = [...words].filter((word) => !text.includes(`\`${word}`) && !text.includes(`"${word}"`));
      expect(unnamed).toEqual([]);
    });
  }
});
