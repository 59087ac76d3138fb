import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readJob } from '#core/job/read-job.ts';
import { mapText } from '#core/map/exchange.ts';
import { parseJson } from '#core/map/parse-json.ts';
import { readMap } from '#core/map/read-map.ts';
import { sample } from '#tests/sample.ts';

const text = mapText(sample.map);
const problemOf = (document: string): unknown => {
  const read = readMap(document);
  return read.ok ? 'taken' : read.problem;
};
/** The sample with one more field, or one in place of another. */
const withField = (name: string, value: string): string => text.replace('{', `{"${name}": ${value},`);
const without = (name: string): Record<string, unknown> => {
  const { [name]: _, ...rest } = JSON.parse(text);
  return rest;
};

describe('a JSON text', () => {
  test('is read as the engine reads it', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 6 }), fc.integer({ min: 0, max: 60 }), (json, cut) => {
        expect(parseJson(json)).toEqual({ ok: true, value: JSON.parse(json) });
        expect(parseJson(`\uFEFF${json}`).ok).toBe(true);
        const broken = json.slice(0, Math.max(0, json.length - cut));
        let good = true;
        try {
          JSON.parse(broken);
        } catch {
          good = false;
        }
        expect(parseJson(broken).ok).toBe(good);
      }),
      { seed: 8, numRuns: 300 },
    );
  });

  test('may hold any brackets within its strings', () => {
    const value = ['[[['.repeat(100), `\\"${'{'.repeat(100)}`, '\\', '"'];
    expect(parseJson(JSON.stringify(value))).toEqual({ ok: true, value });
  });

  test('that nests without end is refused before anything is built', () => {
    const deep = { code: 'bad-field', path: '', expected: 'brackets <= 40 deep' };
    expect(parseJson('['.repeat(3_000_000))).toEqual({ ok: false, problem: deep });
    expect(problemOf('{"a":'.repeat(1_000_000))).toEqual(deep);
    expect(problemOf(withField('format', `${'['.repeat(90)}${']'.repeat(90)}`))).toEqual(deep);
    expect(parseJson(`${'['.repeat(40)}${']'.repeat(40)}`).ok).toBe(true);
  });
});

describe('a document made to hurt its reader', () => {
  test('with a million faults is refused at the first', () => {
    const nodes = `[${Array(1_000_000).fill('0').join(',')}]`;
    const begun = process.cpuUsage();
    expect(
      problemOf(JSON.stringify({ ...without('nodes'), nodes: [] }).replace('"nodes":[]', `"nodes":${nodes}`)),
    ).toEqual({
      code: 'bad-field',
      path: 'nodes[0]',
      expected: 'object',
    });
    expect(process.cpuUsage(begun).user / 1_000).toBeLessThan(1_000);
  });

  test('with a list or a record without end is refused where that stands', () => {
    const path = `[${Array(3_000).fill('{}').join(',')}]`;
    const [circuit] = JSON.parse(text).circuits;
    const document = { ...without('circuits'), circuits: [{ ...circuit, path: JSON.parse(path) }] };
    expect(problemOf(JSON.stringify(document))).toEqual({
      code: 'bad-field',
      path: 'circuits[0].path',
      expected: 'entries <= 2000',
    });
    const many = Object.fromEntries(Array.from({ length: 300 }, (_, i) => [`f${i}`, i]));
    expect(problemOf(withField('more', JSON.stringify(many)))).toEqual({
      code: 'bad-field',
      path: 'more',
      expected: 'fields <= 200',
    });
  });

  test('with names that objects inherit is refused by name, and no object inherits anything from it', () => {
    for (const name of ['__proto__', 'constructor', 'prototype', 'toString']) {
      expect(problemOf(withField(name, '{"polluted": true}'))).toEqual({
        code: 'bad-field',
        path: name,
        expected: 'no such field',
      });
    }
    expect({}).not.toHaveProperty('polluted');
    // A format that is no text, and cannot even be made one.
    expect(problemOf('{"format": {"toString": 1}}')).toMatchObject({ code: 'wrong-format', found: '' });
    expect(readJob('{"format": {"toString": 1}}')).toMatchObject({ problem: { code: 'wrong-format' } });
  });

  test('with the same field twice is read by the last, as every reader of JSON does', () => {
    expect(problemOf(withField('revision', '-7'))).toBe('taken');
    expect(problemOf(text.replace(/"revision": \d+/, '"revision": 1, "revision": -7'))).toMatchObject({
      path: 'revision',
    });
  });

  test('with numbers beyond number is refused by the field', () => {
    for (const odd of ['1e999', '-1e999', '1e308', '9007199254740993', '"NaN"', 'null', 'true']) {
      const document = text.replace(/"xMm":-?[\d.]+/, `"xMm":${odd}`);
      expect(problemOf(document), odd).toMatchObject({
        code: 'bad-field',
        path: expect.stringMatching(/xMm$/),
      });
    }
    expect(problemOf(text.replace(/"xMm":-?[\d.]+/, '"xMm":NaN'))).toMatchObject({ code: 'not-json' });
  });

  test('says no more in its problem than a person can read', () => {
    const long = 'x'.repeat(2_000_000);
    for (const document of [
      `{"format": "${long}"}`,
      withField(long, '1'),
      `"${long}`,
      withField('id', `"${long}"`),
    ]) {
      expect(JSON.stringify(problemOf(document)).length).toBeLessThan(400);
    }
  });
});
