import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { describe, expect, test } from 'vitest';
import { sample } from '#tests/sample.ts';

/**
 * Every exported core function carries one worked example (`call // => answer`), and here they run.
 * Numbers may differ in the sixth digit; everything else must be equal.
 */
const coreFolder = join(import.meta.dirname, '../../core');

const files = readdirSync(coreFolder, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => join(coreFolder, name));

interface Example {
  readonly file: string;
  readonly name: string;
  readonly call: string;
  readonly answer: string;
}

const documentedFunction = /\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\s*export (?:async )?function (\w+)/g;
const anyFunction = /^export (?:async )?function (\w+)/gm;

function examplesIn(file: string): { examples: Example[]; bare: string[] } {
  const text = readFileSync(file, 'utf8');
  const examples: Example[] = [];
  for (const [, comment = '', name = ''] of text.matchAll(documentedFunction)) {
    const lines = comment.split('\n').map((line) => line.replace(/^\s*\* ?/, ''));
    const start = lines.indexOf('@example');
    if (start < 0) continue;
    const body = lines
      .slice(start + 1)
      .join('\n')
      .trim();
    const arrow = body.lastIndexOf('// =>');
    if (arrow >= 0) examples.push({ file, name, call: body.slice(0, arrow), answer: body.slice(arrow + 5) });
  }
  const named = new Set(examples.map((example) => example.name));
  const bare = [...text.matchAll(anyFunction)]
    .map((match) => match[1] ?? '')
    .filter((name) => !named.has(name));
  return { examples, bare };
}

/** Numbers rounded to six significant digits, so that an example may be written as a person would. */
function rounded(value: unknown): unknown {
  if (typeof value === 'number' && Number.isFinite(value)) {
    return Math.abs(value) < 1e-12 ? 0 : Number(value.toPrecision(6));
  }
  if (Array.isArray(value)) return value.map(rounded);
  if (value instanceof Float64Array) return [...value].map(rounded);
  if (value && Object.getPrototypeOf(value) === Object.prototype) {
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, rounded(each)]));
  }
  return value;
}

const modules = new Map<string, Record<string, unknown>>();
for (const file of files) modules.set(file, await import(file));
const scope: Record<string, unknown> = { sample };
for (const exported of modules.values()) Object.assign(scope, exported);

const evaluate = (source: string): unknown =>
  new Function(...Object.keys(scope), `return (${source.trim()}\n)`)(...Object.values(scope));

describe('worked examples in docstrings', () => {
  for (const file of files) {
    const { examples, bare } = examplesIn(file);
    test(`${relative(coreFolder, file)}: every exported function has an example`, () => {
      expect(bare).toEqual([]);
    });
    for (const { name, call, answer } of examples) {
      test(`${name}: ${call.trim()}`, () => {
        expect(rounded(evaluate(call))).toEqual(rounded(evaluate(answer)));
      });
    }
  }
});
