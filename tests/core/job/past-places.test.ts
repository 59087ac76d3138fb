import { expect, test } from 'vitest';
import { chafingPlaces } from '#core/job/chafing-places.ts';
import { jobFacts, minutesWorked } from '#core/job/job-facts.ts';
import { jobStage } from '#core/job/job-stage.ts';
import { provedFinds } from '#core/job/proved-find.ts';
import type { Stretch } from '#core/job/reading.ts';
import { figuresByModel, shopFigures } from '#core/job/shop-figures.ts';
import { jobProgress } from '#db/job-progress.ts';
import { ClosingRecord, causeFinding, place, wholeJob } from './closing-record.ts';

const prove = (record: ClosingRecord, stretches: Stretch[] = [...place], comesAndGoes = true) => {
  const { id } = record.add('finding', { ...causeFinding, stretches });
  const parts = { damageSeen: true, onFaultyCircuit: true, comesAndGoes };
  record.add('proof-of-cause', { findingId: id, ...parts, note: '' });
};

const found = (fromMm: number) => {
  const record = new ClosingRecord();
  record.add('panel-off', { panelId: 'panel:tread' });
  prove(record, [{ ...place[0], fromMm, toMm: fromMm + 20 }]);
  return jobFacts(record.job);
};

test('a find entered as a look and then described counts once', () => {
  const facts = jobFacts(wholeJob().job);
  expect(facts.found).toHaveLength(1);
  expect(facts.found[0]).toMatchObject({ is: 'proved-cause', damage: 'chafed', cause: 'edge-touches' });
});

test('minutes to find come from the find and reach clocks, else from the record', () => {
  const record = wholeJob();
  expect(jobFacts(record.job).minutesToFind).toBe(40);
  const clocked = new ClosingRecord();
  clocked.add('time', { clock: 'find', action: 'start' }, 540);
  clocked.add('time', { clock: 'reach', action: 'start' }, 552);
  clocked.add('inspection', { stretches: [...place], result: 'found', lookQuality: 1, note: '' }, 575);
  prove(clocked);
  expect(jobFacts(clocked.job).minutesToFind).toBe(35);
});

test('a night between two entries is no work', () => {
  expect(
    minutesWorked('2026-01-05T16:00:00Z', [{ at: '2026-01-05T16:30:00Z' }, { at: '2026-01-06T08:00:00Z' }]),
  ).toBe(30);
});

test('looks at one opening are one, a panel between them makes a second', () => {
  const look = (record: ClosingRecord, result: 'seen-sound' | 'found') =>
    record.add('inspection', { stretches: [...place], result, lookQuality: 1, note: '' });
  const one = new ClosingRecord();
  one.add('panel-off', { panelId: 'panel:tread' });
  look(one, 'seen-sound');
  look(one, 'found');
  prove(one);
  expect(jobFacts(one.job).openings).toBe(1);
  const two = new ClosingRecord();
  look(two, 'seen-sound');
  two.add('panel-off', { panelId: 'panel:tread' });
  look(two, 'found');
  prove(two);
  expect(jobFacts(two.job).openings).toBe(2);
  const figures = shopFigures([one, two].map(({ job }) => jobFacts(job)));
  expect(figures).toMatchObject({ jobs: 2, found: 2, firstOpeningShare: 0.5 });
});

test('finds a hand apart are one place, farther ones two, most causes first', () => {
  const places = chafingPlaces([found(100), found(170), found(420)]);
  expect(places.map(({ fromMm, toMm, causes }) => [fromMm, toMm, causes])).toEqual([
    [100, 190, 2],
    [420, 440, 1],
  ]);
  expect(places[0]).toMatchObject({ damageCauses: ['edge-touches'], damageTypes: ['chafed'] });
});

test('a cause whose proof is missing or refused is no find, and not other damage either', () => {
  const seen = { stretches: [...place], result: 'found', lookQuality: 1, note: '' } as const;
  const bare = new ClosingRecord();
  bare.add('inspection', { ...seen, stretches: [...place] });
  const refused = new ClosingRecord();
  refused.add('inspection', { ...seen, stretches: [...place] });
  prove(refused, [...place], false);
  for (const record of [bare, refused]) {
    const facts = jobFacts(record.job);
    expect(facts).toMatchObject({ found: [{ is: 'not-proved' }], openings: null, minutesToFind: null });
    expect(shopFigures([facts]).found).toBe(0);
    expect(chafingPlaces([facts])).toMatchObject([{ causes: 0, notProved: 1, otherDamage: 0 }]);
    expect(jobProgress(record.job).findCount).toBe(0);
  }
  expect(jobStage(bare.entries)).toBe('found');
  expect(jobStage(refused.entries)).toBe('opening');
  prove(refused);
  expect(jobFacts(refused.job).openings).toBe(1);
  expect(jobProgress(refused.job)).toMatchObject({ findCount: 1, stage: 'found' });
});

test('on wiring that may not be moved, the end as proved stands for the third part', () => {
  const record = new ClosingRecord();
  prove(record, [...place], false);
  record.add('close', { outcome: 'not-found', reason: 'Stopped', advice: '' });
  expect(provedFinds(record.entries)).toEqual([]);
  record.add('close', { outcome: 'proved', reason: '', advice: '' });
  expect(provedFinds(record.entries)).toHaveLength(1);
});

test('a clean look at a place counts beside its finds', () => {
  const clean = new ClosingRecord();
  clean.add('inspection', {
    stretches: [{ ...place[0], fromMm: 0, toMm: 300 }],
    result: 'seen-sound',
    lookQuality: 1,
    note: '',
  });
  expect(chafingPlaces([found(100), jobFacts(clean.job)])).toMatchObject([{ causes: 1, sound: 1 }]);
});

test('figures are kept apart by model', () => {
  const other = { ...found(100), mapId: 'map:other' as const };
  const models = figuresByModel([found(100), other, other]);
  expect([...models].map(([mapId, { jobs }]) => [mapId, jobs])).toEqual([
    ['map:tiny', 1],
    ['map:other', 2],
  ]);
});
