import { expect, test } from 'vitest';
import { canClose } from '#core/job/can-close.ts';
import { closeOutcomes } from '#core/job/closing-words.ts';
import { codesMeant, expectationSentence, hindranceSentence } from '#renderer/language/close.ts';
import { hashOf, placeOf } from '#renderer/place.ts';
import { closeHash } from '#renderer/places/close/close-page.ts';
import { firstShop, readShop, sayAmount } from '#renderer/session/shop-settings.ts';
import { wholeJob } from '#tests/core/job/closing-record.ts';
import { sample } from '#tests/sample.ts';

test('a word as typed finds the causes and kinds of damage whose words hold it', () => {
  expect(codesMeant('rubs')).toContain('edge-touches');
  expect(codesMeant('Chafed')).toContain('chafed');
  expect(codesMeant('hinge')).toContain('moves-with-hinge');
  expect(codesMeant('zebra')).toEqual([]);
});

test('a sound figure is said no finer than a hand meter shows it, and a rough one as rough', () => {
  const figure = { what: 'figure', value: 0.086612, unit: 'ohm', rough: false } as const;
  expect(expectationSentence(figure)).toBe('about 0.087 Ω');
  expect(expectationSentence({ ...figure, value: 4.9, unit: 'volt', rough: true })).toContain(
    'about 4.9 V, by',
  );
});

test('everything that is missing is said in a sentence with the user’s own names', () => {
  const record = wholeJob();
  for (const kept of record.entries.keys()) {
    const entries = record.entries.slice(0, kept);
    for (const outcome of closeOutcomes) {
      const { hindrances, reminders } = canClose(sample.map, sample.line, entries, outcome, '');
      for (const each of [...hindrances, ...reminders]) {
        const said = hindranceSentence(each, (id) => sample.map.panels.get(id as never)?.name ?? id);
        expect(said).toMatch(/^[A-Z].*\.$/);
        expect(said).not.toMatch(/panel:|entry:|undefined/);
      }
    }
  }
});

test('the close and its sheets have addresses of their own, and reloading leads back to them', () => {
  for (const page of ['work', 'report', 'bench-sheet'] as const) {
    const place = { at: 'close', jobId: 'job:a', page } as const;
    expect(hashOf(place)).toBe(closeHash('job:a', page));
    expect(placeOf(hashOf(place))).toEqual(place);
  }
  expect(placeOf('#/close/job:a/no-such-sheet')).toEqual({ at: 'close', jobId: 'job:a', page: 'work' });
  expect(placeOf('#/model/map:a')).toEqual({ at: 'model', mapId: 'map:a' });
});

test('the workshop’s settings are read line by line, whatever was kept', () => {
  expect(readShop(null)).toEqual(firstShop);
  expect(readShop('{"name":7}')).toEqual(firstShop);
  expect(readShop('not json')).toEqual(firstShop);
  const kept = { ...firstShop, name: 'Bench and Ramp', hourlyRate: 60, currency: '£', paper: 'letter' };
  expect(readShop(JSON.stringify(kept))).toEqual(kept);
  expect(readShop('{"hourlyRate":-5,"logoSha256":"../x"}')).toEqual(firstShop);
});

test('an amount stands with the shop’s currency, and alone where none is set', () => {
  expect(sayAmount(54.5, '£')).toBe('£ 54.50');
  expect(sayAmount(54.5, '')).toBe('54.50');
});
