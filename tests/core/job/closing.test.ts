import { describe, expect, test } from 'vitest';
import { agreedLimit } from '#core/job/agreed-limit.ts';
import { canClose } from '#core/job/can-close.ts';
import { customerReport } from '#core/job/customer-report.ts';
import { digSheet } from '#core/job/dig-sheet.ts';
import { evidenceEntries, foundLook } from '#core/job/evidence-entries.ts';
import { jobClock } from '#core/job/job-clock.ts';
import { jobSchema } from '#core/job/job-document.ts';
import { faultsOfEntries, jobFaults } from '#core/job/job-faults.ts';
import { jobStage } from '#core/job/job-stage.ts';
import { nextPlacesCost } from '#core/job/next-places-cost.ts';
import { panelsRefitted, panelsToRefit } from '#core/job/panels-to-refit.ts';
import { faultStillThere, proofChecklist } from '#core/job/proof-checklist.ts';
import { rank } from '#core/job/rank.ts';
import { standingEntries } from '#core/job/standing-entries.ts';
import { sample } from '#tests/sample.ts';
import { bare, ClosingRecord, causeFinding, place, toBody, wholeJob } from './closing-record.ts';

const { map, line } = sample;
const state = { ...bare, apartNodeIds: [...bare.apartNodeIds] };
const noon = '2026-01-05T12:00:00Z';

const hindrances = (record: ClosingRecord) =>
  canClose(map, line, record.entries, 'proved', '').hindrances.map(({ code }) => code);

function without(...types: string[]): ClosingRecord {
  const record = new ClosingRecord();
  record.entries.push(...wholeJob().entries.filter((entry) => !types.includes(entry.type)));
  return record;
}

describe('the clocks of the bill', () => {
  test('one clock runs at a time, and starting another stops it', () => {
    const record = new ClosingRecord();
    record.add('time', { clock: 'find', action: 'start' }, 540);
    record.add('time', { clock: 'reach', action: 'start' }, 565);
    record.add('time', { clock: 'reach', action: 'stop' }, 600);
    const clock = jobClock(record.entries, noon);
    expect(clock.minutes).toEqual({ find: 25, reach: 35, repair: 0, refit: 0 });
    expect(clock.totalMinutes).toBe(60);
    expect(clock.running).toBeNull();
  });

  test('a running clock counts on to now, so a restart loses nothing', () => {
    const record = new ClosingRecord();
    record.add('time', { clock: 'repair', action: 'start' }, 660);
    expect(jobClock(record.entries, noon)).toMatchObject({
      minutes: { repair: 60 },
      running: { clock: 'repair', since: '2026-01-05T11:00:00Z' },
    });
    expect(jobClock(record.entries, '2026-01-05T12:30:00Z').minutes.repair).toBe(90);
  });

  test('a forgotten clock is put right by minutes and never falls below nothing', () => {
    const record = new ClosingRecord();
    record.add('time', { clock: 'find', action: 'start' }, 540);
    record.add('time', { clock: 'find', action: 'stop' }, 600);
    record.add('time', { clock: 'find', action: 'adjust', minutes: -15 });
    record.add('time', { clock: 'refit', action: 'adjust', minutes: -5 });
    expect(jobClock(record.entries, noon).minutes).toEqual({ find: 45, reach: 0, repair: 0, refit: 0 });
  });

  test('stopping a clock that does not run changes nothing, and closing the job stops the one that does', () => {
    const record = new ClosingRecord();
    record.add('time', { clock: 'find', action: 'start' }, 540);
    record.add('time', { clock: 'refit', action: 'stop' }, 550);
    record.add('close', { outcome: 'not-found', reason: 'Not seen again', advice: '' }, 570);
    expect(jobClock(record.entries, noon)).toMatchObject({ totalMinutes: 30, running: null });
  });
});

