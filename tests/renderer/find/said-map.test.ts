import { expect, test } from 'vitest';
import { saySide } from '#renderer/language/say-side.ts';
import { saidMap } from '#renderer/places/find/said-map.ts';
import { sample } from '#tests/sample.ts';

const map = {
  ...sample.map,
  panels: new Map(
    [...sample.map.panels].map(([id, panel]) => [id, { ...panel, name: `Left ${panel.name}` }]),
  ),
};

test('a drawing says sides as the user does, and the map itself keeps left and right', () => {
  const said = saidMap(map, (name) => saySide(name, 'right', 'near-off'));
  expect(said.panels.get('panel:seat')?.name).toBe('Near side Front seat');
  expect(map.panels.get('panel:seat')?.name).toBe('Left Front seat');
});

test('names without a side leave their records as they are', () => {
  const said = saidMap(map, (name) => saySide(name, 'right', 'near-off'));
  expect(said.nodes).toBe(map.nodes);
  expect(said.rubSpots).toBe(map.rubSpots);
});
