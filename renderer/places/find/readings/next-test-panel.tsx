import { type ReactNode, useState } from 'react';
import type { NextTest } from '#core/job/next-test.ts';
import { panelsOverPieces } from '#core/job/path-stretches.ts';
import { stepCautions } from '#core/job/step-cautions.ts';
import type { Circuit } from '#core/map/records.ts';
import type { NodeId } from '#core/quantity/id.ts';
import { findWords, grave, sayMinutes } from '../../../language/find.ts';
import { nameOf } from '../../../language/name-of.ts';
import { planSentence, readingWords } from '../../../language/readings.ts';
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
import { StepCautions } from '../step-cautions.tsx';
import { Contradictions } from './contradictions.tsx';
import { formCautions, noReadings } from './form-cautions.ts';
import { formsOfTest } from './forms-of-test.ts';
import { fuseNodes } from './lead.ts';
import { TestCautions, unreadTests } from './test-cautions.tsx';

const words = readingWords.next;

/** How many more tests are offered when the first one's whole text is open. */
const othersShown = 2;

/** Before anything more comes off: readings that cannot all hold, and the test that saves most minutes, or that none pays. */
export function NextTestPanel() {
  const { open } = useFind();
  const { ranking, line, thinking } = open;
  if (!ranking || !line || noReadings(line.circuit) || ranking.digPlan.length === 0) return null;
  const [best, ...others] = ranking.nextTests;
  return (
    <>
      <Contradictions />
      {best ? (
        <BestTest key={testKey(best)} test={best} others={others.slice(0, othersShown)} />
      ) : (
        <p className="next-test next-test-none quiet">{thinking ? words.looking : testListWords.none}</p>
      )}
    </>
  );
}

const testKey = ({ kind, nodeIds, sides, towardsId, ranges }: NextTest): string =>
  [kind, ...nodeIds, ...sides, towardsId, ...ranges.map(({ fromMm }) => fromMm)].join(' ');

function BestTest({ test, others }: { readonly test: NextTest; readonly others: readonly NextTest[] }) {
  const [whole, setWhole] = useState(false);
  const names = useNames();
  const expected = expectedSentence(test.expected);
  return (
    <section className="next-test" aria-label={words.label}>
      <TestStep test={test} title={<h2>{words.label}</h2>}>
        <Button weight="quiet" aria-expanded={whole} onClick={() => setWhole(!whole)}>
          {words.whole}
          <Sign name={whole ? 'up' : 'down'} size={18} />
        </Button>
      </TestStep>
      {whole ? (
        <div className="next-test-whole">
          {test.injection ? <p>{planSentence(test.injection)}</p> : null}
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
            <TestStep key={testKey(other)} test={other} />
          ))}
        </div>
      ) : null}
    </section>
  );
}

/**
 * One test as it is done: the instruction, the wire to find, how the car must stand, what to mind, and the
 * way to its reading. While a caution that can hurt is unread, that way opens its text instead.
 */
function TestStep({
  test,
  title,
  children,
}: {
  readonly test: NextTest;
  readonly title?: ReactNode;
  readonly children?: ReactNode;
}) {
  const view = useFind();
  const own = useOwnMeters();
  const names = useNames();
  const [cautionText, setCautionText] = useState(false);
  const [panelText, setPanelText] = useState(false);
  const { line, map } = view.open;
  if (!line) return null;
  const ground = {
    map,
    line,
    standing: view.standing,
    meter: meterNamed(own.usual, own),
    picked: null,
  };
  const forms = formsOfTest(test, ground);
  const [first] = forms;
  const cautions = first ? formCautions(first, line) : [];
  const panels = test.takeOff.map((id) => map.panels.get(id)).filter((panel) => panel !== undefined);
  const panelCautions = stepCautions(
    map,
    line.circuit,
    [...test.takeOff, ...panelsOverPieces(line, test.ranges)],
    test.state.apartNodeIds,
  );
  const enter = (): void => {
    if (panelCautions.some((each) => grave.has(each) && !view.cautionsRead.has(each))) setPanelText(true);
    else if (unreadTests(cautions, view.standing).length > 0) setCautionText(true);
    else view.openReading(forms, null);
  };
  const pieces = piecesOf(test, line.nodes);
  const other = test.other ? map.circuits.get(test.other.circuitId) : undefined;
  return (
    <div
      className="next-test-step"
      onPointerEnter={() => view.point(pieces)}
      onPointerLeave={() => view.point([])}
    >
      <header>
        {title}
        <Saved test={test} />
      </header>
      <p className="next-test-do">{testInstruction(test, names)}</p>
      {test.nodeIds.length > 0 ? <WireToFind nodeIds={test.nodeIds} circuit={line.circuit} /> : null}
      {test.other && other ? <WireToFind nodeIds={test.other.nodeIds} circuit={other} /> : null}
      <p className="next-test-state">{testSetup({ ...test, injection: null }, names)}</p>
      {panels.length > 0 ? <p>{testListWords.reach(test.takeOff.map(names.nameOf).join(', '))}</p> : null}
      <StepCautions cautions={panelCautions} shown={panelText} onShow={setPanelText} />
      <TestCautions cautions={cautions} state={test.state} shown={cautionText} onShow={setCautionText} />
      <div className="button-row">
        <Button onClick={enter}>{words.enter}</Button>
        {children}
      </div>
    </div>
  );
}

/** A wire's colours and size, and its pin at each place where a lead goes. */
function WireToFind({
  nodeIds,
  circuit,
}: {
  readonly nodeIds: readonly NodeId[];
  readonly circuit: Circuit;
}) {
  const { nameOf } = useNames();
  const { wireColours, conductorMm2, pins } = circuit;
  const places = nodeIds.map((nodeId) => {
    const pin = pins.find((each) => each.nodeId === nodeId)?.pin;
    return pin ? words.pin(nameOf(nodeId), pin) : words.noPin(nameOf(nodeId));
  });
  return (
    <p className="next-test-wire">
      <span className="quiet">{words.wire}</span>{' '}
      <b>
        {wireColours.join('/')} {conductorMm2}
      </b>{' '}
      {findWords.header.size}: {places.join('; ')}
    </p>
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

function useNames(): TestNames {
  const { open, say, where } = useFind();
  return {
    nameOf: (id) => say(nameOf(open.map, id)),
    sayPiece: (fromMm, toMm) => whereLine(where({ fromMm, toMm })),
    fuses: fuseNodes(open.line),
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
