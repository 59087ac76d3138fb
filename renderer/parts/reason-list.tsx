import type { CauseShare } from '#core/chafe/cause.ts';
import { causeWords, hazardWords, heldWords, sayShare, whyLine } from '../language/hazard.ts';
import type { LengthSystem } from '../language/say-length.ts';

/** A cause below this share is left out of a list that must stay short. */
const leastShown = 0.01;
/** The same where room is dear. */
const leastInRows = 0.1;
const mostShown = 6;

/**
 * Why a stretch is as likely to chafe as it is: how it is held and covered, then each cause with its share. As
 * bars beside a drawing, as rows where room is dear, or as one line with the largest causes alone.
 */
export function ReasonList({
  causes,
  nameOf,
  lengths,
  most = mostShown,
  as = 'bars',
}: {
  readonly causes: readonly CauseShare[];
  readonly nameOf: (id: string) => string;
  readonly lengths: LengthSystem;
  readonly most?: number;
  readonly as?: 'bars' | 'rows' | 'line';
}) {
  if (as === 'line') {
    const line = whyLine(causes, nameOf, lengths);
    return line === '' ? null : <p className="reason-line">{line}</p>;
  }
  const least = as === 'rows' ? leastInRows : leastShown;
  const shown = causes.filter(({ share }) => share >= least).slice(0, most);
  const held = heldWords(causes, lengths);
  if (shown.length === 0) return <p className="quiet">{hazardWords.none}</p>;
  return (
    <div className={`reason-list reason-${as}`}>
      {held ? <p>{held}</p> : null}
      <ul aria-label={hazardWords.reasons}>
        {shown.map((cause) => (
          <li key={`${cause.cause} ${cause.thing}`}>
            <span className="reason-share">{sayShare(cause.share)}</span>
            {as === 'bars' ? (
              <span className="reason-bar" aria-hidden="true">
                <span style={{ width: `${cause.share * 100}%` }} />
              </span>
            ) : null}
            <span className="reason-words">{causeWords(cause, nameOf, lengths)}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}
