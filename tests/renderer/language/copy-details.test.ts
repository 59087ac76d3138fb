import { expect, test } from 'vitest';
import { problemDetails, slipDetails } from '#renderer/language/copy-details.ts';

const at = '2026-01-05T09:00:00.000Z';

test('what is sent on about a problem has its code and figures and no customer', () => {
  expect(problemDetails({ code: 'stale-revision', expected: 4, found: 5 }, at)).toBe(
    'Undertrim, 2026-01-05T09:00:00.000Z\ncode: stale-revision\nexpected: 4\nfound: 5',
  );
  expect(problemDetails({ code: 'our-bug', detail: 'plate AB12 is undefined' }, at)).not.toContain('AB12');
  expect(problemDetails({ code: 'not-found', thing: 'plate AB12' }, at)).toBe(
    'Undertrim, 2026-01-05T09:00:00.000Z\ncode: not-found\nthing: left out',
  );
});

test('what is sent on about a slip of ours says where in the program and not what the customer wrote', () => {
  const said = slipDetails(new TypeError('plate AB12 is undefined'), at);
  expect(said).toContain('TypeError');
  expect(said).toContain('copy-details.test.ts');
  expect(said).not.toContain('AB12');
  expect(slipDetails('text', at)).toBe('Undertrim, 2026-01-05T09:00:00.000Z\nstring');
});
