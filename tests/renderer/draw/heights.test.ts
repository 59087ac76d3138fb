import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { setHeights } from '#core/map/commands/set-heights.ts';
import { applyPatch } from '#core/map/patch.ts';
import type { Segment } from '#core/map/records.ts';
import { profileFrame } from '#renderer/places/draw/heights/profile-frame.ts';
import { runProfile } from '#renderer/places/draw/heights/run-profile.ts';
import { sample } from '#tests/sample.ts';

const bent = (smooth: boolean): Segment => ({
  ...sample.middle,
  smooth,
  bends: [
    { xMm: 600, yMm: 80, zMm: 40 },
    { xMm: 800, yMm: 80, zMm: 250 },
    { xMm: 900, yMm: 20, zMm: 250 },
  ],
});
const withRun = (run: Segment) => ({
  ...sample.map,
  segments: new Map(sample.map.segments).set(run.id, run),
});

describe('a run from the side', () => {
  test.each([false, true])('shows its ends and bends in order along it, rounded or not (%s)', (smooth) => {
    const run = bent(smooth);
    const profile = runProfile(withRun(run), run);
    if (!profile) throw new Error('no profile');
    expect(profile.points.map(({ zMm }) => zMm)).toEqual([0, 40, 250, 250, 0]);
    const stations = profile.points.map(({ stationMm }) => stationMm);
    expect(stations).toEqual([...stations].sort((a, b) => a - b));
    expect(new Set(stations).size).toBe(5);
    expect(stations.at(-1)).toBe(profile.line.lengthMm);
  });

  test('a half drawn run has none', () => {
    const run: Segment = { ...sample.middle, toNodeId: 'node:gone' };
    expect(runProfile(withRun(run), run)).toBeNull();
  });

  test('raising a bend makes the run longer, and its point stands at the new height', () => {
    const run = bent(false);
    const map = withRun(run);
    const patch = setHeights(map, { segmentId: run.id, heights: [{ at: { bend: 0 }, zMm: 640 }] });
    const raised = patch.ok ? applyPatch(map, patch.value) : patch;
    if (!raised.ok) throw new Error(raised.problem.code);
    const after = runProfile(raised.value, raised.value.segments.get(run.id) as Segment);
    expect(after?.points[1]?.zMm).toBe(640);
    expect(after?.line.lengthMm).toBeGreaterThan(runProfile(map, run)?.line.lengthMm ?? 0);
  });
});

test('every height falls inside the picture, and higher is higher up', () => {
  const height = fc.integer({ min: -800, max: 2_200 });
  fc.assert(
    fc.property(height, height, fc.integer({ min: 200, max: 900 }), (one, other, widthPx) => {
      const bends = [
        { xMm: 600, yMm: 0, zMm: one },
        { xMm: 800, yMm: 0, zMm: other },
      ];
      const run: Segment = { ...sample.middle, bends };
      const profile = runProfile(withRun(run), run);
      if (!profile) throw new Error('no profile');
      const frame = profileFrame(profile, { widthPx, heightPx: 150, leftPx: 46 });
      for (const { zMm, stationMm } of profile.points) {
        expect(frame.yOf(zMm)).toBeGreaterThanOrEqual(0);
        expect(frame.yOf(zMm)).toBeLessThanOrEqual(150);
        expect(frame.xOf(stationMm)).toBeGreaterThanOrEqual(46);
        expect(frame.xOf(stationMm)).toBeLessThanOrEqual(widthPx);
      }
      if (one > other) expect(frame.yOf(one)).toBeLessThan(frame.yOf(other));
      expect(frame.yOf(0) - frame.yOf(frame.mmPerPx)).toBeCloseTo(1, 9);
      expect(frame.ticksMm.length).toBeGreaterThan(0);
      expect(frame.ticksMm.length).toBeLessThanOrEqual(6);
    }),
    { seed: 8 },
  );
});
