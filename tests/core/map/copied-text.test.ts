import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pasteThings } from '#core/map/commands/paste-things.ts';
import { copiedText, readCopied } from '#core/map/copied-text.ts';
import { copiedThings } from '#core/map/copied-things.ts';
import { emptyMap } from '#core/map/map-document.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { sample } from '#tests/sample.ts';

test('whatever is copied comes back from the clipboard as it was, and can be laid on another map', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 400 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (seed, share) => {
        const map = randomMap(seed);
        const all = [
          ...map.segments.keys(),
          ...map.panels.keys(),
          ...map.rubSpots.keys(),
          ...map.circuits.keys(),
        ];
        const picked = all.slice(0, Math.ceil(all.length * share));
        const things = copiedThings(map, picked);
        if (!things.ok) throw new Error(things.problem.code);
        const read = readCopied(copiedText(things.value));
        expect(read).toEqual(things);
        if (!read.ok || picked.length === 0) return;
        const other = emptyMap('map:other', 'Other', 'van', 'left');
        const pasted = pasteThings(other, { things: read.value, dxMm: 100, dyMm: 0 }, seededChance(seed));
        expect(pasted.ok && pasted.value.added.length).toBe(things.value.records.length);
      },
    ),
    { seed: 20261125, numRuns: 40 },
  );
});

test('words, other JSON and a damaged copy are told apart', () => {
  const good = copiedText({ records: [sample.seat] });
  expect(readCopied('see page 4')).toMatchObject({ problem: { code: 'not-copied-things' } });
  expect(readCopied('{"records": []}')).toMatchObject({ problem: { code: 'not-copied-things' } });
  expect(readCopied(good.replace('"version": 1', '"version": 7'))).toMatchObject({
    problem: { code: 'newer-version', found: 7 },
  });
  expect(readCopied(good.replace('"minutesOff":', '"minutesOf":'))).toMatchObject({
    problem: { code: 'bad-field', path: 'panel:seat.minutesOff' },
  });
  expect(readCopied(good.replace('"panel:seat"', '"details:map"'))).toMatchObject({
    problem: { code: 'bad-field', path: 'records[0].id' },
  });
});
