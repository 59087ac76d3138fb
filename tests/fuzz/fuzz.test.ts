import { expect, onTestFinished, test } from 'vitest';
import { freshFolder } from '#tests/hosts/fresh-folder.ts';
import { contractTarget } from './contract-target.ts';
import { type FuzzTarget, fuzz } from './fuzz-run.ts';
import { readerTargets } from './fuzz-targets.ts';

test('damaged and crafted files and messages are refused with a reason or taken, and nothing else', () => {
  const { target, workshop } = contractTarget(freshFolder());
  onTestFinished(() => workshop.close());
  const report = fuzz([...readerTargets, target], 600, 8);
  expect(report.cases).toBe(600);
  for (const [name, outcomes] of report.outcomes) {
    // Both happen to every reader, or the damage is too light or too heavy to try anything.
    expect([...outcomes.keys()].length, name).toBeGreaterThan(1);
  }
  expect(report.outcomes.get('map document')?.get('taken')).toBeGreaterThan(3);
  expect(report.outcomes.get('bundle, crafted')?.get('bundle-entry')).toBeGreaterThan(10);
});

test('the run itself notices a crash, a hang and a change to what every object inherits', () => {
  const target = (read: FuzzTarget['read']): readonly FuzzTarget[] => [{ name: 'broken', share: 1, read }];
  const crash = target(() => {
    throw new RangeError('too deep');
  });
  expect(() => fuzz(crash, 1, 1)).toThrow(/broken, seed 1000003: RangeError: too deep/);
  const hang = target(() => {
    let sum = 0;
    for (let i = 0; i < 100_000_000; i++) sum += i % 7;
    return String(sum);
  });
  expect(() => fuzz(hang, 1, 1, 10)).toThrow('kept the processor');
  const polluting = target(() => {
    Object.defineProperty(Object.prototype, 'polluted', { value: 1, configurable: true });
    return 'taken';
  });
  try {
    expect(() => fuzz(polluting, 1, 1)).toThrow('every object inherits');
  } finally {
    Reflect.deleteProperty(Object.prototype, 'polluted');
  }
});
