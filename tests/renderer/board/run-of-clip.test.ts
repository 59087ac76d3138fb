import { expect, test } from 'vitest';
import type { MapDocument } from '#core/map/map-document.ts';
import { runOfClip } from '#renderer/board/run-of-clip.ts';
import { randomMap } from '#tests/generated/random-map.ts';

const map = randomMap(41, { runs: 30 });
const held = [...map.segments.values()].filter(({ clips }) => clips.length > 0);

test('every fixing is found on its run', () => {
  expect(held.length).toBeGreaterThan(2);
  for (const run of held) for (const { id } of run.clips) expect(runOfClip(map, id)).toBe(run);
});

test('a fixing that got to another run is found there, and one that is gone nowhere', () => {
  const [from, to] = held;
  const clip = from?.clips[0];
  if (!from || !to || !clip) throw new Error('a map without fixings');
  expect(runOfClip(map, clip.id)).toBe(from);
  const without = { ...from, clips: from.clips.filter(({ id }) => id !== clip.id) };
  const gone: MapDocument = { ...map, segments: new Map(map.segments).set(from.id, without) };
  expect(runOfClip(gone, clip.id)).toBeNull();
  const taken = { ...to, clips: [...to.clips, clip] };
  expect(runOfClip({ ...gone, segments: new Map(gone.segments).set(to.id, taken) }, clip.id)).toBe(taken);
});
