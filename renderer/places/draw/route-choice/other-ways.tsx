import { useEffect, useMemo } from 'react';
import { layCircuit } from '#core/map/commands/lay-circuit.ts';
import type { Circuit, PathStep } from '#core/map/records.ts';
import { type TracedWay, traceWays, wayLengthMm } from '#core/map/trace-ways.ts';
import type { NodeId } from '#core/quantity/id.ts';
import { nameOf } from '../../../language/name-of.ts';
import { routeWords } from '../../../language/route-choice.ts';
import { sayDrawnLength } from '../../../language/say-drawn-length.ts';
import { Figure } from '../../../parts/index.ts';
import { passedEnds } from '../../../tools/trace/trace-choice.ts';
import { useDraw } from '../draw-context.ts';
import { runsApart } from './way-steps.ts';

/** As many ways as a person compares. */
const mostWays = 5;

/** The shortest ways between a circuit's ends; the board shows the one pointed at, a press takes it. */
export function OtherWays({
  circuit,
  fromNodeId,
  toNodeId,
}: {
  readonly circuit: Circuit;
  readonly fromNodeId: NodeId;
  readonly toNodeId: NodeId;
}) {
  const { map, make, session } = useDraw();
  const ways = useMemo(() => {
    const through = passedEnds(map, circuit);
    const traced = traceWays(map, { fromNodeId, toNodeId, through }, mostWays);
    return traced.ok ? traced.value : [];
  }, [map, circuit, fromNodeId, toNodeId]);
  const nowMm = wayLengthMm(map, circuit.path);
  const laid = (path: readonly PathStep[]) => layCircuit(map, { circuitId: circuit.id, path });
  const show = (path: readonly PathStep[] | null): void => {
    const patch = path ? laid(path) : null;
    session.preview(patch?.ok ? patch.value : null);
  };
  // A way shown while the list goes away must not stay on the board.
  useEffect(() => () => session.preview(null), [session]);
  if (ways.length < 2 && ways.every(({ path }) => isSame(path, circuit.path))) {
    return <p className="quiet">{routeWords.othersNone}</p>;
  }
  return (
    <ul className="list" aria-label={routeWords.others}>
      {ways.map((way, i) => {
        const taken = isSame(way.path, circuit.path);
        return (
          <li key={way.path.map(({ segmentId }) => segmentId).join(' ')} className="list-item">
            <button
              type="button"
              className="way"
              aria-pressed={taken}
              onPointerEnter={() => show(way.path)}
              onPointerLeave={() => show(null)}
              onFocus={() => show(way.path)}
              onBlur={() => show(null)}
              onClick={() => {
                if (!taken) make(laid(way.path), { label: 'edit.traceCircuit' });
              }}
            >
              <WayWords number={i + 1} way={way} taken={taken} circuit={circuit} nowMm={nowMm} />
            </button>
          </li>
        );
      })}
    </ul>
  );
}

const isSame = (one: readonly PathStep[], other: readonly PathStep[]): boolean =>
  one.length === other.length && one.every(({ segmentId }, i) => segmentId === other[i]?.segmentId);

/** A way as its length and what it passes that the present way does not. */
function WayWords({
  number,
  way,
  taken,
  circuit,
  nowMm,
}: {
  readonly number: number;
  readonly way: TracedWay;
  readonly taken: boolean;
  readonly circuit: Circuit;
  readonly nowMm: number;
}) {
  const { map, lengths } = useDraw();
  const said = sayDrawnLength(way.lengthMm, lengths);
  const byMm = way.lengthMm - nowMm;
  const names = (steps: readonly PathStep[]) => steps.map(({ segmentId }) => nameOf(map, segmentId));
  const own = names(runsApart(way.path, circuit.path));
  const left = names(runsApart(circuit.path, way.path));
  const against =
    Math.abs(byMm) < 0.5
      ? routeWords.equal
      : byMm > 0
        ? routeWords.longer(byMm, lengths)
        : routeWords.shorter(-byMm, lengths);
  return (
    <>
      <span className="way-head">
        <span>{routeWords.way(number)}</span>
        <Figure value={said.text} unit={said.unit} />
      </span>
      <span className="quiet">
        {taken ? routeWords.now : against}
        {own.length > 0 ? `, ${routeWords.passes(own)}` : ''}
        {left.length > 0 ? ` ${routeWords.insteadOf(left)}` : ''}
      </span>
    </>
  );
}
