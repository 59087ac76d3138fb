import { type FaultClass, faultClasses } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { CircuitId, NodeId } from '../quantity/id.ts';
import { logSumExp } from '../quantity/sums.ts';
import { besideStations } from './beside.ts';
import { capacitanceLogLikelihood, shortedCapacitanceNats } from './capacitance-likelihood.ts';
import { type CircuitLine, layStraight } from './circuit-line.ts';
import { type StandingWire, type SupplyFigures, standingWire, typicalSupply } from './circuit-network.ts';
import { classScores } from './class-scores.ts';
import { type ComponentScore, componentScores } from './component-scores.ts';
import { type EndFigures, typicalEnd } from './end-links.ts';
import { isSeriesClass } from './fault-response.ts';
import { honestFloorMm, pluglessFloorMm, widened } from './honest-width.ts';
import { connectAll, type SharedSetting, soundScore } from './joined-readings.ts';
import { leadNodeIds, type ReadingWires } from './metered-circuit.ts';
import { drawSharedErrors, type SharedErrors, undrawnErrors, usualErrors } from './shared-errors.ts';
import type { StrengthMarginal } from './strength-marginal.ts';
import { unexplainedNats, unexplainedScore } from './unexplained.ts';
import { type ReadingNote, type TakenReading, usableReadings } from './usable-readings.ts';
import {
  type LadderPlaces,
  layLadder,
  placesOnLadder,
  stretchedLadder,
  type WireKnowledge,
} from './wire-ladder.ts';

/** What is asked of the readings, and what else is known. */
export interface LikelihoodOptions {
  /** Circuit stations wanted, rising, in mm. */
  readonly stationsMm: Float64Array;
  readonly knowledge?: WireKnowledge | undefined;
  readonly ends?: readonly [Partial<EndFigures>, Partial<EndFigures>] | undefined;
  readonly supply?: Partial<SupplyFigures> | undefined;
  /** Draws of the shared errors; 0 takes their usual values as if known. 64 when absent. */
  readonly draws?: number | undefined;
  readonly seed?: number | undefined;
  /**
   * Without draws: widens each figure by what the shared errors may do to it and holds shorts to the
   * 0.06 m floor, so that a quick answer is rather too wide than too sharp.
   */
  readonly cautious?: boolean | undefined;
  /** The circuit that may be touched, where the readings passed are only some and may not name it. */
  readonly otherCircuitId?: CircuitId | null | undefined;
}

/** What the electrical readings say together. All are natural logs with one common constant. */
export interface ReadingsLikelihood {
  /** Per station, the fault's strength and the shared errors integrated out; minus infinity where the class cannot be. */
  readonly byClass: Readonly<Record<FaultClass, Float64Array>>;
  readonly components: readonly ComponentScore[];
  /** The wire and both end parts are sound. */
  readonly noFault: number;
  /** Nothing in the list: each reading misses by as much as an unforeseen thing would make it. */
  readonly noneOfThese: number;
  /** Best sum of reading scores any class reaches anywhere (0 is perfect), to tell a contradiction. */
  readonly bestFit: number;
  /** Readings that count. */
  readonly used: number;
  readonly notes: readonly ReadingNote[];
}

/** Distance between stations at which the readings are worked out; finer stations are read off between. */
const workingStepMm = 15;
const fewestStations = 40;
const mostStations = 800;
/** The same where every station is worked out once for each draw. */
const mostStationsDrawn = 400;

/** Draws that decide whether a class is worth the rest. */
const earlyDraws = 8;

/** Draws of the shared errors on which parts are judged. */
const componentDraws = 16;

/** A class this far behind the best fit is not refined any further, in nats. */
const hopelessNats = 30;

/**
 * Joint log-likelihood of all electrical readings for a fault of every class at every station, and for
 * every component. The fault's resistance is the same in all readings and integrated out; errors the
 * readings share (wire ohms and lengths, plug contacts, supply, end parts) are averaged over seeded draws;
 * no short is placed sharper than 0.06 m (one standard deviation), 0.04 m where no plug of unknown contact
 * is passed, unless wire and plugs were measured.
 * O(draws x classes x stations x 41 x readings).
 * @example
 * readingsLogLikelihood(sample.map, sample.line, [], { stationsMm: Float64Array.of(100, 900) }).byClass.open // => Float64Array.of(0, 0)
 */