describe('money in stages', () => {
  test('each extension adds to what was agreed', () => {
    const record = new ClosingRecord();
    record.add('agreed', { measure: 'minutes', adds: 60, extension: false, agreedBy: 'Owner', note: '' });
    record.add('agreed', { measure: 'minutes', adds: 120, extension: true, agreedBy: 'Owner', note: '' });
    const limit = agreedLimit(record.entries, 90, null);
    expect(limit).toMatchObject({ minutes: 180, amount: null, spentAmount: null, shareUsed: 0.5 });
    expect(limit.stages.map(({ extension }) => extension)).toEqual([false, true]);
  });

  test('an amount is compared at the shop’s rate, and only with one', () => {
    const record = new ClosingRecord();
    record.add('agreed', { measure: 'amount', adds: 90, extension: false, agreedBy: '', note: '' });
    expect(agreedLimit(record.entries, 60, 60)).toMatchObject({ spentAmount: 60, shareUsed: 60 / 90 });
    expect(agreedLimit(record.entries, 60, null).shareUsed).toBeNull();
  });

  test('the tighter of two limits counts', () => {
    const record = new ClosingRecord();
    record.add('agreed', { measure: 'minutes', adds: 120, extension: false, agreedBy: '', note: '' });
    record.add('agreed', { measure: 'amount', adds: 50, extension: false, agreedBy: '', note: '' });
    expect(agreedLimit(record.entries, 60, 60).shareUsed).toBe(1.2);
  });
});

test('reaching the next places counts their minutes, their refit once, and the chance by then', () => {
  const ranking = rank(map, sample.job);
  if (!ranking.ok) throw new Error(ranking.problem.code);
  const { digPlan } = ranking.value;
  const cost = nextPlacesCost(map, digPlan, 3, 60);
  const off = new Set(digPlan.slice(0, 3).flatMap((step) => step.takeOff));
  expect(off.size).toBeGreaterThan(0);
  expect(cost.minutes).toBeCloseTo(digPlan[2]?.runningMinutes ?? 0, 6);
  expect(cost.refitMinutes).toBe([...off].reduce((sum, id) => sum + (map.panels.get(id)?.minutesOn ?? 0), 0));
  expect(cost.probability).toBe(digPlan[2]?.runningProbability);
  expect(cost.amount).toBeCloseTo(cost.minutes + cost.refitMinutes, 6);
});

test('what came off last goes on first, and what went on is told', () => {
  const record = new ClosingRecord();
  record.add('panel-off', { panelId: 'panel:tread' });
  record.add('panel-off', { panelId: 'panel:seat' });
  expect(panelsToRefit(map, record.entries).map(({ id }) => id)).toEqual(['panel:seat', 'panel:tread']);
  record.add('panel-on', { panelId: 'panel:seat' });
  expect(panelsToRefit(map, record.entries).map(({ id }) => id)).toEqual(['panel:tread']);
  expect(panelsRefitted(map, record.entries).map(({ id }) => id)).toEqual(['panel:seat']);
});

describe('the stages of a job', () => {
  test('testing, opening, found, repaired, closed', () => {
    const record = wholeJob();
    const stageAfter = (count: number) => jobStage(record.entries.slice(0, count));
    expect([0, 1, 2, 4, 7].map(stageAfter)).toEqual(['testing', 'testing', 'opening', 'found', 'repaired']);
    record.add('close', { outcome: 'proved', reason: '', advice: '' });
    expect(jobStage(record.entries)).toBe('closed');
    record.add('take-back', { entryId: record.entries.at(-1)?.id ?? 'entry:none' });
    expect(jobStage(standingEntries(record.job))).toBe('repaired');
  });
});

