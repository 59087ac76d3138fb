import type { CauseKind } from '../chafe/cause.ts';
import { defaultAssumptions } from '../chafe/chafe-assumptions.ts';
import type { HazardField } from '../chafe/hazard-field.ts';
import { spotsBeside } from '../chafe/spots-beside.ts';
import { type CircuitLine, type CircuitSpan, segmentStationMm } from '../circuit/circuit-line.ts';
import { pointAtStation } from '../geometry/station-line.ts';
import type { MapDocument } from '../map/map-document.ts';
import { panelsOver } from '../map/segment-needs.ts';
import {
  type PlaceRule,
  type RecentWork,
  recentWorkTable,
  type Symptom,
  symptomTable,
} from './recent-work-table.ts';

/** What intake told of work and use. */
export interface WorkAndUse {
  readonly recentWork?: readonly RecentWork[] | undefined;
  readonly symptoms?: readonly Symptom[] | undefined;
}

/** Beside a node or a spot means within this much. Judgement. */
const besideMm = 150;
/** The share of the drawing's length that counts as its front or its rear. */
const endShare = 0.3;

/**
 * The hazard of a circuit raised where lately someone worked and where the symptoms point, never lowered
 * anywhere; causes and classes are raised alike. One word's rules do not add up: the strongest that applies
 * counts. O(words x rules x cells).
 * @example
 * raisedPlaces(sample.map, sample.line, sample.field, { recentWork: ['seat'] }).byClass.open[60] // => 3
 */
export function raisedPlaces(
  map: MapDocument,
  line: CircuitLine,
  field: HazardField,
  told: WorkAndUse,
): HazardField {
  const words = rulesOf(told);
  if (words.length === 0) return field;
  const cellCount = field.cellEdgesMm.length - 1;
  const places = placesOf(map, line, field.cellEdgesMm);
  const before = new Float64Array(cellCount);
  const after = new Float64Array(cellCount);
  const causes = field.causes.map((cause) => {
    const perMm = cause.perMm.map((density, i) => {
      const cell = cause.firstCell + i;
      let raised = density;
      for (const rules of words) raised *= strongest(rules, places[cell] as Place, cause.cause);
      before[cell] = (before[cell] as number) + density;
      after[cell] = (after[cell] as number) + raised;
      return raised;
    });
    return { ...cause, perMm };
  });
  const byClass = Object.fromEntries(
    Object.entries(field.byClass).map(([kind, densities]) => [
      kind,
      densities.map((density, cell) => {
        const was = before[cell] as number;
        return was > 0 ? (density * (after[cell] as number)) / was : density;
      }),
    ]),
  ) as unknown as HazardField['byClass'];
  return { cellEdgesMm: field.cellEdgesMm, byClass, causes };
}

/**
 * Which of the words told point to some place on this circuit, with the length they touch, mm: so that the
 * screen can say what an answer did. Words about causes alone touch every place.
 * @example
 * touchedBy(sample.map, sample.line, sample.field.cellEdgesMm, { recentWork: ['seat', 'audio'] }) // => [{ word: 'seat', lengthMm: 400 }]
 */
export function touchedBy(
  map: MapDocument,
  line: CircuitLine,
  cellEdgesMm: Float64Array,
  told: WorkAndUse,
): { readonly word: RecentWork | Symptom; readonly lengthMm: number }[] {
  const places = placesOf(map, line, cellEdgesMm);
  return [...(told.recentWork ?? []), ...(told.symptoms ?? [])].flatMap((word) => {
    const rules = rulesOfWord(word);
    let lengthMm = 0;
    places.forEach((place, cell) => {
      const widthMm = (cellEdgesMm[cell + 1] as number) - (cellEdgesMm[cell] as number);
      if (rules.some((rule) => pointsTo(rule, place))) lengthMm += widthMm;
    });
    return lengthMm > 0 ? [{ word, lengthMm: Math.round(lengthMm) }] : [];
  });
}

const rulesOfWord = (word: RecentWork | Symptom): readonly PlaceRule[] =>
  word in recentWorkTable ? recentWorkTable[word as RecentWork] : symptomTable[word as Symptom];

const rulesOf = ({ recentWork = [], symptoms = [] }: WorkAndUse) => [
  ...[...new Set(recentWork)].map((word) => recentWorkTable[word]),
  ...[...new Set(symptoms)].map((word) => symptomTable[word]),
];

/** What is at one place of the circuit, as the rules name it. */
interface Place {
  readonly names: ReadonlySet<string>;
  readonly end: 'front' | 'rear' | null;
}

function placesOf(map: MapDocument, line: CircuitLine, edgesMm: Float64Array): readonly Place[] {
  let [frontMm, rearMm] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { at } of map.nodes.values()) {
    frontMm = Math.min(frontMm, at.xMm);
    rearMm = Math.max(rearMm, at.xMm);
  }
  let spanIndex = 0;
  return Array.from({ length: edgesMm.length - 1 }, (_, cell) => {
    const stationMm = ((edgesMm[cell] as number) + (edgesMm[cell + 1] as number)) / 2;
    while (spanIndex < line.spans.length - 1 && (line.spans[spanIndex] as CircuitSpan).toMm < stationMm) {
      spanIndex++;
    }
    const span = line.spans[spanIndex] as CircuitSpan;
    const drawnMm = segmentStationMm(span, stationMm);
    const at = pointAtStation(span.line, drawnMm);
    const share = rearMm > frontMm ? (at.xMm - frontMm) / (rearMm - frontMm) : 0.5;
    const end = share <= endShare ? 'front' : share >= 1 - endShare ? 'rear' : null;
    const names = new Set<string>(span.segment.traits.map((trait) => `trait ${trait}`));
    for (const id of panelsOver(span.segment, drawnMm)) names.add(`panel ${map.panels.get(id)?.kind}`);
    for (const node of line.nodes) {
      if (Math.abs(node.stationMm - stationMm) <= besideMm)
        names.add(`node ${map.nodes.get(node.nodeId)?.kind}`);
    }
    const reachMm = defaultAssumptions.reachMm;
    for (const { kind } of spotsBeside(map, span.segment, drawnMm, besideMm, reachMm))
      names.add(`spot ${kind}`);
    return { names, end };
  });
}

function strongest(rules: readonly PlaceRule[], place: Place, cause: CauseKind): number {
  let factor = 1;
  for (const rule of rules) {
    if (rule.causes && !rule.causes.includes(cause)) continue;
    if (pointsTo(rule, place)) factor = Math.max(factor, rule.factor);
  }
  return factor;
}

function pointsTo(rule: PlaceRule, { names, end }: Place): boolean {
  if (rule.end && rule.end !== end) return false;
  const { panelKinds = [], traits = [], nodeKinds = [], rubSpotKinds = [] } = rule;
  if (panelKinds.length + traits.length + nodeKinds.length + rubSpotKinds.length === 0) return true;
  return (
    panelKinds.some((kind) => names.has(`panel ${kind}`)) ||
    traits.some((trait) => names.has(`trait ${trait}`)) ||
    nodeKinds.some((kind) => names.has(`node ${kind}`)) ||
    rubSpotKinds.some((kind) => names.has(`spot ${kind}`))
  );
}
