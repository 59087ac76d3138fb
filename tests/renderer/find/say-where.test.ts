import { describe, expect, test } from 'vitest';
import { sayDistance, sayStretch } from '#renderer/language/say-length.ts';
import { saySide } from '#renderer/language/say-side.ts';
import { sayWhere, whereLine } from '#renderer/language/say-where.ts';
import { distanceBounds, pieceAtDistance } from '#renderer/places/find/exact-place.ts';
import { sample } from '#tests/sample.ts';

const line = (fromMm: number, toMm: number, lengths: 'metric' | 'imperial' = 'metric'): string =>
  whereLine(sayWhere(sample.map, sample.line, fromMm, toMm, lengths));

describe('where a stretch lies, for a hand with a tape', () => {
  test('is measured from the nearest plug, with the way to go', () => {
    expect(line(600, 1000)).toBe('0.10 to 0.50 m from Sill plug, towards Seat switch');
    expect(line(300, 420)).toBe('0.08 to 0.20 m from Sill plug, towards Door module');
  });

  test('an end of the circuit has only one way to go', () => {
    expect(line(0, 200)).toBe('0.00 to 0.20 m from Door module');
  });

  test('a stretch across a plug is given on both sides of it, and the plug alone by its name', () => {
    expect(line(300, 900)).toBe('0.20 m before to 0.40 m past Sill plug, seen from Door module');
    expect(line(485, 515)).toBe('at Sill plug');
  });

  test('a point is one distance, and inches serve those who measure in them', () => {
    expect(line(750, 750)).toBe('0.25 m from Sill plug, towards Seat switch');
    expect(line(600, 1000, 'imperial')).toBe('3.9 to 19.7 in from Sill plug, towards Seat switch');
  });

  test('both ends of a stretch carry the same unit', () => {
    expect(sayStretch(254, 3048, 'imperial')).toEqual({ near: '10.0', far: '120.0', unit: 'in' });
    expect(sayDistance(254, 'imperial')).toEqual({ value: '10.0', unit: 'in' });
    expect(sayDistance(1310, 'metric')).toEqual({ value: '1.31', unit: 'm' });
  });
});

describe('sides of the car', () => {
  test('the near side is the kerb side: left where the driver sits on the right', () => {
    expect(saySide('Left front seat', 'right', 'near-off')).toBe('Near side front seat');
    expect(saySide('Right front seat', 'right', 'near-off')).toBe('Off side front seat');
    expect(saySide('Left front seat', 'left', 'near-off')).toBe('Off side front seat');
    expect(saySide('Tailgate hinge, left', 'right', 'near-off')).toBe('Tailgate hinge, near side');
  });

  test('names without a side, and the left-right setting, stay as they are', () => {
    expect(saySide('Bright trim, leftover', 'right', 'near-off')).toBe('Bright trim, leftover');
    expect(saySide('Left front seat', 'right', 'left-right')).toBe('Left front seat');
  });
});

describe('a find narrowed with a tape', () => {
  const opening = { fromMm: 600, toMm: 1000 };

  test('is measured from the same plug as the opening, and only within it', () => {
    const bounds = distanceBounds(sample.map, sample.line, opening);
    expect(bounds).toEqual({ nodeId: 'node:middle', leastMm: 100, mostMm: 500 });
    expect(pieceAtDistance(sample.map, sample.line, opening, 250)).toEqual({ fromMm: 740, toMm: 760 });
    expect(pieceAtDistance(sample.map, sample.line, opening, 9000)).toEqual({ fromMm: 980, toMm: 1000 });
  });

  test('counts towards the first end where the opening lies that way, and to both sides across a plug', () => {
    const before = { fromMm: 300, toMm: 420 };
    expect(pieceAtDistance(sample.map, sample.line, before, 100)).toEqual({ fromMm: 390, toMm: 410 });
    const across = { fromMm: 300, toMm: 900 };
    expect(distanceBounds(sample.map, sample.line, across).leastMm).toBe(-200);
    expect(pieceAtDistance(sample.map, sample.line, across, -100)).toEqual({ fromMm: 390, toMm: 410 });
    expect(pieceAtDistance(sample.map, sample.line, across, 100)).toEqual({ fromMm: 590, toMm: 610 });
  });
});