describe('the tests that must come back good', () => {
  test('a reading that showed the fault comes back with what a sound circuit shows', () => {
    const items = proofChecklist(map, line, wholeJob().entries.slice(0, 7));
    expect(items.map(({ check }) => check)).toEqual(['reading', 'code', 'function', 'airbag-lamp', 'move']);
    expect(items[0]).toMatchObject({ expected: { what: 'open-line' }, done: null });
  });

  test('a reading that showed a sound circuit need not come back', () => {
    const record = new ClosingRecord();
    record.add('reading', { reading: toBody('open-line'), state, note: '' });
    expect(proofChecklist(map, line, record.entries).map(({ check }) => check)).toEqual([
      'code',
      'function',
      'move',
    ]);
  });

  test('the same test taken three times comes back once', () => {
    const record = new ClosingRecord();
    for (const ohms of [0.4, 0.5, 0.3]) record.add('reading', { reading: toBody(ohms), state, note: '' });
    expect(proofChecklist(map, line, record.entries).filter(({ check }) => check === 'reading')).toHaveLength(
      1,
    );
  });

  test('end to end ohms are expected from the conductor table: 1.5 m of 0.35 mm² and a plug', () => {
    const record = new ClosingRecord();
    const reading = {
      test: 'ohms',
      from: { on: 'wire', nodeId: 'node:west' },
      to: { on: 'wire', nodeId: 'node:far' },
      ohms: 'open-line',
    } as const;
    record.add('reading', { reading, state, note: '' });
    const [item] = proofChecklist(map, line, record.entries);
    // 54.4 milliohm a metre (ISO 6722-1 maximum, from memory) and 5 milliohm for the plug.
    expect(item?.expected).toMatchObject({ what: 'figure', unit: 'ohm', rough: false });
    expect(item?.expected.what === 'figure' ? item.expected.value : 0).toBeCloseTo(1.5 * 0.0544 + 0.005, 4);
  });

  test('the loom is moved again where the fault came and went most often', () => {
    const record = new ClosingRecord();
    const moves = [0, 7, 1].map((changed) =>
      record.add('reading', {
        reading: { test: 'move', stretches: [...place], changed, tried: 10 },
        state,
        note: '',
      }),
    );
    const item = proofChecklist(map, line, record.entries).find(({ check }) => check === 'move');
    expect(item?.repeats?.id).toBe(moves[1]?.id);
  });

  test('a test from before the newest repair does not prove it', () => {
    const record = wholeJob();
    const finding = record.entries.find(({ type }) => type === 'finding');
    record.add('repair', {
      findingId: finding?.id ?? 'entry:none',
      practices: ['insulation-covered'],
      joints: 0,
      cures: ['sleeve'],
      makerAllows: 'yes',
      photos: [],
      note: '',
    });
    expect(proofChecklist(map, line, record.entries).every(({ done }) => done === null)).toBe(true);
  });

  test('nothing is measured or moved on an airbag or high-voltage circuit', () => {
    for (const duty of ['restraint', 'high-voltage'] as const) {
      const guarded = { ...line, circuit: { ...line.circuit, duty } };
      expect(proofChecklist(map, guarded, wholeJob().entries).map(({ check }) => check)).toEqual([
        'code',
        'function',
        'airbag-lamp',
      ]);
    }
  });

  test('the airbag lamp is asked for only where a part with an airbag or belt unit was off', () => {
    const record = new ClosingRecord();
    record.add('panel-off', { panelId: 'panel:tread' });
    const checks = () => proofChecklist(map, line, record.entries).map(({ check }) => check);
    expect(checks()).not.toContain('airbag-lamp');
    record.add('panel-off', { panelId: 'panel:seat' });
    expect(checks()).toContain('airbag-lamp');
  });
});