export function readingsLogLikelihood(
  map: MapDocument,
  line: CircuitLine,
  taken: readonly TakenReading[],
  options: LikelihoodOptions,
): ReadingsLikelihood {
  const { stationsMm } = options;
  const wires = layWires(map, line, taken, options);
  const { twoLead, capacitance, notes } = usableReadings(line, wires, taken);
  const { ladder } = wires.main;
  const isDrawn = options.draws !== 0 && twoLead.length > 0;
  const workingMm = workingStations(line.lengthMm, stationsMm, isDrawn ? mostStationsDrawn : mostStations);
  const places = placesOnLadder(ladder, workingMm);
  const touching = wires.otherLine ? besideStations(line, wires.otherLine, workingMm) : null;
  const otherPlaces = touching && wires.other ? placesWhereTouching(wires.other.wire, touching) : null;
  const wireMeasured = options.knowledge?.ohmsPerMetre !== undefined;
  const plugsKnown = ladder.plugIds.every((id) => options.knowledge?.measuredPlugs?.has(id));
  const isExact = wireMeasured && plugsKnown;
  const floorMm = plugsKnown ? pluglessFloorMm : honestFloorMm;
  const { spread, isTurned } = ladder.pieces;
  const usual = usualErrors(ladder.plugIds.length, wireMeasured);
  const drawn = isDrawn
    ? drawSharedErrors(
        options.draws ?? 64,
        ladder.plugIds.length,
        wireMeasured,
        options.seed ?? 1,
        isTurned ? [...spread].reverse() : spread,
      )
    : [usual];
  const isFloored = drawn.length > 1 || options.cautious === true;
  const share = drawn.length === 1 && options.cautious ? undrawnErrors.wireShare : 0;
  const grainOhms =
    drawn.length > 1
      ? isExact
        ? 0.0005
        : undrawnErrors.plugOhms / Math.sqrt(drawn.length)
      : share > 0
        ? undrawnErrors.plugOhms
        : 0;
  const settingOf = (errors: SharedErrors): SharedSetting => withErrors(wires, errors, options);

  const unbroken = capacitanceLogLikelihood(capacitance, [null])[0] as number;
  const capacitanceWithout = (kind: FaultClass): number =>
    isSeriesClass(kind) ? unbroken : shortedCapacitanceNats * capacitance.length;

  const draws = drawn.map((errors) => connectAll(settingOf(errors), twoLead, grainOhms, share));
  const placesIn = draws.map(({ setting }) =>
    drawn.length > 1 ? placesOnLadder(setting.wires.main.ladder, workingMm) : places,
  );
  const scoresOf = (kind: FaultClass, fromDraw: number, toDraw: number): StrengthMarginal[] =>
    draws
      .slice(fromDraw, toDraw)
      .map((draw, i) => classScores(draw, kind, placesIn[fromDraw + i] as LadderPlaces, otherPlaces));
  const early = draws.slice(0, earlyDraws);
  const firstPass = faultClasses.map((kind) => scoresOf(kind, 0, earlyDraws));
  const fitOf = (scores: readonly StrengthMarginal[]): number =>
    Math.max(...scores.map((each) => each.bestFit));
  const best = Math.max(...early.map(soundScore), ...firstPass.map(fitOf));
  let bestFit = Math.max(...draws.map(soundScore));
  const byClass = Object.fromEntries(
    faultClasses.map((kind, k) => {
      const started = firstPass[k] as (typeof firstPass)[number];
      const isHopeless = fitOf(started) < best - hopelessNats;
      const scored = isHopeless ? started : [...started, ...scoresOf(kind, earlyDraws, draws.length)];
      bestFit = Math.max(bestFit, ...scored.map((each) => each.bestFit));
      const mean = meanOfLogs(scored.map((each) => each.logLikelihood));
      const isWidened = !isSeriesClass(kind) && !isExact && isFloored && twoLead.length > 0;
      const row = isWidened ? widened(workingMm, mean, floorMm) : mean;
      return [kind, finalRow(kind, row)];
    }),
  ) as Record<FaultClass, Float64Array>;

  function finalRow(kind: FaultClass, row: Float64Array): Float64Array {
    const answer = isSeriesClass(kind)
      ? atSameLink(ladder.links.length, places, row, placesOnLadder(ladder, stationsMm))
      : between(workingMm, row, stationsMm);
    if (kind === 'wire-to-wire' && wires.otherLine) {
      const near = besideStations(line, wires.otherLine, stationsMm);
      near.forEach((mm, i) => {
        if (Number.isNaN(mm)) answer[i] = Number.NEGATIVE_INFINITY;
      });
    }
    if (capacitance.length === 0) return answer;
    const seen =
      kind === 'open'
        ? between(workingMm, capacitanceLogLikelihood(capacitance, workingMm), stationsMm)
        : null;
    return answer.map((value, i) => value + (seen ? (seen[i] as number) : capacitanceWithout(kind)));
  }

  const noFault = logSumExp(draws.map(soundScore)) - Math.log(draws.length) + unbroken;
  // Parts are judged on fewer draws: they have no place that could be drawn too sharp.
  const componentRows = draws.slice(0, componentDraws).map((draw) => componentScores(draw));
  const components = (componentRows[0] ?? []).map((component, i) => ({
    ...component,
    logLikelihood:
      logSumExp(componentRows.map((row) => (row[i] as ComponentScore).logLikelihood)) -
      Math.log(componentRows.length) +
      unbroken,
  }));
  const used = twoLead.length + capacitance.length;
  const [firstDraw] = draws;
  const unexplained = firstDraw ? unexplainedScore(firstDraw, places, otherPlaces) : 0;
  const isNeighbourAssumed = twoLead.length > 0 && !wires.otherLine;
  return {
    byClass,
    components,
    noFault,
    noneOfThese: unexplained - unexplainedNats * capacitance.length,
    bestFit,
    used,
    notes: isNeighbourAssumed ? [...notes, { code: 'neighbour-assumed' }] : notes,
  };
}

