import { describe, expect, it } from 'vitest';
import { rank } from '#core/job/rank.ts';
import { documentText } from '#core/map/document-text.ts';
import { sampleJob, sampleMap, sampleNames, sampleText } from './read-sample.ts';

/** Every id an entry speaks of, however deep. */
const idsIn = (value: unknown): string[] => {
  if (typeof value === 'string') return /^(node|segment|panel|circuit):/.test(value) ? [value] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(idsIn);
};

describe.each(sampleNames)('the sample job %s', (name) => {
  const map = sampleMap(name);
  const job = sampleJob(name);

  it('is written as the program would write it', () => {
    expect(documentText(job)).toBe(sampleText(name, 'job'));
  });

  it('is open on the sample map as it stands, for a circuit that is on it', () => {
    expect(job.mapId).toBe(map.id);
    expect(job.mapRevision).toBe(map.revision);
    expect(map.circuits.has(job.circuitId ?? 'circuit:none')).toBe(true);
  });

  it('speaks only of things on the map', () => {
    const known = new Set<string>([
      ...map.nodes.keys(),
      ...map.segments.keys(),
      ...map.panels.keys(),
      ...map.circuits.keys(),
    ]);
    const { circuitId, alsoFailingCircuitIds, workingCircuitIds, entries } = job;
    const named = idsIn([circuitId, alsoFailingCircuitIds, workingCircuitIds, entries]);
    expect(named.filter((id) => !known.has(id))).toEqual([]);
  });

  it('has its entries in the order of the clock, each with its own id', () => {
    const times = job.entries.map((entry) => Date.parse(entry.at));
    expect(times).toEqual([...times].sort((a, b) => a - b));
    expect(Math.min(...times)).toBeGreaterThanOrEqual(Date.parse(job.openedAt));
    expect(new Set(job.entries.map((entry) => entry.id)).size).toBe(job.entries.length);
  });

  it('takes panels off only after those that must be off before them', () => {
    const off = new Set<string>();
    for (const entry of job.entries) {
      if (entry.type === 'panel-on') off.delete(entry.panelId);
      if (entry.type !== 'panel-off') continue;
      const waiting = map.panels.get(entry.panelId)?.offFirst.filter((panel) => !off.has(panel));
      expect(waiting).toEqual([]);
      off.add(entry.panelId);
    }
  });

  it('ranks: every place, component and nothing-of-these together make one', () => {
    const ranked = rank(map, job);
    expect(ranked.ok).toBe(true);
    if (!ranked.ok) return;
    const { stretches, components, noneOfThese, classes } = ranked.value.posterior;
    const parts = [...stretches, ...components].reduce((sum, part) => sum + part.probability, noneOfThese);
    expect(parts).toBeCloseTo(1, 9);
    expect(Object.values(classes).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    expect(ranked.value.digPlan.length).toBeGreaterThan(0);
    const ignored = ranked.value.warnings.filter((warning) => warning.code === 'entry-ignored');
    expect(ignored).toEqual([]);
  });

  it('stands where the find is still to be made', () => {
    const found = job.entries.filter((entry) => entry.type === 'inspection' && entry.result === 'found');
    expect(found).toEqual([]);
    expect(job.entries.some((entry) => entry.type === 'reading')).toBe(true);
  });
});
