import type { NodeId } from '../quantity/id.ts';
import { logSumExp } from '../quantity/sums.ts';
import type { BranchEnd, StandingWire } from './circuit-network.ts';
import { endPartFaults } from './end-part-faults.ts';
import { linkResponse, soundReading } from './fault-response.ts';
import { strengthGrid } from './fault-strength.ts';
import { connectAll, type JoinedReadings, pushed, soundScore } from './joined-readings.ts';
import type { MeteredCircuit } from './metered-circuit.ts';
import { injectorScore, type ShownScore } from './shown-score.ts';
import { type ReadingTerm, strengthMarginal } from './strength-marginal.ts';

/** Log-likelihood of the readings when one part is itself at fault. */
export interface ComponentScore {
  readonly nodeId: NodeId;
  readonly place: 'plug' | 'first-end' | 'second-end' | 'branch-end';
  readonly logLikelihood: number;
}

/**
 * How well each plug's contact (high or open, half each) and each end part's own faults (each as likely)
 * explain the readings. Plugs in the order passed, each once, then the ends and those of branches; ends without a node are left
 * out.
 * @example
 * componentScores(connectAll({ wires: { mainId: sample.circuit.id, main: standingWire(layLadder(sample.map, sample.line, []), sample.circuit), other: null }, supply: typicalSupply }, [], 0)).map((each) => each.place) // => ['plug', 'first-end', 'second-end']
 */
export function componentScores(joined: JoinedReadings): readonly ComponentScore[] {
  const { main } = joined.setting.wires;
  const scores: ComponentScore[] = [];
  const met = new Set<NodeId>();
  main.ladder.links.forEach(({ nodeId }, link) => {
    if (nodeId === null || met.has(nodeId)) return;
    met.add(nodeId);
    scores.push({ nodeId, place: 'plug', logLikelihood: plugScore(joined, link) });
  });
  const addEnd = (end: BranchEnd, place: ComponentScore['place'], as: WithEnd): void => {
    const { nodeId } = end.end;
    if (nodeId !== null) scores.push({ nodeId, place, logLikelihood: endScore(joined, end, as) });
  };
  const [first, last] = main.ends;
  addEnd({ point: 0, end: first, figures: main.figures[0] }, 'first-end', ({ end, figures }) => ({
    ...main,
    ends: [end, last],
    figures: [figures, main.figures[1]],
  }));
  addEnd({ point: 0, end: last, figures: main.figures[1] }, 'second-end', ({ end, figures }) => ({
    ...main,
    ends: [first, end],
    figures: [main.figures[0], figures],
  }));
  main.branchEnds.forEach((branchEnd, i) => {
    addEnd(branchEnd, 'branch-end', ({ end, figures }) => ({
      ...main,
      branchEnds: main.branchEnds.map((each, k) => (k === i ? { ...each, end, figures } : each)),
    }));
  });
  return scores;
}

/** The wire with another part, or the same one at fault, at one end. */
type WithEnd = (changed: Pick<BranchEnd, 'end' | 'figures'>) => StandingWire;

function plugScore({ readings }: JoinedReadings, link: number): number {
  const terms: ReadingTerm[] = [];
  const add = (metered: MeteredCircuit, score: ShownScore, leadOhms: number): void => {
    const { numerator, offset } = linkResponse(metered, link);
    const sound = soundReading(metered) + leadOhms;
    const response = { sound, numerator: Float64Array.of(numerator), offset: Float64Array.of(offset) };
    terms.push({ response, score });
  };
  for (const { from, metered, score, leadOhms } of readings) {
    add(metered, score, leadOhms);
    if (from.reading.test === 'drop') add(pushed(metered), injectorScore, 0);
  }
  const of = (kind: 'open' | 'high-resistance'): number =>
    strengthMarginal(terms, strengthGrid(kind), 1).logLikelihood[0] as number;
  return logSumExp([of('open'), of('high-resistance')]) - Math.log(2);
}

function endScore(joined: JoinedReadings, { end, figures }: BranchEnd, withEnd: WithEnd): number {
  const { wires, supply } = joined.setting;
  const faulty = endPartFaults(end, figures);
  if (faulty.length === 0) return soundScore(joined);
  const scores = faulty.map((each) => {
    const setting = { wires: { ...wires, main: withEnd(each) }, supply };
    const rejoined = connectAll(
      setting,
      joined.readings.map(({ from }) => from),
      0,
    );
    const readings = rejoined.readings.map((reading, i) => ({
      ...reading,
      score: joined.readings[i]?.score ?? reading.score,
    }));
    return soundScore({ readings });
  });
  return logSumExp(scores) - Math.log(scores.length);
}