interface LaidWires extends ReadingWires {
  readonly otherLine: CircuitLine | null;
}

/** The searched wire, and the second one when a lead sat on it. */
function layWires(
  map: MapDocument,
  line: CircuitLine,
  taken: readonly TakenReading[],
  options: LikelihoodOptions,
): LaidWires {
  const access = leadNodeIds(taken.map(({ reading }) => reading));
  const ladder = layLadder(map, line, access, options.knowledge);
  const [first, second] = options.ends ?? [{}, {}];
  const main = standingWire(ladder, line.circuit, [
    { ...typicalEnd, ...first },
    { ...typicalEnd, ...second },
  ]);
  const otherId = otherCircuitId(line, taken) ?? options.otherCircuitId ?? null;
  const isOwn = otherId !== null && line.branches.some(({ circuit }) => circuit.id === otherId);
  const otherCircuit = otherId === null || isOwn ? undefined : map.circuits.get(otherId);
  const laid = otherCircuit ? layStraight(map, otherCircuit) : null;
  if (!otherCircuit || !laid?.ok) return { mainId: line.circuit.id, main, other: null, otherLine: null };
  const wire = standingWire(layLadder(map, laid.value, access), otherCircuit);
  return {
    mainId: line.circuit.id,
    main,
    other: { circuitId: otherCircuit.id, wire },
    otherLine: laid.value,
  };
}

/**
 * The first circuit besides the searched one and what is spliced to it that a lead sat on.
 * @example
 * otherCircuitId(sample.line, []) // => null
 */
export function otherCircuitId(line: CircuitLine, taken: readonly TakenReading[]): CircuitId | null {
  const own = new Set([line.circuit.id, ...line.branches.map(({ circuit }) => circuit.id)]);
  for (const { reading } of taken) {
    const leads =
      'from' in reading
        ? [reading.from, reading.to]
        : 'driven' in reading
          ? [reading.driven, reading.sensed]
          : [reading.at];
    for (const lead of leads)
      if (lead.on === 'wire' && lead.circuitId !== undefined && !own.has(lead.circuitId))
        return lead.circuitId;
  }
  return null;
}

