import type { CircuitId } from '#core/quantity/id.ts';
import { findWords, sayPercent } from '../../language/find.ts';
import { nameOf } from '../../language/name-of.ts';
import { problemSentence } from '../../language/problems.ts';
import { wishWords } from '../../language/wishes.ts';
import { Button, Notice } from '../../parts/index.ts';
import { useFind } from './find-context.ts';
import { intakeOf } from './intake-of.ts';

/** Too little is known to rank: says what is missing and offers the way to it. */
export function NothingToRank({ onOpenMap }: { readonly onOpenMap: () => void }) {
  const view = useFind();
  const { rankProblem, ranking, map, job } = view.open;
  if (job.circuitId === null) {
    const circuits = [...map.circuits.values()].sort((a, b) => a.order - b.order);
    const choose = (circuitId: CircuitId): void => {
      void view.session.changeIntake({
        ...intakeOf(job),
        circuitId,
        alsoFailingCircuitIds: job.alsoFailingCircuitIds.filter((id) => id !== circuitId),
        workingCircuitIds: job.workingCircuitIds.filter((id) => id !== circuitId),
      });
    };
    return (
      <section className="too-little" aria-label={findWords.none.title}>
        <Notice title={findWords.none.title}>{findWords.none.noCircuit}</Notice>
        <ul className="circuit-choice" aria-label={findWords.none.chooseCircuit}>
          {circuits.map((circuit) => (
            <li key={circuit.id}>
              <Button onClick={() => choose(circuit.id)}>{circuit.name}</Button>
            </li>
          ))}
        </ul>
        <Button onClick={onOpenMap}>{findWords.none.openMap}</Button>
      </section>
    );
  }
  if (rankProblem) {
    const said = problemSentence(rankProblem, (id) => view.say(nameOf(map, id)));
    return (
      <section className="too-little" aria-label={findWords.none.title}>
        <Notice
          title={findWords.none.title}
          actions={<Button onClick={onOpenMap}>{findWords.none.openMap}</Button>}
        >
          <p>{said.message}</p>
          <p className="quiet">{said.hint}</p>
        </Notice>
      </section>
    );
  }
  if (ranking?.timeBox) return null;
  if (ranking && ranking.digPlan.length === 0 && (ranking.chanceLeftOut ?? 0) > 0) {
    return (
      <Notice title={wishWords.stayOn.title}>
        {wishWords.leftOut(sayPercent(ranking.chanceLeftOut ?? 0))} {wishWords.stayOn.hint}
      </Notice>
    );
  }
  if (ranking && ranking.digPlan.length === 0) {
    return <Notice title={findWords.none.title}>{findWords.none.allSeen}</Notice>;
  }
  return null;
}
