import { describe, expect, test } from 'vitest';
import type { Job, JobEntry } from '#core/job/job-document.ts';
import { jobFaults } from '#core/job/job-faults.ts';
import { readJob } from '#core/job/read-job.ts';
import { sample } from '#tests/sample.ts';

const codeOf = (text: string) => {
  const read = readJob(text);
  return read.ok ? null : read.problem;
};

describe('reading a job document', () => {
  test('a job written out and read again is the same job', () => {
    expect(readJob(JSON.stringify(sample.job))).toEqual({ ok: true, value: sample.job });
  });

  test('a mark some editors put before the text does not matter', () => {
    expect(readJob(`\uFEFF${JSON.stringify(sample.job)}`).ok).toBe(true);
  });

  test('what is not a job is refused with its kind', () => {
    expect(codeOf('{')?.code).toBe('not-json');
    expect(codeOf('null')).toEqual({ code: 'wrong-format', expected: 'undertrim.job', found: '' });
    expect(codeOf('{"format":"undertrim.map","version":1}')).toEqual({
      code: 'wrong-format',
      expected: 'undertrim.job',
      found: 'undertrim.map',
    });
  });

  test('the first wrong field is named by its path', () => {
    const job = { ...sample.job, entries: [{ id: 'entry:1', at: sample.job.openedAt, type: 'panel-off' }] };
    expect(codeOf(JSON.stringify(job))).toMatchObject({ code: 'bad-field', path: 'entries[0].panelId' });
    expect(codeOf(JSON.stringify({ ...sample.job, colour: 'red' }))).toMatchObject({ path: 'colour' });
    expect(codeOf(JSON.stringify({ ...sample.job, version: 'one' }))).toMatchObject({ path: 'version' });
  });
});

describe('whether a job fits its map', () => {
  const with1 = (entry: object): Job => {
    const dated: object = { id: 'entry:1', at: sample.job.openedAt, ...entry };
    return { ...sample.job, entries: [dated as JobEntry] };
  };
  const state = { apartNodeIds: [], switchClosed: null, ignitionOn: false, batteryConnected: false };
  const body = { on: 'body' } as const;

  test('a job that fits has no faults', () => {
    expect(jobFaults(sample.map, sample.job)).toEqual([]);
  });

  test.each([
    ['panelId', 'panel:gone', { type: 'panel-off', panelId: 'panel:gone' }],
    ['entryId', 'entry:gone', { type: 'take-back', entryId: 'entry:gone' }],
    [
      'stretches',
      'segment:gone',
      {
        type: 'inspection',
        stretches: [{ segmentId: 'segment:gone', fromMm: 0, toMm: 1 }],
        result: 'found',
        lookQuality: 1,
        note: '',
      },
    ],
    [
      'from.nodeId',
      'node:gone',
      {
        type: 'reading',
        reading: { test: 'ohms', from: { on: 'wire', nodeId: 'node:gone' }, to: body, ohms: 3 },
        state,
        note: '',
      },
    ],
    [
      'state.apartNodeIds',
      'node:gone',
      {
        type: 'reading',
        reading: { test: 'symptom', stays: true },
        state: { ...state, apartNodeIds: ['node:gone'] },
        note: '',
      },
    ],
  ])('a missing %s is named', (field, missing, entry) => {
    expect(jobFaults(sample.map, with1(entry))).toEqual([
      { code: 'job-reference', entry: 'entry:1', field, missing },
    ]);
  });

  test('circuits named beside the searched one must be on the map too', () => {
    const job: Job = { ...sample.job, workingCircuitIds: ['circuit:gone'] };
    expect(jobFaults(sample.map, job)).toEqual([
      { code: 'job-reference', entry: 'job:tiny', field: 'workingCircuitIds', missing: 'circuit:gone' },
    ]);
  });
});
