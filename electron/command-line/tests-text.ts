import type { CircuitLine } from '#core/circuit/circuit-line.ts';
import type { NextTest } from '#core/job/next-test.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { sayMinutes } from '#renderer/language/find.ts';
import { sayWhere, whereLine } from '#renderer/language/say-where.ts';
import {
  expectedSentence,
  outcomeSentence,
  type TestNames,
  testInstruction,
  testListWords,
  testSetup,
} from '#renderer/language/tests.ts';
import { nameOf } from './name-of.ts';
import { wrapText } from './wrap-text.ts';

/** Tests beyond these save little more; --json lists them. */
const mostSaid = 3;

/** How sentences about tests call things, on one circuit. */
export function testNames(map: MapDocument, line: CircuitLine): TestNames {
  return {
    nameOf: (id) => nameOf(map, id),
    sayPiece: (fromMm, toMm) => whereLine(sayWhere(map, line, fromMm, toMm, 'metric')),
    fuses: new Set(
      line.circuit.ends.flatMap(({ kind, nodeId }) => (kind === 'fused-supply' && nodeId ? [nodeId] : [])),
    ),
  };
}

/** The best tests as lines: what to do, how the car must stand, what each outcome means. */
export function testsText(map: MapDocument, line: CircuitLine, tests: readonly NextTest[]): string[] {
  const names = testNames(map, line);
  if (tests.length === 0) return [testListWords.title, ...wrapText(testListWords.none, 2)];
  const lines = tests.slice(0, mostSaid).flatMap((test, i) => {
    const saves = testListWords.saves(sayMinutes(Math.max(1, test.minutesSaved)), sayMinutes(test.minutes));
    const reach =
      test.takeOff.length > 0 ? testListWords.reach(test.takeOff.map(names.nameOf).join(', then ')) : null;
    const said = [
      testSetup(test, names),
      expectedSentence(test.expected),
      reach,
      `${saves.charAt(0).toUpperCase()}${saves.slice(1)}.`,
      test.betterAfterOpening ? testListWords.better : null,
    ];
    return [
      ...wrapText(testInstruction(test, names), 4, `${String(i + 1).padStart(2)}  `),
      ...said.flatMap((each) => (each === null ? [] : wrapText(each, 4))),
      ...test.outcomes.flatMap((outcome) => wrapText(outcomeSentence(outcome, names), 6, '    - ')),
    ];
  });
  return [testListWords.title, ...lines];
}
