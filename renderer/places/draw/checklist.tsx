import { type ReadinessItem, readyForJob } from '#core/map/readiness.ts';
import { drawWords, readinessWords } from '../../language/draw.ts';
import { nameOf } from '../../language/name-of.ts';
import { Sign } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';

/** What the map still lacks, counting down to ready for a job; each line leads to the things it means. */
export function Checklist({ items }: { readonly items: readonly ReadinessItem[] }) {
  const { map, goTo } = useDraw();
  const needed = items.filter((item) => item.necessary && !item.done).length;
  const better = items.filter((item) => !item.necessary && !item.done).length;
  return (
    <div className="checklist">
      <p className="checklist-head" aria-live="polite">
        {readyForJob(items) ? drawWords.ready : drawWords.readyLeft(needed)}
      </p>
      {better > 0 ? <p className="quiet">{drawWords.better(better)}</p> : null}
      <ul>
        {items.map((item) => (
          <li key={item.code} data-ready={item.code} data-done={item.done} data-idle={item.idle}>
            <span className="checklist-mark">
              {item.done && !item.idle ? <Sign name="tick" size={20} /> : null}
            </span>
            <div>
              {item.things.length > 0 ? (
                <button type="button" className="checklist-go" onClick={() => goTo(item.things)}>
                  {readinessWords[item.code]}
                </button>
              ) : (
                <p>{readinessWords[item.code]}</p>
              )}
              {item.things.length > 0 ? (
                <p className="quiet checklist-things">
                  {item.things
                    .slice(0, 3)
                    .map((id) => nameOf(map, id))
                    .join(', ')}
                  {item.things.length > 3 ? ` + ${item.things.length - 3}` : ''}
                </p>
              ) : null}
            </div>
            <span className="checklist-need">
              {item.idle
                ? drawWords.nothingYet
                : item.done
                  ? drawWords.done
                  : item.necessary
                    ? drawWords.needed
                    : drawWords.helps}
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}
