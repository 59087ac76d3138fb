import type { CircuitLine } from '#core/circuit/circuit-line.ts';
import { layJoined } from '#core/circuit/joined-wires.ts';
import type { Job } from '#core/job/job-document.ts';
import type { DigStep, Ranking, RankWarning } from '#core/job/ranking.ts';
import type { Caution } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { digWords } from '#renderer/language/dig.ts';
import { cautionSentences, sayMinutes, sayPercent } from '#renderer/language/find.ts';
import { reasonSentence } from '#renderer/language/reasons.ts';
import { sayDistance } from '#renderer/language/say-length.ts';
import { sayWhere, whereLine } from '#renderer/language/say-where.ts';
import { cautionWords, failureTypeWords, faultClassWords } from '#renderer/language/words.ts';
import { nameOf } from './name-of.ts';
import { readingsText } from './readings-text.ts';
import { testsText } from './tests-text.ts';
import { warningLine } from './warning-line.ts';
import { wrapText } from './wrap-text.ts';

/** Openings less likely than this are summed up in one line, after the first three. */
const leastSaid = 0.005;

const indent = 4;

/** Warnings that must be read before anything is touched. */
const dangers: ReadonlySet<RankWarning['code']> = new Set(['restraint-circuit', 'high-voltage-circuit']);

/** The ranking as a page to read in a terminal: what to open, where the fault may be, what to mind. */
export function digText(map: MapDocument, job: Job, ranking: Ranking): string {
  const circuit = map.circuits.get(job.circuitId ?? 'circuit:none');
  const line = circuit ? layJoined(map, circuit) : null;
  if (!line?.ok) return '';
  const warnings = ranking.warnings.filter(({ code }) => !dangers.has(code));
  const lookOnly = ranking.warnings.some(({ code }) => dangers.has(code));
  const lines = [
    ...heading(map, job, ranking, line.value),
    ...ranking.warnings
      .filter(({ code }) => dangers.has(code))
      .flatMap((each) => ['', ...wrapText(warningLine(map, each), 2, '! ')]),
    '',
    ...plan(map, ranking, line.value),
    '',
    ...posteriorLines(map, ranking, line.value),
    ...block(readingsText(map, line.value, job, ranking)),
    ...block(lookOnly ? [] : testsText(map, line.value, ranking.nextTests)),
  ];
  if (warnings.length > 0) {
    lines.push('', digWords.toMind, ...warnings.flatMap((each) => wrapText(warningLine(map, each), 2)));
  }
  return lines.join('\n');
}

/** Set apart by an empty line; nothing for nothing. */
function block(lines: readonly string[]): string[] {
  return lines.length > 0 ? ['', ...lines] : [];
}

function heading(map: MapDocument, job: Job, ranking: Ranking, line: CircuitLine): string[] {
  const first = nameOf(map, line.nodes[0]?.nodeId ?? '');
  const last = nameOf(map, line.nodes.at(-1)?.nodeId ?? '');
  const { id, name, lengthMm } = ranking.circuit;
  return [
    `${map.details.name}, ${job.vehicle.plate || digWords.noPlate}`,
    digWords.circuit(name || id, distance(lengthMm), first, last),
    digWords.failure(failureTypeWords[job.failureType]),
  ];
}

function plan(map: MapDocument, ranking: Ranking, line: CircuitLine): string[] {
  const lines = [digWords.order(sayMinutes(ranking.expectedMinutes))];
  if (ranking.digPlan.length === 0) return [...lines, ...wrapText(digWords.nothingLeft, 2)];
  const told = new Set<Caution>();
  const rest: DigStep[] = [];
  for (const step of ranking.digPlan) {
    if (step.rank > 3 && step.probability < leastSaid) rest.push(step);
    else lines.push(...stepLines(map, line, step, told));
  }
  if (rest.length > 0) {
    const chance = rest.reduce((sum, step) => sum + step.probability, 0);
    lines.push(...wrapText(digWords.leftOut(rest.length, sayPercent(chance)), 2));
  }
  return lines;
}

function stepLines(map: MapDocument, line: CircuitLine, step: DigStep, told: Set<Caution>): string[] {
  const off = step.takeOff.map((id) => nameOf(map, id)).join(', then ');
  const open = step.reason.secondLook ? digWords.lookAgain : digWords.alreadyOpen;
  const places = [
    ...step.look.parts.map((part) => {
      const place = whereLine(sayWhere(map, line, part.fromMm, part.toMm, 'metric'));
      return digWords.look(nameOf(map, part.segmentId), place);
    }),
    ...(step.look.nodeIds ?? []).map((id) => digWords.lookInto(nameOf(map, id))),
  ];
  const reason = reasonSentence(step.reason, (id) => nameOf(map, id));
  const lines = [
    digWords.figures(sayMinutes(step.minutes), sayPercent(step.probability)),
    ...careLines(map, step, told),
    ...places,
    reason,
    digWords.byThen(sayMinutes(step.runningMinutes), sayPercent(step.runningProbability)),
  ];
  return [
    ...wrapText(off ? digWords.takeOff(off) : open, indent, `${String(step.rank).padStart(2)}  `),
    ...lines.flatMap((each) => wrapText(each, indent)),
  ];
}

/** The care each panel asks for, in full the first time it comes up. */
function careLines(map: MapDocument, step: DigStep, told: Set<Caution>): string[] {
  const cautions = new Set(step.takeOff.flatMap((id) => map.panels.get(id)?.cautions ?? []));
  return [...cautions].map((caution) => {
    const sentence = told.has(caution) ? digWords.asAbove : cautionSentences[caution];
    told.add(caution);
    return `! ${digWords.care(cautionWords[caution], sentence)}`;
  });
}

function posteriorLines(map: MapDocument, { posterior, circuit }: Ranking, line: CircuitLine): string[] {
  const kinds = Object.entries(posterior.classes)
    .filter(([, chance]) => chance >= leastSaid)
    .sort(([, a], [, b]) => b - a)
    .map(([kind, chance]) =>
      digWords.share(faultClassWords[kind as keyof typeof faultClassWords], sayPercent(chance)),
    );
  const parts = posterior.components
    .filter(({ probability }) => probability >= leastSaid)
    .map(({ nodeId, probability }) => digWords.share(nameOf(map, nodeId), sayPercent(probability)));
  const inWire = digWords.inWire(
    distance(posterior.medianStationMm),
    nameOf(map, line.nodes[0]?.nodeId ?? ''),
    distance(posterior.credible80Mm),
    distance(circuit.lengthMm),
  );
  return [
    digWords.kinds,
    ...wrapText(kinds.join(', '), 2),
    ...wrapText(inWire, 2),
    ...(parts.length > 0 ? wrapText(digWords.inPart(parts.join(', ')), 2) : []),
  ];
}

function distance(mm: number): string {
  const { value, unit } = sayDistance(mm, 'metric');
  return `${value} ${unit}`;
}
