import { describe, expect, test } from 'vitest';
import { layStraight } from '#core/circuit/circuit-line.ts';
import type { JobEntry } from '#core/job/job-document.ts';
import { straightPicture, stretchAt } from '#renderer/straight/straight-picture.ts';
import { sample } from '#tests/sample.ts';

const at = '2026-01-05T10:00:00Z';
const off = (panelId: `panel:${string}`): JobEntry => ({ id: 'entry:off', at, type: 'panel-off', panelId });

describe('the loom laid straight', () => {
  const picture = straightPicture(sample.map, sample.line, []);

  test('ends, plugs and branches stand in order at their distance from the first end', () => {
    expect(picture.nodes.map((node) => [node.name, node.stationMm])).toEqual([
      ['Door module', 0],
      ['Sill plug', 500],
      ['Seat corner', 1000],
      ['Seat switch', 1500],
    ]);
  });

  test('fixings and rub spots lie where they lie on the loom', () => {
    expect(picture.clips.map((clip) => clip.stationMm)).toEqual([100, 400]);
    expect(picture.rubSpots.map((spot) => [spot.name, spot.stationMm])).toEqual([['Seat rail edge', 750]]);
  });

  test('a panel over two runs is one band, and bands that overlap lie on lanes of their own', () => {
    expect(picture.bands.map(({ name, fromMm, toMm, lane }) => [name, fromMm, toMm, lane])).toEqual([
      ['Tread plate', 0, 1000, 0],
      ['Front seat', 600, 1000, 1],
    ]);
    expect(picture.laneCount).toBe(2);
  });

  test('a panel that is off shows as off', () => {
    const { bands } = straightPicture(sample.map, sample.line, [off('panel:tread')]);
    expect(bands.map((band) => band.off)).toEqual([true, false]);
  });

  test('what was seen lies at circuit distances, also on a run that is traced backwards', () => {
    const look: JobEntry = {
      id: 'entry:look',
      at,
      type: 'inspection',
      stretches: [{ segmentId: 'segment:middle', fromMm: 100, toMm: 200 }],
      result: 'seen-sound',
      lookQuality: 0.95,
      note: '',
    };
    expect(straightPicture(sample.map, sample.line, [look]).seen).toEqual([
      { fromMm: 600, toMm: 700, result: 'seen-sound' },
    ]);
    const backwards = layStraight(sample.map, {
      ...sample.circuit,
      path: [...sample.circuit.path].reverse().map((step) => ({ ...step, reversed: true })),
      ends: [sample.circuit.ends[1], sample.circuit.ends[0]],
    });
    if (!backwards.ok) throw new Error('the reversed circuit lies straight');
    expect(straightPicture(sample.map, backwards.value, [look]).seen).toEqual([
      { fromMm: 800, toMm: 900, result: 'seen-sound' },
    ]);
  });

  test('pointing between two stretches picks the one that begins there', () => {
    const stretches = [
      { segmentId: 'segment:front' as const, fromMm: 0, toMm: 500, probability: 0.4 },
      { segmentId: 'segment:middle' as const, fromMm: 500, toMm: 1000, probability: 0.6 },
    ];
    expect(stretchAt(stretches, 500)?.segmentId).toBe('segment:middle');
    expect(stretchAt(stretches, 1001)).toBeNull();
    expect(stretchAt(stretches, -1)).toBeNull();
  });
});
