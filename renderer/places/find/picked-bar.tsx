import { findWords } from '../../language/find.ts';
import { whereLine } from '../../language/say-where.ts';
import { IconButton } from '../../parts/index.ts';
import { useFind } from './find-context.ts';
import { Verdict } from './verdict.tsx';
import { Where } from './where.tsx';

/** The stretch picked on the board or on the straight loom, with the same three answers. */
export function PickedBar() {
  const { picked, pick, where } = useFind();
  if (!picked) return null;
  const place = where(picked);
  return (
    <section className="picked" aria-label={findWords.verdict.picked}>
      <header>
        <div>
          <h2>{findWords.verdict.picked}</h2>
          <Where place={place} />
        </div>
        <IconButton label={findWords.verdict.letGo} sign="close" onClick={() => pick(null)} />
      </header>
      <Verdict pieces={[picked]} about={whereLine(place)} />
    </section>
  );
}
