import { sinceSearch } from '#core/job/job-stage.ts';
import { findProof } from '#core/job/proved-find.ts';
import { shownAfterRepair } from '#core/job/shown-after-repair.ts';
import { isLookOnly } from '#core/map/kinds.ts';
import { closeWords, findProofWords } from '../../language/close.ts';
import { findWords } from '../../language/find.ts';
import { nameOf } from '../../language/name-of.ts';
import { whereLine } from '../../language/say-where.ts';
import { Button, Sign } from '../../parts/index.ts';
import type { Piece } from '../../straight/straight-picture.ts';
import { closeHash } from '../close/close-page.ts';
import { SearchOn } from '../close/search-on.tsx';
import { JobProposals } from '../proposals/job-proposals.tsx';
import { useFind } from './find-context.ts';
import { FoundPart } from './found-part.tsx';
import { FoundPlace } from './found-place.tsx';
import { Where } from './where.tsx';

const words = findWords.found;

/** The search is over: where the cause was found, how far it is proved, and what comes next. */
export function FoundPanel({
  pieces,
  entryId,
  onAnother,
}: {
  readonly pieces: readonly Piece[];
  readonly entryId: `entry:${string}`;
  readonly onAnother: () => void;
}) {
  const { where, session, open, standing, say } = useFind();
  const look = standing.find(({ id }) => id === entryId);
  const part = look?.type === 'inspection' ? look.partNodeId : undefined;
  const cause = sinceSearch(standing, 'finding').findLast(({ result }) => result === 'proved-cause');
  const proof = cause ? findProof(standing, cause.id, isLookOnly(open.line?.circuit.duty)) : 'not-given';
  const title = findProofWords[proof];
  const shown = open.line ? shownAfterRepair(open.map, open.line, standing) : [];
  return (
    <section className="found" aria-label={title}>
      <header>
        <Sign name="ring" size={34} />
        <div>
          <h2>{title}</h2>
          {part ? <p>{closeWords.found.inPart(say(nameOf(open.map, part)))}</p> : null}
          {(part ? [] : pieces.map(where)).map((place) => (
            <p key={whereLine(place)}>
              <Where place={place} />
            </p>
          ))}
        </div>
      </header>
      {shown.length > 0 ? <SearchOn readings={shown} /> : null}
      <FoundPart entryId={entryId} />
      {part ? null : <FoundPlace pieces={pieces} entryId={entryId} />}
      <JobProposals />
      <h3>{words.next}</h3>
      <ol className="found-steps">
        {(part ? words.stepsInPart : words.steps).map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <div className="button-row">
        <a className="button button-main button-large" href={closeHash(open.job.id)}>
          {closeWords.header.toClose}
        </a>
        <Button large onClick={onAnother}>
          {words.another}
        </Button>
        <Button large onClick={() => session.takeBack(entryId)}>
          {words.back}
        </Button>
      </div>
    </section>
  );
}