/** The wires and supply with one state of the shared errors. */
function withErrors(wires: LaidWires, errors: SharedErrors, options: LikelihoodOptions): SharedSetting {
  const plugOhms = new Map<NodeId, number>();
  wires.main.ladder.plugIds.forEach((id, i) => {
    plugOhms.set(id, options.knowledge?.measuredPlugs?.get(id) ?? (errors.plugOhms[i] as number));
  });
  const scaled = (wire: StandingWire, ladder = wire.ladder): StandingWire => ({
    ...wire,
    ladder,
    linkOhms: Float64Array.from(ladder.links, (link) =>
      link.nodeId === null ? link.ohms * errors.wireScale : (plugOhms.get(link.nodeId) ?? link.ohms),
    ),
    figures: [endWithErrors(wire.figures[0], errors), endWithErrors(wire.figures[1], errors)],
    branchEnds: wire.branchEnds.map((each) => ({ ...each, figures: endWithErrors(each.figures, errors) })),
  });
  const supply = { ...typicalSupply, ...options.supply };
  return {
    wires: {
      mainId: wires.mainId,
      main: scaled(wires.main, stretchedLadder(wires.main.ladder, errors.pieceScales)),
      other: wires.other ? { ...wires.other, wire: scaled(wires.other.wire) } : null,
    },
    supply: {
      ...supply,
      batteryVolts: supply.batteryVolts * errors.supplyScale,
      parkedLoadOhms: supply.parkedLoadOhms * errors.neighbourScale,
      neighbourOhms: supply.neighbourOhms * errors.neighbourScale,
    },
  };
}

function endWithErrors(figures: EndFigures, errors: SharedErrors): EndFigures {
  return {
    ...figures,
    pullUpVolts: figures.pullUpVolts * errors.pullUpVoltsScale,
    pullUpOhms: figures.pullUpOhms * errors.pullUpOhmsScale,
    loadOhms: figures.loadOhms * errors.loadScale,
    sensorOhms: figures.sensorOhms * errors.loadScale,
    unpoweredPinOhms: figures.unpoweredPinOhms * errors.loadScale,
  };
}

function workingStations(lengthMm: number, wantedMm: Float64Array, most: number): Float64Array {
  const count = Math.min(most, Math.max(fewestStations, Math.ceil(lengthMm / workingStepMm)));
  if (wantedMm.length > 0 && wantedMm.length <= count && wantedMm.length >= fewestStations) return wantedMm;
  return Float64Array.from({ length: count }, (_, i) => ((i + 0.5) * lengthMm) / count);
}

function placesWhereTouching(wire: StandingWire, touchingMm: Float64Array): LadderPlaces {
  const places = placesOnLadder(wire.ladder, touchingMm);
  touchingMm.forEach((mm, i) => {
    if (Number.isNaN(mm)) places.link[i] = -1;
  });
  return places;
}

/** Log of the mean of likelihoods given as logs. */
function meanOfLogs(rows: readonly Float64Array[]): Float64Array {
  const [only] = rows;
  if (rows.length === 1 && only) return only;
  const column = new Float64Array(rows.length);
  return Float64Array.from(only ?? [], (_, i) => {
    rows.forEach((row, k) => {
      column[k] = row[i] as number;
    });
    return logSumExp(column) - Math.log(rows.length);
  });
}

/** Values between working stations, straight; held at both ends. */
function between(fromMm: Float64Array, values: Float64Array, atMm: Float64Array): Float64Array {
  if (fromMm === atMm) return Float64Array.from(values);
  let k = 0;
  return atMm.map((mm) => {
    while (k < fromMm.length - 2 && (fromMm[k + 1] as number) < mm) k++;
    const low = fromMm[k] as number;
    const share = Math.min(1, Math.max(0, (mm - low) / ((fromMm[k + 1] as number) - low)));
    return (values[k] as number) * (1 - share) + (values[k + 1] as number) * share;
  });
}

/** Series faults read the same all along a link: the link's value wherever on it a station lies. */
function atSameLink(
  linkCount: number,
  places: LadderPlaces,
  values: Float64Array,
  wanted: LadderPlaces,
): Float64Array {
  const ofLink = new Float64Array(linkCount).fill(Number.NaN);
  places.link.forEach((link, i) => {
    ofLink[link] = values[i] as number;
  });
  for (let link = 1; link < linkCount; link++)
    if (Number.isNaN(ofLink[link])) ofLink[link] = ofLink[link - 1] as number;
  return Float64Array.from(wanted.link, (link) => ofLink[link] as number);
}