describe('closing', () => {
  test('a job with everything done may be closed as proved', () => {
    expect(hindrances(wholeJob())).toEqual([]);
  });

  test.each([
    [['finding', 'proof-of-cause', 'repair', 'looked-along'], 'no-cause-found'],
    [['proof-of-cause'], 'not-proved'],
    [['repair'], 'not-repaired'],
    [['looked-along'], 'not-looked-along'],
    [['proof'], 'test-missing'],
    [['panel-on'], 'panels-off'],
  ] as const)('without %s it may not: %s', (types, code) => {
    expect(hindrances(without(...types))).toContain(code);
  });

  test('a proof with a part missing names the part', () => {
    const record = wholeJob();
    const finding = record.entries.find(({ type }) => type === 'finding');
    record.add('proof-of-cause', {
      findingId: finding?.id ?? 'entry:none',
      damageSeen: true,
      onFaultyCircuit: true,
      comesAndGoes: false,
      note: '',
    });
    const check = canClose(map, line, record.entries, 'proved', '');
    expect(check.hindrances).toContainEqual({ code: 'not-proved', missing: ['comesAndGoes'] });
  });

  test('a bad test keeps it open', () => {
    const record = wholeJob();
    record.add('proof', { check: 'function', good: false, note: '' });
    expect(hindrances(record)).toEqual(['test-bad']);
    expect(faultStillThere(proofChecklist(map, line, record.entries))).toBe(true);
  });

  test('a repair that leaves the edge bare keeps it open', () => {
    const record = wholeJob();
    const bareEdge = new ClosingRecord();
    bareEdge.entries.push(
      ...record.entries.map((entry) => (entry.type === 'repair' ? { ...entry, cures: [] } : entry)),
    );
    expect(hindrances(bareEdge)).toEqual(['still-rubs']);
  });

  test('other damage left as it is is a reminder, not a hindrance', () => {
    const record = wholeJob();
    record.add('finding', { ...causeFinding, result: 'damaged-not-cause', circuitId: null });
    const check = canClose(map, line, record.entries, 'proved', '');
    expect(check.hindrances).toEqual([]);
    expect(check.reminders).toMatchObject([{ code: 'not-repaired', isCause: false }]);
  });

  test('not found and stopped by the customer ask for a reason and remind of panels', () => {
    for (const outcome of ['not-found', 'customer-stopped'] as const) {
      const record = without('panel-on');
      expect(canClose(map, line, record.entries, outcome, ' ').hindrances).toEqual([{ code: 'no-reason' }]);
      const check = canClose(map, line, record.entries, outcome, 'Not seen again in 12 km');
      expect(check.hindrances).toEqual([]);
      expect(check.reminders.map(({ code }) => code)).toContain('panels-off');
    }
  });
});

describe('when the fault is still there after the repair', () => {
  function searchedOn(): ClosingRecord {
    const record = new ClosingRecord();
    record.entries.push(...wholeJob().entries.slice(0, 8));
    const reading = record.entries[0];
    if (reading?.type !== 'reading') throw new Error('the first entry is a reading');
    record.add('proof', {
      check: 'reading',
      repeats: reading.id,
      reading: toBody(3),
      state: reading.state,
      good: false,
      note: '',
    });
    record.add('search-on', { note: '' });
    return record;
  }

  test('the repaired place no longer ends the search, and only the reading after the repair counts', () => {
    const { entries } = searchedOn();
    expect(foundLook(entries)).toBeNull();
    expect(jobStage(entries)).toBe('opening');
    const readings = evidenceEntries(entries).filter((entry) => entry.type === 'reading');
    expect(readings.map(({ reading }) => (reading.test === 'ohms' ? reading.ohms : null))).toEqual([3]);
  });

  test('the ranking goes on with what is left instead of the place just repaired', () => {
    const { job } = searchedOn();
    const before = rank(map, { ...job, entries: job.entries.slice(0, 8) });
    const after = rank(map, job);
    if (!before.ok || !after.ok) throw new Error('both rank');
    const chanceAtRepair = (ranking: typeof before.value): number => {
      const { cellEdgesMm, cellProbability } = ranking.posterior;
      return cellProbability.reduce(
        (sum, p, cell) => ((cellEdgesMm[cell] ?? 0) >= 735 && (cellEdgesMm[cell] ?? 0) < 765 ? sum + p : sum),
        0,
      );
    };
    expect(chanceAtRepair(before.value)).toBeGreaterThan(0.9);
    expect(chanceAtRepair(after.value)).toBeLessThan(0.2);
  });

  test('a second cause is found, repaired and proved in the same job', () => {
    const record = searchedOn();
    expect(hindrances(record)).toContain('no-cause-found');
    const stretch = { segmentId: 'segment:rear', fromMm: 200, toMm: 220 } as const;
    record.add('inspection', { stretches: [stretch], result: 'found', lookQuality: 0.95, note: '' });
    expect(foundLook(record.entries)?.stretches).toEqual([stretch]);
    const finding = record.add('finding', { ...causeFinding, stretches: [stretch] });
    expect(hindrances(record)).not.toContain('no-cause-found');
    expect(canClose(map, line, record.entries, 'proved', '').hindrances).toContainEqual({
      code: 'not-repaired',
      findingId: finding.id,
      isCause: true,
    });
  });
});

