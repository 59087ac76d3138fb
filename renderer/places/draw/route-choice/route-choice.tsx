import { useState } from 'react';
import { layCircuit } from '#core/map/commands/lay-circuit.ts';
import { traceCircuit } from '#core/map/commands/trace-circuit.ts';
import type { Circuit, PathStep } from '#core/map/records.ts';
import { compareText } from '#core/quantity/compare-text.ts';
import type { SegmentId } from '#core/quantity/id.ts';
import { nameOf } from '../../../language/name-of.ts';
import { routeWords } from '../../../language/route-choice.ts';
import { Button, Disclosure, Notice, Select } from '../../../parts/index.ts';
import type { TraceChoice } from '../../../tools/tool.ts';
import { choiceOf, passedEnds, traceThrough } from '../../../tools/trace/trace-choice.ts';
import { useDraw } from '../draw-context.ts';
import { OtherWays } from './other-ways.tsx';
import './route-choice.css';
import { StepLine } from './step-line.tsx';
import { turnedWay, waySteps } from './way-steps.ts';

/** The way a circuit takes, run by run, with what else it could take; every part of it can be changed. */
export function RouteChoice({ circuit }: { readonly circuit: Circuit }) {
  const { map, make } = useDraw();
  const [open, setOpen] = useState(false);
  const [others, setOthers] = useState(false);
  /** What was wished last, and the way it gave: once that is undone, the wish is gone too. */
  const [wishes, setWishes] = useState<{ readonly choice: TraceChoice; readonly way: string } | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const way = wayKey(circuit.path);
  const choice = choiceOf(wishes?.way === way ? wishes.choice : null, map, circuit);
  const [first, second] = circuit.ends;
  const fromNodeId = first.nodeId;
  const toNodeId = second.nodeId;
  if (fromNodeId === null || toNodeId === null) return <p className="quiet">{routeWords.untraced}</p>;

  const lay = (path: readonly PathStep[]): void => {
    setRefused(null);
    setWishes(null);
    make(layCircuit(map, { circuitId: circuit.id, path }), { label: 'edit.traceCircuit' });
  };
  const trace = (wished: TraceChoice, orElse: string | null): void => {
    const patch = traceCircuit(map, {
      circuitId: circuit.id,
      fromNodeId,
      toNodeId,
      viaNodeIds: wished.via,
      avoidSegmentIds: wished.avoid,
    });
    if (!patch.ok && patch.problem.code === 'no-path' && orElse) {
      setRefused(orElse);
      return;
    }
    setRefused(null);
    if (!make(patch, { label: 'edit.traceCircuit' }) || !patch.ok) return;
    const after = patch.value.changed.find(([, record]) => record.id === circuit.id)?.[1] as
      | Circuit
      | undefined;
    setWishes({ choice: wished, way: wayKey((after ?? circuit).path) });
  };
  const sendThrough = (segmentId: SegmentId): void => {
    const wished = traceThrough(map, circuit, choice, segmentId);
    if (wished) trace(wished, null);
    else setRefused(routeWords.noWayThrough(nameOf(map, segmentId)));
  };
  const steps = waySteps(map, circuit.path);
  const taken = new Set(steps.map(({ segment }) => segment.id));
  const elsewhere = [...map.segments.values()]
    .filter(({ id }) => !taken.has(id))
    .map(({ id }) => ({ value: id as string, label: nameOf(map, id) }))
    .sort((a, b) => compareText(a.label, b.label) || compareText(a.value, b.value));
  const wished = wishes?.way === way;

  return (
    <div className="route-choice">
      {refused ? <Notice tone="failed">{refused}</Notice> : null}
      <Disclosure label={routeWords.steps(steps.length)} open={open} onToggle={setOpen}>
        <p className="field-hint">{routeWords.stepHint}</p>
        <ol className="list">
          {steps.map((each, i) => (
            <StepLine
              key={each.segment.id}
              number={i + 1}
              step={each}
              last={i === steps.length - 1}
              onAvoid={() =>
                trace(
                  { ...choice, via: passedEnds(map, circuit), avoid: [...choice.avoid, each.segment.id] },
                  routeWords.noWayRound(nameOf(map, each.segment.id)),
                )
              }
              onEnd={() => lay(circuit.path.slice(0, i + 1))}
              onBegin={() => lay(circuit.path.slice(i))}
            />
          ))}
        </ol>
        {elsewhere.length > 0 ? (
          <Select
            label={routeWords.through}
            value=""
            options={[{ value: '', label: routeWords.chooseRun }, ...elsewhere]}
            onChange={(id) => {
              if (id !== '') sendThrough(id as SegmentId);
            }}
          />
        ) : null}
        <div className="button-row route-ends">
          <Button onClick={() => lay(turnedWay(circuit.path))}>{routeWords.turn}</Button>
          {wished ? (
            <Button onClick={() => trace({ ...choice, via: passedEnds(map, circuit), avoid: [] }, null)}>
              {routeWords.free}
            </Button>
          ) : null}
        </div>
      </Disclosure>
      <Disclosure label={routeWords.others} open={others} onToggle={setOthers}>
        <OtherWays circuit={circuit} fromNodeId={fromNodeId} toNodeId={toNodeId} />
      </Disclosure>
    </div>
  );
}

const wayKey = (path: readonly PathStep[]): string => path.map(({ segmentId }) => segmentId).join(' ');
