import { useState } from 'react';
import type { NextTest } from '#core/job/next-test.ts';
import { findWords, sayMinutes } from '../../../language/find.ts';
import { nameOf } from '../../../language/name-of.ts';
import { readingWords } from '../../../language/readings.ts';
import { whereLine } from '../../../language/say-where.ts';
import {
  expectedSentence,
  outcomeSentence,
  type TestNames,
  testInstruction,
  testListWords,
  testSetup,
} from '../../../language/tests.ts';
import { Button, Figure, Sign } from '../../../parts/index.ts';
import { meterNamed, useOwnMeters } from '../../../session/own-meters.ts';
import type { Piece } from '../../../straight/straight-picture.ts';
import { useFind } from '../find-context.ts';
import { noReadings } from './form-cautions.ts';
import { formsOfTest } from './forms-of-test.ts';

const words = readingWords.next;

/** How many more tests are offered when the first one's whole text is open. */
const othersShown = 2;

/** The test that saves most minutes before anything more comes off, as an instruction; or that none pays. */
export function NextTestPanel() {
  const { open } = useFind();
  const { ranking, line, thinking } = open;
  if (!ranking || !line || noReadings(line.circuit) || ranking.digPlan.length === 0) return null;
  const [best, ...others] = ranking.nextTests;
  if (!best) {
    return <p className="next-test next-test-none quiet">{thinking ? words.looking : testListWords.none}</p>;
  }
  return <BestTest key={testKey(best)} test={best} others={others.slice(0, othersShown)} />;
}

const testKey = ({ kind, nodeIds, ranges }: NextTest): string =>
  [kind, ...nodeIds, ...ranges.map(({ fromMm }) => fromMm)].join(' ');

function BestTest({ test, others }: { readonly test: NextTest; readonly others: readonly NextTest[] }) {
  const view = useFind();
  const [whole, setWhole] = useState(false);
  const names = useNames();
  const pieces = piecesOf(test, view.open.line?.nodes ?? []);
  const expected = expectedSentence(test.expected);
  return (
    <section
      className="next-test"
      aria-label={words.label}
      onPointerEnter={() => view.point(pieces)}
      onPointerLeave={() => view.point([])}
    >
      <header>
        <h2>{words.label}</h2>
        <Saved test={test} />
      </header>
      <p className="next-test-do">{testInstruction(test, names)}</p>
      <div className="button-row">
        <EnterTest test={test} />
        <Button weight="quiet" aria-expanded={whole} onClick={() => setWhole(!whole)}>
          {words.whole}
          <Sign name={whole ? 'up' : 'down'} size={18} />
        </Button>
      </div>
      {whole ? (
        <div className="next-test-whole">
          <p>{testSetup(test, names)}</p>
          {test.takeOff.length > 0 ? (
            <p>{testListWords.reach(test.takeOff.map(names.nameOf).join(', '))}</p>
          ) : null}
          {expected ? <p>{expected}</p> : null}
          <ul>
            {test.outcomes.map((outcome) => (
              <li key={JSON.stringify(outcome.label)}>{outcomeSentence(outcome, names)}</li>
            ))}
          </ul>
          {test.betterAfterOpening ? <p>{testListWords.better}</p> : null}
          <p className="quiet">{words.precedence}</p>
          {others.length > 0 ? <h3>{words.others}</h3> : null}
          {others.map((other) => (
            <div key={testKey(other)} className="next-test-other">
              <p>
                {testInstruction(other, names)} {testSetup(other, names)}
              </p>
              <Saved test={other} />
              <EnterTest test={other} />
            </div>
          ))}
        </div>
      ) : null}
    </section>
  );
}

function Saved({ test }: { readonly test: NextTest }) {
  return (
    <span className="next-test-saved">
      {words.saves} <Figure value={savedMinutes(test.minutesSaved)} unit={findWords.list.minutes} large />
    </span>
  );
}

/** Less than a minute is said with its tenth, so that it is not rounded to nothing. */
export const savedMinutes = (minutes: number): string =>
  minutes < 1 ? minutes.toFixed(1) : sayMinutes(minutes);

function EnterTest({ test }: { readonly test: NextTest }) {
  const view = useFind();
  const own = useOwnMeters();
  const { line, map } = view.open;
  if (!line) return null;
  return (
    <Button
      onClick={() => {
        const meter = meterNamed(own.usual, own);
        view.openReading(
          formsOfTest(test, { map, line, standing: view.standing, meter, picked: null }),
          null,
        );
      }}
    >
      {words.enter}
    </Button>
  );
}

function useNames(): TestNames {
  const { open, say, where } = useFind();
  return {
    nameOf: (id) => say(nameOf(open.map, id)),
    sayPiece: (fromMm, toMm) => whereLine(where({ fromMm, toMm })),
  };
}

/** What a test is about, for pointing: what is moved, or a short piece round each plug. */
function piecesOf(
  test: NextTest,
  nodes: readonly { readonly nodeId: string; readonly stationMm: number }[],
): readonly Piece[] {
  if (test.ranges.length > 0) return test.ranges;
  const halfMm = 30;
  return nodes
    .filter(({ nodeId }) => test.nodeIds.some((id) => id === nodeId))
    .map(({ stationMm }) => ({ fromMm: Math.max(0, stationMm - halfMm), toMm: stationMm + halfMm }));
}