describe('the report', () => {
  test('tells what was found, how it was proved and repaired, and what was tested before and after', () => {
    const record = wholeJob();
    record.add('finding', { ...causeFinding, result: 'damaged-not-cause', circuitId: null });
    record.add('close', { outcome: 'proved', reason: '', advice: 'Look at the other side in a year.' });
    const report = customerReport(map, line, record.job, noon);
    expect(report.cause).toMatchObject({
      finding: { damage: 'chafed' },
      proof: { comesAndGoes: true },
      repairs: [{ cures: ['edge-trim'] }],
      lookedAlong: { beside: 'sound' },
    });
    expect(report.otherDamage).toHaveLength(1);
    expect(report.proof[0]).toMatchObject({ repeats: { reading: { ohms: 0.4 } }, done: { good: true } });
    expect(report.panelsRefitted).toEqual(['panel:seat', 'panel:tread']);
    expect(report.close?.advice).toContain('other side');
    expect(report.closedAt).toBe(record.entries.at(-1)?.at);
  });

  test('what was taken back is not told', () => {
    const record = wholeJob();
    const finding = record.entries.find(({ type }) => type === 'finding');
    record.add('take-back', { entryId: finding?.id ?? 'entry:none' });
    expect(customerReport(map, line, record.job, noon).cause).toBeNull();
  });
});

test('the sheet for the bench holds the first openings with their cautions, and says how many it leaves', () => {
  const ranking = rank(map, sample.job);
  if (!ranking.ok) throw new Error(ranking.problem.code);
  const whole = digSheet(map, sample.job, ranking.value, 50);
  const sheet = digSheet(map, sample.job, ranking.value, 1);
  expect(whole.left).toBe(0);
  expect(whole.cautions).toEqual(['airbag']);
  expect(sheet.steps).toHaveLength(1);
  expect(sheet.left).toBe(ranking.value.digPlan.length - 1);
  expect(whole.steps.map(({ runningMinutes }) => runningMinutes)).toEqual(
    ranking.value.digPlan.map(({ runningMinutes }) => runningMinutes),
  );
});

describe('entries of the close in a document', () => {
  test('a whole closed job is a valid document and fits its map', () => {
    const record = wholeJob();
    record.add('agreed', { measure: 'minutes', adds: 60, extension: false, agreedBy: 'Owner', note: '' });
    record.add('time', { clock: 'find', action: 'start' });
    record.add('caution-read', { cautions: ['airbag'] });
    record.add('close', { outcome: 'proved', reason: '', advice: '' });
    expect(jobSchema.safeParse(record.job).error).toBeUndefined();
    expect(jobFaults(map, record.job)).toEqual([]);
  });

  test('a repair of a find that is not there is named', () => {
    const record = new ClosingRecord();
    record.add('repair', {
      findingId: 'entry:gone',
      practices: [],
      joints: 0,
      cures: [],
      makerAllows: 'not-asked',
      photos: [],
      note: '',
    });
    expect(jobFaults(map, record.job)).toMatchObject([{ field: 'findingId', missing: 'entry:gone' }]);
  });

  test('a find on a run the map does not have is named', () => {
    const record = new ClosingRecord();
    record.add('finding', { ...causeFinding, stretches: [{ ...place[0], segmentId: 'segment:gone' }] });
    expect([...faultsOfEntries(map, record.entries).values()]).toMatchObject([
      { field: 'stretches', missing: 'segment:gone' },
    ]);
  });
});
