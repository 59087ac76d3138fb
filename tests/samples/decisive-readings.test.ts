import { describe, expect, it } from 'vitest';
import type { Job } from '#core/job/job-document.ts';
import { rank } from '#core/job/rank.ts';
import type { Ranking } from '#core/job/ranking.ts';
import { sampleJob, sampleMap } from './read-sample.ts';

/**
 * The three invented demo jobs whose readings are told in full, each with its true place in mm from the
 * circuit's first end.
 */
const demos = [
  { name: 'orlune-pivet', trueMm: 3900, decisive: ['the drop with the lamp at the fuse', ['entry:09']] },
  {
    name: 'varnholt-aldine',
    trueMm: 3300,
    decisive: ['the pair of ohms from both ends', ['entry:08', 'entry:09']],
  },
  { name: 'brannock-scarp', trueMm: 4600, decisive: ['the drop with the lamp at the fuse', ['entry:08']] },
  { name: 'brannock-scarp', trueMm: 4600, decisive: ['the move test with the axle raised', ['entry:05']] },
] as const;

const ranked = (name: string, job: Job): Ranking => {
  const answer = rank(sampleMap(name), job);
  if (!answer.ok) throw new Error(answer.problem.code);
  return answer.value;
};

const holdingStep = ({ digPlan }: Ranking, trueMm: number) =>
  digPlan.find(({ look }) => look.parts.some(({ fromMm, toMm }) => fromMm <= trueMm && trueMm <= toMm));

/** Chance that the fault lies in view of the opening that shows the true place. */
const chanceThere = (ranking: Ranking, trueMm: number): number => {
  const place = ranking.posterior.stretches.find(({ fromMm, toMm }) => fromMm <= trueMm && trueMm < toMm);
  return place?.probability ?? 0;
};

describe.each(demos)('the demo job on $name', ({ name, trueMm, decisive }) => {
  const [words, ids] = decisive;
  const job = sampleJob(name);
  const whole = ranked(name, job);
  const poorer = ranked(name, {
    ...job,
    entries: job.entries.filter(({ id }) => !(ids as readonly string[]).includes(id)),
  });

  it('is solved with all its readings: the true place lies in the first opening', () => {
    expect(holdingStep(whole, trueMm)?.rank).toBe(1);
    expect(whole.digPlan[0]?.probability).toBeGreaterThan(0.5);
  });

  it(`without ${words} is honestly less sure of that place`, () => {
    expect(chanceThere(poorer, trueMm)).toBeLessThan(chanceThere(whole, trueMm));
  });

  it(`without ${words} leaves more of the wire open`, () => {
    expect(poorer.posterior.credible80Mm).toBeGreaterThan(whole.posterior.credible80Mm);
  });

  it('uses every reading, and none contradicts another', () => {
    expect(whole.readings.filter(({ unused }) => unused !== null)).toEqual([]);
    expect(whole.contradictions).toEqual([]);
    const entries = job.entries.filter(({ type }) => type === 'reading').map(({ id }) => id);
    expect(whole.readings.map(({ entryId }) => entryId)).toEqual(entries);
  });
});
