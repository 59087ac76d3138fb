import type { MapDocument } from '../map/map-document.ts';
import type { Segment } from '../map/records.ts';
import { samePlaceMm } from '../quantity/tolerance.ts';
import {
  advisedBendMm,
  aircraftGuidance,
  type GuidanceCode,
  type GuidanceFlag,
} from './aircraft-guidance.ts';
import { gatheredBends } from './bends-of-run.ts';
import { defaultAssumptions } from './chafe-assumptions.ts';
import { endFlags, spliceFlags } from './guidance-at-ends.ts';
import { spotFlags } from './guidance-at-spots.ts';
import { type RunContext, runContext } from './run-context.ts';
import { runSurroundings } from './run-surroundings.ts';

/**
 * Where a run lies outside published aircraft guidance, as facts; empty for one half drawn. What each rests on is in
 * `guidanceSources`. A raw edge stands for a hole without its grommet.
 * @example
 * guidanceFlags(sample.map, sample.middle).map((flag) => flag.code) // => ['long-span', 'deep-bow', 'narrow-hole']
 */
export function guidanceFlags(map: MapDocument, segment: Segment): readonly GuidanceFlag[] {
  const around = runSurroundings(map, segment, defaultAssumptions);
  if (!around) return [];
  const run = runContext(segment, around, defaultAssumptions);
  return [
    ...spanFlags(run),
    ...bendFlags(run),
    ...holdFlags(run),
    ...spotFlags(run),
    ...endFlags(run),
    ...spliceFlags(map, segment, around),
  ];
}

function spanFlags({ segment, spans, lengthMm }: RunContext): readonly GuidanceFlag[] {
  const flags: GuidanceFlag[] = [];
  const { spanMm, bowMm, untiedMm } = aircraftGuidance;
  for (const { fromMm, toMm, drive } of spans) {
    const atMm = (Math.max(0, fromMm) + Math.min(lengthMm, toMm)) / 2;
    const flag = (code: GuidanceCode, mm: number, advisedMm: number) =>
      flags.push({ code, thing: segment.id, atMm, mm, advisedMm });
    if (drive.spanMm > spanMm + samePlaceMm) flag('long-span', drive.spanMm, spanMm);
    if (drive.hangMm > bowMm) flag('deep-bow', drive.hangMm, bowMm);
    if (segment.covering === 'bare' && drive.spanMm > untiedMm + samePlaceMm) {
      flag('untied-span', drive.spanMm, untiedMm);
    }
  }
  return flags;
}

/** The chords of one round bend are one bend; its tightest place counts. */
function bendFlags({ segment, tightBends, through }: RunContext): readonly GuidanceFlag[] {
  const { diameterMm } = through.bundle;
  return gatheredBends(tightBends).flatMap(({ fromMm, toMm, radiusMm }) => {
    // A clip within two loom diameters supports the bend.
    const supported = segment.clips.some(
      ({ missing, stationMm }) =>
        !missing && stationMm >= fromMm - 2 * diameterMm && stationMm <= toMm + 2 * diameterMm,
    );
    const advisedMm = advisedBendMm(diameterMm, supported);
    if (radiusMm >= advisedMm) return [];
    const atMm = (fromMm + toMm) / 2;
    return [{ code: 'tight-bend' as const, thing: segment.id, atMm, mm: radiusMm, advisedMm }];
  });
}

/** What holds the run, and whether people step on it. */
function holdFlags({ segment }: RunContext): readonly GuidanceFlag[] {
  const whole = { thing: segment.id, atMm: null, mm: null, advisedMm: null };
  const holding = segment.clips.filter(({ missing }) => !missing);
  const tied = holding.length > 0 && holding.every(({ kind }) => kind === 'tape' || kind === 'tie');
  return [
    ...(tied ? [{ code: 'tied-only' as const, ...whole }] : []),
    ...(segment.traits.includes('under-feet') ? [{ code: 'underfoot' as const, ...whole }] : []),
  ];
}
