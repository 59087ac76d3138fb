import { expect, test } from 'vitest';
import { measuredDoubt } from '#renderer/language/measured-doubt.ts';

test('a loom measured shorter than its drawn way, or twice as long, is asked about', () => {
  expect(measuredDoubt(100, 1975, 'metric')).toMatch(
    /^100 mm · 3\.9 in measured, 1975 mm · 77\.8 in drawn\. No loom/,
  );
  expect(measuredDoubt(100, 1975, 'imperial')).toMatch(/^3\.9 in · 100 mm measured/);
  expect(measuredDoubt(4200, 1975, 'metric')).toContain('more loom spare than its way is long');
});

test('slack, and a drawing a little longer than the loom, pass without a word', () => {
  for (const measuredMm of [1900, 1975, 2050, 3000])
    expect(measuredDoubt(measuredMm, 1975, 'metric')).toBeNull();
});
