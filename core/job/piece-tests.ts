import type { ProbePlace } from '../circuit/car-state.ts';
import { lineEnds } from '../circuit/circuit-line.ts';
import { bareState, withEndsApart } from '../circuit/circuit-network.ts';
import { safeInjection } from '../circuit/safe-injection.ts';
import { shareBelow } from '../circuit/strength-share.ts';
import { componentAt, type Hypotheses, noneAt } from '../locate/hypotheses.ts';
import { binaryOutcomes, type OutcomeChances } from '../locate/outcome-chances.ts';
import type { FaultClass } from '../map/kinds.ts';
import type { NodeId } from '../quantity/id.ts';
import { panelsHiding } from './panels-hiding.ts';
import { placingTest } from './placing-test.ts';
import type { PossibleTest, TestGrounds } from './possible-test.ts';
import { usualOhms } from './test-figures.ts';
import { type PiecePlace, type WirePiece, wirePieces } from './wire-pieces.ts';

/** Ohms to the body below this are a path that should not be there: more is what a sound wire shows (common practice, no source). */
const pathOhms = 100_000;

/** So many ohms more than a usual wire of its length are too much: leads and plugs come to less (judgement). */
const tooMuchOhms = 0.5;

/** The meter shows something else than it should this often: wrong half, bad tip (judgement). */
const slip = 0.02;

/** With the battery off a wire that touches another still meets the body through what is on that one this often (judgement). */
const otherWireGrounds = 0.8;

/**
 * Tests at plugs in reach: with such a plug parted, the wire on one side of it is measured by itself, up to
 * another plug in reach or to an end. Ohms to the body for shorts, ohms through and capacitance for opens,
 * a small current for the place of a short. What is measured hangs free at both ends, the battery is off;
 * current goes only into a signal wire that is unplugged at all its ends. A test done before is left out.
 * @example
 * pieceTests({ map: sample.map, line: sample.line, cells: layHypotheses(new Float64Array([0, 500, 1500]), []), cellProbability: Float64Array.of(0.5, 0.5), stretches: [], entries: [], medianMm: 700 }).slice(0, 2).map(({ kind, nodeIds }) => [kind, nodeIds]) // => [['ohms-to-body', ['node:middle']], ['ohms-through', ['node:west', 'node:middle']]]
 */
export function pieceTests(grounds: TestGrounds): PossibleTest[] {
  return wirePieces(grounds).flatMap((piece) => [
    ...toBody(grounds, piece),
    ...through(grounds, piece),
    ...(piece.row === 0 ? [...currentInto(grounds, piece), ...capacitanceOf(grounds, piece)] : []),
  ]);
}

type Common = Pick<
  PossibleTest,
  'state' | 'panelIds' | 'plugsParted' | 'other' | 'ranges' | 'injection' | 'expected'
>;

function common(grounds: TestGrounds, { apartNodeIds, plugsParted }: WirePiece): Common {
  return {
    state: { ...bareState, apartNodeIds },
    panelIds: panelsHiding(grounds, apartNodeIds),
    plugsParted,
    other: null,
    ranges: [],
    injection: null,
    expected: null,
  };
}

/** The wire between the two, for shorts: a path to the body should not be there. */
function toBody(grounds: TestGrounds, piece: WirePiece): PossibleTest[] {
  const [a, b] = piece.places;
  const [lead, towards] = a.side ? [a, b] : [b, a];
  const isDone = wasRead(grounds, piece, 'ohms', ([from, to]) => from && isAt(from, lead) && !to);
  if (isDone) return [];
  const paths: Partial<Record<FaultClass, number>> = {
    'short-to-ground': shareBelow('short-to-ground', pathOhms),
    'short-to-supply': shareBelow('short-to-supply', pathOhms),
    'wire-to-wire': otherWireGrounds,
  };
  const { cells } = grounds;
  const yes = new Float64Array(cells.size).fill(slip);
  cells.classes.forEach((kind, k) => {
    const path = paths[kind] ?? 0;
    for (let cell = 0; cell < cells.cellCount; cell++)
      yes[k * cells.cellCount + cell] = slip + (1 - 2 * slip) * path * (piece.share[cell] as number);
  });
  yes[noneAt(cells)] = 0.5;
  return [
    {
      ...common(grounds, piece),
      kind: 'ohms-to-body',
      nodeIds: [lead.nodeId],
      sides: [lead.side],
      towardsId: towards.nodeId,
      labels: [{ what: 'to-body' }, { what: 'clear' }],
      chances: binaryOutcomes(yes),
    },
  ];
}

/** The wire from the one to the other, for opens and bad joints. */
function through(grounds: TestGrounds, piece: WirePiece): PossibleTest[] {
  const [a, b] = piece.places;
  const isDone = (['ohms', 'beep'] as const).some((test) =>
    wasRead(grounds, piece, test, ([from, to]) =>
      Boolean(from && to && ((isAt(from, a) && isAt(to, b)) || (isAt(from, b) && isAt(to, a)))),
    ),
  );
  if (isDone) return [];
  const { map, line } = grounds;
  const mostOhms = Math.ceil(10 * (usualOhms(map, line)(a.atMm, b.atMm) + tooMuchOhms)) / 10;
  return [
    {
      ...common(grounds, piece),
      kind: 'ohms-through',
      nodeIds: [a.nodeId, b.nodeId],
      sides: [a.side, b.side],
      towardsId: null,
      labels: [{ what: 'through', ohms: mostOhms }, { what: 'too-much', ohms: mostOhms }, { what: 'broken' }],
      chances: throughChances(grounds.cells, piece),
    },
  ];
}

