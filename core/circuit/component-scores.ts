import type { CircuitEnd } from '../map/records.ts';
import type { NodeId } from '../quantity/id.ts';
import { logSumExp } from '../quantity/sums.ts';
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
  readonly place: 'plug' | 'first-end' | 'second-end';
  readonly logLikelihood: number;
}

/**
 * How well each plug's contact (high or open, half each) and each end part's own faults (each as likely)
 * explain the readings. Plugs in the order passed, then the ends; ends without a node are left out.
 * @example
 * componentScores(connectAll({ wires: { mainId: sample.circuit.id, main: standingWire(layLadder(sample.map, sample.line, []), sample.circuit), other: null }, supply: typicalSupply }, [], 0)).map((each) => each.place) // => ['plug', 'first-end', 'second-end']
 */
export function componentScores(joined: JoinedReadings): readonly ComponentScore[] {
  const { main } = joined.setting.wires;
  const scores: ComponentScore[] = [];
  main.ladder.links.forEach(({ nodeId }, link) => {
    if (nodeId !== null) scores.push({ nodeId, place: 'plug', logLikelihood: plugScore(joined, link) });
  });
  main.ends.forEach((end, which) => {
    if (end.nodeId === null) return;
    const place = which === 0 ? 'first-end' : 'second-end';
    scores.push({ nodeId: end.nodeId, place, logLikelihood: endScore(joined, which) });
  });
  return scores;
}

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

function endScore(joined: JoinedReadings, which: number): number {
  const { wires, supply } = joined.setting;
  const { main } = wires;
  const figures = main.figures[which === 0 ? 0 : 1];
  const faulty = endPartFaults(main.ends[which] as CircuitEnd, figures);
  if (faulty.length === 0) return soundScore(joined);
  const scores = faulty.map((each) => {
    const changed =
      which === 0
        ? ({ ends: [each.end, main.ends[1]], figures: [each.figures, main.figures[1]] } as const)
        : ({ ends: [main.ends[0], each.end], figures: [main.figures[0], each.figures] } as const);
    const setting = { wires: { ...wires, main: { ...main, ...changed } }, supply };
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
