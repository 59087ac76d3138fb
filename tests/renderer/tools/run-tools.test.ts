import { expect, test } from 'vitest';
import { clipTool } from '#renderer/tools/clip/clip-tool.ts';
import { nodeTool } from '#renderer/tools/node/node-tool.ts';
import { traceTool } from '#renderer/tools/trace/trace-tool.ts';
import { sample } from '#tests/sample.ts';
import { toolInHand } from '../tool-view.ts';

test('a fixing lands on the run at the place that was pressed', () => {
  const hand = toolInHand(clipTool, sample.map, { clipKind: 'tie' });
  hand.press(1200, 5);
  const clips = hand.map.segments.get('segment:rear')?.clips ?? [];
  expect(clips).toHaveLength(1);
  expect(clips[0]).toMatchObject({ stationMm: 200, kind: 'tie', missing: false });
  expect(hand.selection).toEqual([clips[0]?.id]);
});

test('pressing beside every run sets no fixing', () => {
  const hand = toolInHand(clipTool, sample.map);
  hand.press(1200, 60);
  expect(hand.map).toBe(sample.map);
});

test('a plug set into a run splits it and the circuit runs on through it', () => {
  const hand = toolInHand(nodeTool, sample.map);
  hand.press(1200, 0);
  const plug = [...hand.map.nodes.values()].find((node) => !sample.map.nodes.has(node.id));
  expect(plug).toMatchObject({ kind: 'inline-connector', at: { xMm: 1200, yMm: 0 } });
  expect(hand.map.circuits.get('circuit:seat-switch')?.path).toHaveLength(4);
});

test('a splice pressed onto a branch makes the branch one', () => {
  const hand = toolInHand(nodeTool, sample.map, { nodeKind: 'splice' });
  hand.press(1000, 0);
  expect(hand.map.nodes.get('node:east')?.kind).toBe('splice');
  expect(hand.map.nodes.get('node:east')?.name).toBe('Seat corner');
  expect(hand.map.nodes.size).toBe(sample.map.nodes.size);
});

test('a circuit traced between two parts takes the shortest way and knows its ends', () => {
  const hand = toolInHand(traceTool, sample.map);
  hand.press(0, 0);
  hand.move(1500, 0);
  expect(hand.overlay.labels[0]?.text).toBe('1500');
  hand.press(1500, 0);
  const circuit = [...hand.map.circuits.values()].find((each) => !sample.map.circuits.has(each.id));
  expect(circuit?.path.map((step) => step.segmentId)).toEqual([
    'segment:front',
    'segment:middle',
    'segment:rear',
  ]);
  expect(circuit?.ends.map((end) => end.kind)).toEqual(['module-input-pull-up', 'switch-to-ground']);
});

test('a circuit to a part that no run reaches is refused with the two places named', () => {
  const lone = { ...sample.map.nodes.get('node:far'), id: 'node:lone', at: { xMm: 0, yMm: 900, zMm: 0 } };
  const map = { ...sample.map, nodes: new Map([...sample.map.nodes, ['node:lone', lone]]) };
  const hand = toolInHand(traceTool, map as typeof sample.map);
  hand.press(0, 0);
  hand.press(0, 900);
  expect(hand.refused).toEqual({
    code: 'no-path',
    fromNode: 'node:west',
    toNode: 'node:lone',
  });
});
