import { describe, expect, test } from 'vitest';
import { routeWords } from '#renderer/language/route-choice.ts';
import { runsApart, turnedWay, waySteps } from '#renderer/places/draw/route-choice/way-steps.ts';
import { sample } from '#tests/sample.ts';

const { path } = sample.circuit;

describe('the way a circuit takes', () => {
  test('is told run by run in the circuit’s own direction', () => {
    const there = waySteps(sample.map, path);
    expect(there.map(({ startNodeId }) => startNodeId)).toEqual(['node:west', 'node:middle', 'node:east']);
    const back = waySteps(sample.map, turnedWay(path));
    expect(back.map(({ startNodeId }) => startNodeId)).toEqual(['node:far', 'node:east', 'node:middle']);
    expect(back.map(({ endNodeId }) => endNodeId)).toEqual(['node:east', 'node:middle', 'node:west']);
    expect(there.map(({ lengthMm }) => lengthMm)).toEqual([500, 500, 500]);
  });

  test('turned round twice is as it was', () => {
    expect(turnedWay(turnedWay(path))).toEqual(path);
  });

  test('differs from another by the runs only one of them takes', () => {
    const detour = [...path.slice(0, 1), { segmentId: 'segment:twin', reversed: true } as const];
    expect(runsApart(detour, path).map(({ segmentId }) => segmentId)).toEqual(['segment:twin']);
    expect(runsApart(path, detour).map(({ segmentId }) => segmentId)).toEqual([
      'segment:middle',
      'segment:rear',
    ]);
  });

  test('a run that is gone is no step, and takes no other with it', () => {
    const segments = new Map(sample.map.segments);
    segments.delete('segment:middle');
    expect(waySteps({ ...sample.map, segments }, path)).toHaveLength(2);
  });
});

test('what a bundle’s diameter is worked out from is said with its count', () => {
  expect(routeWords.bundle.workedOut('5.8', 1, 9)).toBe(
    'Worked out from 1 circuit traced through it and 9 more wires taken as usual: 5.8 mm.',
  );
  expect(routeWords.bundle.workedOut('7.0', 12, 0)).toBe(
    'Worked out from 12 circuits traced through it: 7.0 mm.',
  );
});
