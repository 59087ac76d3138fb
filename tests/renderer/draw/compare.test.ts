import { expect, test } from 'vitest';
import { moveNode } from '#core/map/commands/move-node.ts';
import { compareMaps } from '#core/map/compare-maps.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { applyPatch } from '#core/map/patch.ts';
import { schemaOfKind } from '#core/map/records.ts';
import { compareWords, recordFieldWords } from '#renderer/language/draw-compare.ts';
import { comparisonMarks } from '#renderer/places/draw/compare/comparison-marks.ts';
import { firstFrom, type MapStateLine, notableStates } from '#renderer/places/draw/compare/notable-states.ts';
import { sayState } from '#renderer/places/draw/compare/say-state.ts';
import { spacedLabels } from '#renderer/places/draw/compare/spaced-labels.ts';
import { sample } from '#tests/sample.ts';

const state = (revision: number, changes: Partial<MapStateLine> = {}): MapStateLine => ({
  revision,
  at: `2026-03-${String(1 + Math.floor(revision / 100)).padStart(2, '0')}T10:00:00Z`,
  label: 'edit.moveThings',
  origin: 'user',
  jobs: 0,
  ...changes,
});
/** 300 edits over three days on top of the state the map came in with; newest first. */
const states = [
  ...Array.from({ length: 300 }, (_, i) => state(300 - i, 300 - i === 42 ? { jobs: 2 } : {})),
  state(0, { at: null, label: null, origin: null }),
];

test('of hundreds of states those worth choosing from are listed, and those jobs rest on always', () => {
  const listed = notableStates(states, (at) => at.slice(0, 10));
  expect(listed.length).toBeLessThan(40);
  const revisions = listed.map(({ revision }) => revision);
  expect(revisions).toEqual(expect.arrayContaining([300, 299, 199, 99, 42, 0]));
  expect(revisions).toEqual(revisions.toSorted((a, b) => b - a));
});

test('a comparison begins at the newest job, without one at the first state', () => {
  expect(firstFrom(states)?.revision).toBe(42);
  expect(firstFrom(states.map((each) => ({ ...each, jobs: 0 })))?.revision).toBe(0);
  expect(firstFrom([state(0)])).toBeNull();
});

test('a state is said by its time, its edit and its jobs', () => {
  expect(sayState(state(42, { jobs: 2 }))).toMatch(/^1 Mar.*: moved \(2 jobs\)$/);
  expect(sayState(state(7, { origin: 'undo' }))).toContain('taken back: moved');
  expect(sayState(state(0, { at: null, label: null, origin: null }))).toBe(compareWords.first);
});

test('each kind of difference has a mark of its own shape, and a word', () => {
  const moved = moveNode(sample.map, { nodeId: 'node:far', at: { xMm: 1500, yMm: 90, zMm: 0 } });
  const after = moved.ok ? applyPatch(sample.map, moved.value) : moved;
  if (!after.ok) throw new Error(after.problem.code);
  const far = sample.map.nodes.get('node:far');
  if (!far) throw new Error('the sample has no far node');
  const later: MapDocument = {
    ...after.value,
    rubSpots: new Map(),
    nodes: new Map([
      ...after.value.nodes,
      ['node:new', { ...far, id: 'node:new', at: { xMm: 9, yMm: 9, zMm: 0 } }],
    ]),
    segments: new Map([...after.value.segments, ['segment:middle', { ...sample.middle, covering: 'bare' }]]),
  };
  const marks = comparisonMarks(sample.map, later, compareMaps(sample.map, later));
  expect(marks.labels.map(({ text }) => text).toSorted()).toEqual(['changed', 'gone', 'moved']);
  expect(marks.lines.filter(({ style }) => style === 'measure')).toEqual([
    {
      points: [
        { xMm: 1500, yMm: 0 },
        { xMm: 1500, yMm: 90 },
      ],
      closed: false,
      style: 'measure',
    },
  ]);
  expect(marks.points.some(({ at, style }) => style === 'placed' && at.xMm === 750)).toBe(true);
  expect(marks.points.some(({ at, style }) => style === 'grip' && at.xMm === 9)).toBe(true);
  expect(marks.points.some(({ at, style }) => style === 'snap' && at.xMm === 750)).toBe(true);
});

test('every field of every record that can differ has a word', () => {
  const places = new Set(['id', 'at', 'bends', 'area', 'points', 'origin', 'mmPerPx', 'turnRad', 'vertices']);
  const technical = new Set(['mediaType', 'widthPx', 'heightPx']);
  for (const schema of Object.values(schemaOfKind)) {
    for (const field of Object.keys(schema.shape)) {
      if (places.has(field) || technical.has(field)) continue;
      expect([field, recordFieldWords[field]]).toEqual([field, expect.any(String)]);
    }
  }
});

test('words of marks that would lie over one another give way, and come back closer up', () => {
  const label = (xMm: number, text: string) => ({ at: { xMm, yMm: 0 }, text, unit: '' });
  const labels = [label(0, 'moved'), label(100, 'changed'), label(1_000, 'new')];
  const seen = (pxPerMm: number, widthPx: number) =>
    spacedLabels(labels, { pxPerMm, xPx: 10, yPx: 50 }, { widthPx, heightPx: 100 }).map(({ text }) => text);
  expect(seen(0.2, 2_000)).toEqual(['moved', 'new']);
  expect(seen(1, 2_000)).toEqual(['moved', 'changed', 'new']);
  // Out of view it has no word at all.
  expect(seen(1, 500)).toEqual(['moved', 'changed']);
});
