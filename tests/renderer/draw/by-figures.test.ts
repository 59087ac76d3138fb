import { describe, expect, test } from 'vitest';
import type { MapDocument } from '#core/map/map-document.ts';
import { applyPatch, invertPatch } from '#core/map/patch.ts';
import type { Outline } from '#core/map/records.ts';
import { segmentLine } from '#core/map/segment-line.ts';
import { seededChance } from '#core/quantity/chance.ts';
import {
  type Added,
  addedClip,
  addedNode,
  addedOutline,
  addedPanel,
  addedRubSpot,
  addedRun,
} from '#renderer/places/draw/by-figures/added-things.ts';
import { bodyFrame, placeOf } from '#renderer/places/draw/by-figures/body-frame.ts';
import { sample } from '#tests/sample.ts';

const shell: Outline = {
  id: 'outline:shell',
  name: 'Body shell',
  kind: 'shell',
  closed: true,
  vertices: [
    { xMm: -120, yMm: -800 },
    { xMm: 4_000, yMm: -800 },
    { xMm: 4_000, yMm: 860 },
    { xMm: -120, yMm: 860 },
  ],
  order: 0,
};
const car: MapDocument = {
  ...sample.map,
  outlines: new Map([[shell.id, shell]]),
  details: { ...sample.map.details, centreLineYMm: 30 },
};
const at = (backMm: number, rightMm: number, heightMm = 0) =>
  placeOf(bodyFrame(car), { backMm, rightMm, heightMm });

const madeOn = (map: MapDocument, { patch }: Added): MapDocument => {
  const made = patch.ok ? applyPatch(map, patch.value) : patch;
  if (!made.ok) throw new Error(made.problem.code);
  if (!patch.ok) throw new Error('refused');
  const undone = applyPatch(made.value, invertPatch(patch.value));
  if (!undone.ok) throw new Error('cannot be undone');
  expect(new Map(undone.value.nodes)).toEqual(new Map(map.nodes));
  expect(new Map(undone.value.segments)).toEqual(new Map(map.segments));
  return made.value;
};

describe('measured on the car', () => {
  test('places count from the front of the body shell and from the centre line', () => {
    expect(at(1_000, -640, 90)).toEqual({ xMm: 880, yMm: -610, zMm: 90 });
    expect(bodyFrame(car).byShell).toBe(true);
  });

  test('without a body shell the drawing’s own zero stands for the front', () => {
    expect(bodyFrame(sample.map)).toEqual({ frontXMm: 0, centreYMm: 0, byShell: false });
  });
});

describe('drawn by figures', () => {
  const chance = seededChance(7);

  test('a part stands where it was measured, named by its kind when no name was typed', () => {
    const added = addedNode(car, { kind: 'splice', name: ' ', at: at(2_000, 300, 120) }, chance);
    const node = madeOn(car, added).nodes.get(added.id as `node:${string}`);
    expect(node).toMatchObject({ name: 'Splice 1', at: { xMm: 1_880, yMm: 330, zMm: 120 } });
  });

  test('a plug set into a run splits it there and keeps the circuit whole', () => {
    const place = { segmentId: sample.rear.id, stationMm: 180 };
    const added = addedNode(car, { kind: 'inline-connector', name: 'Mid plug', at: place }, chance);
    const map = madeOn(car, added);
    expect(map.nodes.get(added.id as `node:${string}`)).toMatchObject({
      name: 'Mid plug',
      at: { xMm: 1_180 },
    });
    expect(map.circuits.get(sample.circuit.id)?.path).toHaveLength(4);
  });

  test('a run goes from a part through its bends to a new loose end', () => {
    const added = addedRun(
      car,
      { name: 'Roof', from: 'node:far', to: at(2_620, 170), bends: [at(1_820, -30, 0), at(1_820, 170, 400)] },
      chance,
    );
    const map = madeOn(car, added);
    const run = map.segments.get(added.id as `segment:${string}`);
    expect(run).toMatchObject({ routeName: 'Roof', fromNodeId: 'node:far' });
    expect(run?.bends.map(({ zMm }) => zMm)).toEqual([0, 400]);
    expect(run && segmentLine(map, run)?.lengthMm).toBeGreaterThan(1_000);
  });

  test('a run between two parts that are one place is refused', () => {
    const same = addedRun(car, { name: '', from: 'node:far', to: 'node:far', bends: [] }, chance);
    expect(same.patch.ok).toBe(false);
  });

  test('fixing, panel, rub spot and outline come to be as typed', () => {
    const clip = addedClip(car, { segmentId: sample.rear.id, stationMm: 90, kind: 'tie' }, chance);
    expect(madeOn(car, clip).segments.get(sample.rear.id)?.clips).toMatchObject([
      { stationMm: 90, kind: 'tie' },
    ]);
    const corners = [at(0, 0), at(500, 0), at(500, 300)];
    const input = { kind: 'sill', name: 'Tread', corners, minutesOff: 3, minutesOn: 4 } as const;
    const panel = addedPanel(car, input, chance);
    expect(madeOn(car, panel).panels.get(panel.id as `panel:${string}`)).toMatchObject({
      minutesOff: 3,
      area: [{ xMm: -120, yMm: 30 }, { xMm: 380 }, { yMm: 330 }],
    });
    const spot = addedRubSpot(car, { kind: 'burr', name: '', shape: 'line', places: corners }, chance);
    expect(madeOn(car, spot).rubSpots.get(spot.id as `rub-spot:${string}`)?.points).toHaveLength(3);
    const outline = addedOutline(car, { kind: 'seat', name: '', corners, closed: true }, chance);
    expect(madeOn(car, outline).outlines.get(outline.id as `outline:${string}`)?.name).toBe('Seat 1');
  });

  test('a rub spot line of one place, and a fixing off its run, are refused', () => {
    const spot = addedRubSpot(car, { kind: 'burr', name: '', shape: 'line', places: [at(0, 0)] }, chance);
    expect(spot.patch.ok ? null : spot.patch.problem.code).toBe('too-few-points');
    const clip = addedClip(car, { segmentId: sample.rear.id, stationMm: 900, kind: 'tie' }, chance);
    expect(clip.patch.ok ? null : clip.patch.problem.code).toBe('beyond-end');
  });
});
