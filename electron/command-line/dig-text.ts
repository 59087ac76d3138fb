import { type CircuitLine, layStraight } from '#core/circuit/circuit-line.ts';
import type { Job } from '#core/job/job-document.ts';
import type { DigStep, Ranking } from '#core/job/ranking.ts';
import type { Caution } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { cautionSentences, findWords, sayMinutes, sayPercent } from '#renderer/language/find.ts';
import { lookAgain, reasonSentence } from '#renderer/language/reasons.ts';
import { sayDistance } from '#renderer/language/say-length.ts';
import { sayWhere, whereLine } from '#renderer/language/say-where.ts';
import { cautionWords, failureTypeWords, faultClassWords } from '#renderer/language/words.ts';
import { nameOf } from './name-of.ts';
import { warningLine } from './warning-line.ts';
import { wrapText } from './wrap-text.ts';

/** Openings less likely than this are summed up in one line, after the first three. */
const leastSaid = 0.005;

const indent = 4;

/** The ranking as a page to read in a terminal: what to open, where the fault may be, what to mind. */
export function digText(map: MapDocument, job: Job, ranking: Ranking): string {
  const circuit = map.circuits.get(job.circuitId ?? 'circuit:none');
  const line = circuit ? layStraight(map, circuit) : null;
  if (!line?.ok) return '';
  const lines = [
    ...heading(map, job, ranking, line.value),
    '',
    ...plan(map, ranking, line.value),
    '',
    ...posteriorLines(map, ranking, line.value),
  ];
  if (ranking.warnings.length > 0) {
    lines.push('', 'To mind', ...ranking.warnings.flatMap((each) => wrapText(warningLine(map, each), 2)));
  }
  return lines.join('\n');
}

function heading(map: MapDocument, job: Job, ranking: Ranking, line: CircuitLine): string[] {
  const first = nameOf(map, line.nodes[0]?.nodeId ?? '');
  const last = nameOf(map, line.nodes.at(-1)?.nodeId ?? '');
  const { value, unit } = sayDistance(ranking.circuit.lengthMm, 'metric');
  return [
    `${map.details.name}, ${job.vehicle.plate || findWords.header.noPlate}`,
    `${ranking.circuit.name || ranking.circuit.id}: ${value} ${unit} from ${first} to ${last}`,
    `${findWords.header.failure}: ${failureTypeWords[job.failureType]}`,
  ];
}

function plan(map: MapDocument, ranking: Ranking, line: CircuitLine): string[] {
  const { list } = findWords;
  const lines = [
    `${list.label} (${list.expected.toLowerCase()} ${sayMinutes(ranking.expectedMinutes)} ${list.minutes})`,
  ];
  if (ranking.digPlan.length === 0) return [...lines, ...wrapText(findWords.none.allSeen, 2)];
  const told = new Set<Caution>();
  const rest: DigStep[] = [];
  for (const step of ranking.digPlan) {
    if (step.rank > 3 && step.probability < leastSaid) rest.push(step);
    else lines.push(...stepLines(map, line, step, told));
  }
  if (rest.length > 0) {
    const chance = rest.reduce((sum, step) => sum + step.probability, 0);
    lines.push(
      `  Left out here: ${rest.length} of little chance (${sayPercent(chance)} % together); --json lists them.`,
    );
  }
  return lines;
}

function stepLines(map: MapDocument, line: CircuitLine, step: DigStep, told: Set<Caution>): string[] {
  const { list } = findWords;
  const off = step.takeOff.map((id) => nameOf(map, id)).join(', then ');
  const open = step.reason.secondLook ? lookAgain : list.nothingToTakeOff;
  const what = off ? `${list.takeOffFirst}: ${off}` : open;
  const figures = `${sayMinutes(step.minutes)} ${list.minutes}, ${list.chance} ${sayPercent(step.probability)} %`;
  const places = [
    ...step.look.parts.map((part) => {
      const place = whereLine(sayWhere(map, line, part.fromMm, part.toMm, 'metric'));
      return `${nameOf(map, part.segmentId)}, ${place}`;
    }),
    ...(step.look.nodeIds ?? []).map((id) => `into ${nameOf(map, id)}`),
  ];
  const cautions = step.takeOff.flatMap((id) => map.panels.get(id)?.cautions ?? []);
  const care = [...new Set(cautions)].map((caution) => {
    const sentence = told.has(caution) ? 'as above' : cautionSentences[caution];
    told.add(caution);
    return `${cautionWords[caution]}: ${sentence}`;
  });
  return [
    ...wrapText(what, indent, `${String(step.rank).padStart(2)}  `),
    `${' '.repeat(indent)}${figures}`,
    ...care.flatMap((each) => wrapText(each, indent + 2, `${' '.repeat(indent)}! `)),
    ...places.flatMap((place) => wrapText(`${list.look}: ${place}`, indent)),
    ...wrapText(
      reasonSentence(step.reason, (id) => nameOf(map, id)),
      indent,
    ),
    `${' '.repeat(indent)}${list.running}: ${sayMinutes(step.runningMinutes)} ${list.minutes}, ${sayPercent(step.runningProbability)} % ${list.runningTotal}`,
  ];
}

function posteriorLines(map: MapDocument, { posterior, circuit }: Ranking, line: CircuitLine): string[] {
  const kinds = Object.entries(posterior.classes)
    .filter(([, chance]) => chance >= leastSaid)
    .sort(([, a], [, b]) => b - a)
    .map(
      ([kind, chance]) => `${faultClassWords[kind as keyof typeof faultClassWords]} ${sayPercent(chance)} %`,
    );
  const parts = posterior.components
    .filter(({ probability }) => probability >= leastSaid)
    .map(({ nodeId, probability }) => `${nameOf(map, nodeId)} ${sayPercent(probability)} %`);
  const median = sayDistance(posterior.medianStationMm, 'metric');
  const region = sayDistance(posterior.credible80Mm, 'metric');
  const length = sayDistance(circuit.lengthMm, 'metric');
  const first = nameOf(map, line.nodes[0]?.nodeId ?? '');
  return [
    'What it may be',
    ...wrapText(kinds.join(', '), 2),
    ...wrapText(
      `If it is in the wire: as likely before as after ${median.value} ${median.unit} from ${first}; with 80 % chance within ${region.value} ${region.unit} of its ${length.value} ${length.unit}`,
      2,
    ),
    ...(parts.length > 0 ? wrapText(`If it is a part: ${parts.join(', ')}`, 2) : []),
  ];
}