/** Sound, too much, and open line; a plug between counts as a joint, the parted ones are out of it. */
function throughChances(cells: Hypotheses, piece: WirePiece): OutcomeChances {
  const [sound, high, open] = Array.from({ length: 3 }, (_, y) =>
    new Float64Array(cells.size).fill(y === 0 ? 1 - 2 * slip : slip),
  ) as [Float64Array, Float64Array, Float64Array];
  const set = (at: number, highShare: number, openShare: number): void => {
    high[at] = slip + (1 - 3 * slip) * highShare;
    open[at] = slip + (1 - 3 * slip) * openShare;
    sound[at] = 1 - (high[at] as number) - (open[at] as number);
  };
  const seen = 1 - shareBelow('high-resistance', tooMuchOhms);
  for (let cell = 0; cell < cells.cellCount; cell++) {
    const share = piece.between[cell] as number;
    set(cells.classes.indexOf('open') * cells.cellCount + cell, 0, share);
    set(cells.classes.indexOf('high-resistance') * cells.cellCount + cell, seen * share, 0);
  }
  const [a, b] = piece.places;
  cells.components.forEach(({ place, stationMm }, i) => {
    const isBetween = place === 'plug' && stationMm > a.atMm && stationMm < b.atMm;
    // Judgement: a faulty plug is as often open as it is merely bad, and now and then shows nothing.
    if (isBetween) set(componentAt(cells, i), 0.4, 0.4);
  });
  for (const row of [sound, high, open]) row[noneAt(cells)] = 1 / 3;
  return [sound, high, open];
}

/** A small current from the one place to the body, for the place of a short between the two. */
function currentInto(grounds: TestGrounds, piece: WirePiece): PossibleTest[] {
  const { circuit, branches } = grounds.line;
  if (circuit.ends.some(({ kind }) => kind === 'fused-supply')) return [];
  const state = withEndsApart({ ...bareState, apartNodeIds: piece.apartNodeIds }, lineEnds(grounds.line));
  const answer = safeInjection(circuit, state, { joined: branches });
  if (answer.outcome === 'refused' || wasRead(grounds, piece, 'drop', ([driven]) => touches(driven, piece)))
    return [];
  const [a, b] = piece.places;
  const [driven, sensed] = a.side ? [a, b] : [b, a];
  return (['drop', 'drop-both-ends'] as const).map((kind) => ({
    ...common(grounds, piece),
    ...placingTest(grounds, {
      kind,
      nodeIds: [driven.nodeId, sensed.nodeId],
      firstMm: driven.atMm,
      otherMm: sensed.atMm,
      state,
      injection: answer.plan,
      piece,
    }),
    panelIds: panelsHiding(grounds, state.apartNodeIds),
  }));
}

/** Capacitance from the one place and from the other, for the place of an open between the two. */
function capacitanceOf(grounds: TestGrounds, piece: WirePiece): PossibleTest[] {
  if (wasRead(grounds, piece, 'capacitance', ([at]) => touches(at, piece))) return [];
  const [a, b] = piece.places;
  const base = common(grounds, piece);
  return [
    {
      ...base,
      ...placingTest(grounds, {
        kind: 'capacitance',
        nodeIds: [a.nodeId, b.nodeId],
        firstMm: a.atMm,
        otherMm: b.atMm,
        state: base.state,
        injection: null,
        piece,
      }),
    },
  ];
}

type WireLead = Extract<ProbePlace, { on: 'wire' }>;

const isAt = ({ nodeId, side }: WireLead, place: PiecePlace): boolean =>
  nodeId === place.nodeId && (place.side === null || side === undefined || side === place.side);

const touches = (lead: WireLead | null | undefined, piece: WirePiece): boolean =>
  Boolean(lead && piece.places.some((place) => isAt(lead, place)));

/** Whether a reading of that kind was taken with the same places apart and its leads on the wire as asked; null for a lead on the car. */
function wasRead(
  { entries }: TestGrounds,
  piece: WirePiece,
  test: 'ohms' | 'beep' | 'drop' | 'capacitance',
  hasLeads: (leads: readonly (WireLead | null)[]) => boolean | null | undefined,
): boolean {
  const apart: readonly NodeId[] = piece.places.map(({ nodeId }) => nodeId);
  return entries.some((entry) => {
    if (entry.type !== 'reading' || entry.reading.test !== test) return false;
    if (!apart.every((id) => entry.state.apartNodeIds.includes(id))) return false;
    const { reading } = entry;
    const leads =
      reading.test === 'drop'
        ? [reading.driven, reading.sensed]
        : reading.test === 'capacitance'
          ? [reading.at]
          : reading.test === 'ohms' || reading.test === 'beep'
            ? [reading.from, reading.to]
            : [];
    return hasLeads(leads.map((lead) => (lead.on === 'wire' ? lead : null))) === true;
  });
}
