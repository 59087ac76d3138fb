import type { FaultClass } from '#core/map/kinds.ts';
import { findWords, sayPercent } from '../../language/find.ts';
import { faultClassWords } from '../../language/words.ts';
import { Figure } from '../../parts/index.ts';
import { useFind } from './find-context.ts';

type Kind = FaultClass | 'component' | 'none-of-these';

/** Kinds less likely than this are left out of the words, though never out of the bar. */
const leastSaid = 0.01;

/** The kinds by how likely each is, likeliest first; equal ones by name, so that nothing jumps about. */
export function kindsByChance(
  classes: Readonly<Record<Kind, number>>,
): readonly { readonly kind: Kind; readonly chance: number }[] {
  return (Object.keys(classes) as Kind[])
    .map((kind) => ({ kind, chance: classes[kind] }))
    .sort((a, b) => b.chance - a.chance || (a.kind < b.kind ? -1 : 1));
}

/** What kind of fault it is: one bar cut by chance, and the same in figures. */
export function ClassBar() {
  const { open } = useFind();
  const { ranking } = open;
  const kinds = ranking ? kindsByChance(ranking.posterior.classes) : [];
  return (
    <section className="class-bar" aria-label={findWords.classes}>
      <div className="class-bar-strip" aria-hidden="true">
        {kinds.map(({ kind, chance }, index) => (
          <span
            key={kind}
            className="class-bar-part"
            style={{ flexGrow: chance, background: `var(--accent-${Math.max(1, 7 - 2 * index)})` }}
          />
        ))}
      </div>
      <ul className="class-bar-words">
        {kinds
          .filter(({ chance }) => chance >= leastSaid)
          .map(({ kind, chance }) => (
            <li key={kind}>
              {faultClassWords[kind]} <Figure value={sayPercent(chance)} unit={findWords.list.percent} />
            </li>
          ))}
      </ul>
    </section>
  );
}
