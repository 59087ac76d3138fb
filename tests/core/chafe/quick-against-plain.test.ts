import { describe, expect, test } from 'vitest';
import { bareBody } from '#core/chafe/bare-body.ts';
import { defaultAssumptions } from '#core/chafe/chafe-assumptions.ts';
import { listedCauses } from '#core/chafe/hazard-sums.ts';
import type { MechanismHazard } from '#core/chafe/mechanism-hazard.ts';
import { rubSpots } from '#core/chafe/rub-spots.ts';
import { type RunContext, runContext } from '#core/chafe/run-context.ts';
import { runSurroundings } from '#core/chafe/run-surroundings.ts';
import { hazardAmid, segmentHazard, wholeHazard } from '#core/chafe/segment-hazard.ts';
import { addSpread, cellBell } from '#core/chafe/smooth-cells.ts';
import { drawnAssumptions } from '#core/chafe/uncertain-constants.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { clip, onlyRun, spot, straightMap } from './chafe-map.ts';
import { plainBodyRubbing, plainSpotRubbing } from './plain-hazard.ts';

const { baseRates, edgeSeverity, severityFactor, surfaceSeverity } = defaultAssumptions;
const perWork = baseRates.vibration * 3600;
/** A run's quick figures may differ from the plain ones by this share of the whole run. */
const most = 1e-6;

function contextsOf(map: MapDocument): readonly RunContext[] {
  return [...map.segments.values()].flatMap((segment) => {
    const around = runSurroundings(map, segment, defaultAssumptions);
    return around ? [runContext(segment, around, defaultAssumptions)] : [];
  });
}

function cellsOf({ cellCount }: RunContext, causes: readonly MechanismHazard[]): Float64Array {
  const cells = new Float64Array(cellCount);
  for (const { firstCell, perMm } of causes) {
    for (let i = 0; i < perMm.length; i++) {
      cells[firstCell + i] = (cells[firstCell + i] as number) + (perMm[i] as number);
    }
  }
  return cells;
}

const sum = (cells: ArrayLike<number>) => Array.from(cells).reduce((all, each) => all + each, 0);

/** The largest difference in any cell, as a share of a run's whole hazard. */
function expectAlike(quick: Float64Array, plain: Float64Array, whole: number): void {
  let worst = Math.abs(sum(quick) - sum(plain));
  quick.forEach((density, cell) => {
    worst = Math.max(worst, Math.abs(density - (plain[cell] as number)));
  });
  expect(worst).toBeLessThan(most * whole);
}

describe('the hazard against the same pieces worked out one by one, without tables or short cuts', () => {
  const maps = Array.from({ length: 4 }, (_, i) => randomMap(302 + i, { rubSpots: 10 }));
  const pressed = straightMap(
    700,
    { clips: [clip('a', 220), clip('b', 483.3)], traits: ['drawn-tight'], measuredLengthMm: 708 },
    [spot('under', 300, 6, { side: 'below', clearanceMm: 3 }), spot('on', 500, 0)],
  );

  test('every run rubs on the body alike, to a millionth', () => {
    let runs = 0;
    for (const run of [...maps, pressed].flatMap(contextsOf)) {
      const quick = cellsOf(run, listedCauses(run, [bareBody]));
      const plain = plainBodyRubbing(run).map((work) => work * perWork * surfaceSeverity.body);
      expectAlike(quick, plain, sum(plain));
      runs++;
    }
    expect(runs).toBeGreaterThan(40);
  });

  test('every run rubs on every spot alike, to a millionth of the run', () => {
    let meetings = 0;
    for (const run of [...maps, pressed].flatMap(contextsOf)) {
      const whole = sum(hazardAmid(run.segment, run.around, defaultAssumptions).perMm);
      const rubbed = listedCauses(run, [rubSpots]).filter(({ cause }) => cause === 'rub-spot');
      run.around.near.forEach((near, i) => {
        const { spot: met } = near;
        // Those that move do more than rub.
        if (met.kind === 'moving-part' || met.kind === 'hinge') return;
        const plain = plainSpotRubbing(run, near, run.around.nearestMm[i] as number);
        const causes = rubbed.filter(({ thing }) => thing === met.id);
        if (!plain) {
          expect(causes).toEqual([]);
          return;
        }
        const factor = perWork * edgeSeverity[met.kind] * severityFactor[met.severity];
        expectAlike(
          cellsOf(run, causes),
          plain.map((work) => work * factor),
          whole,
        );
        meetings++;
      });
    }
    expect(meetings).toBeGreaterThan(60);
  });
});

describe('the causes of a run, worked out when asked for', () => {
  test('add up to its hazard in every cell, those at drawn places being spread', () => {
    for (let seed = 1; seed <= 8; seed++) {
      const map = randomMap(seed, { rubSpots: 8 });
      for (const run of contextsOf(map)) {
        const hazard = hazardAmid(run.segment, run.around, defaultAssumptions);
        const cells = cellsOf(
          run,
          hazard.causes.filter(({ placed }) => !placed),
        );
        const atPlaces = cellsOf(
          run,
          hazard.causes.filter(({ placed }) => placed),
        );
        addSpread(cells, atPlaces, cellBell(run.cellMm, defaultAssumptions.placeSigmaMm));
        let worst = 0;
        cells.forEach((density, cell) => {
          worst = Math.max(worst, Math.abs(density / (hazard.perMm[cell] as number) - 1));
        });
        expect(worst).toBeLessThan(1e-12);
        expect(hazard.causes.every(({ perMm }) => sum(perMm) > 0)).toBe(true);
      }
    }
  });

  test('are those of their own run and constants, whatever was worked out since', () => {
    const map = randomMap(12, { rubSpots: 8 });
    const other = drawnAssumptions(seededChance(5));
    for (const segment of map.segments.values()) {
      const [usual, drawn] = [segmentHazard(map, segment), segmentHazard(map, segment, other)];
      if (!usual || !drawn) continue;
      for (const hazard of [usual, drawn]) {
        const mass = hazard.causes.reduce((all, { perMm }) => all + sum(perMm) * hazard.cellMm, 0);
        expect(Math.abs(mass / wholeHazard(hazard) - 1)).toBeLessThan(1e-9);
      }
    }
  });

  test('stay the same when a run is asked to look farther for a spot, and nearer again', () => {
    const spots = [spot('edge', 300, 30), spot('far', 500, 60, { kind: 'burr' })];
    const wild = { ...defaultAssumptions, clearanceSigmaMm: 20, planClearanceSigmaMm: 30 };
    const map = straightMap(600, { clips: [clip('a', 250)] }, spots);
    const first = [...(segmentHazard(map, onlyRun(map))?.perMm ?? [])];
    segmentHazard(map, onlyRun(map), wild);
    const again = [...(segmentHazard(map, onlyRun(map))?.perMm ?? [])];
    expect(first.length).toBe(60);
    expect(again).toEqual(first);
  });
});
