import type { CauseShare } from '#core/chafe/cause.ts';
import { causeWords, hazardWords, heldWords, sayShare } from '../../../language/hazard.ts';
import type { LengthSystem } from '../../../language/say-length.ts';

/** A cause below this share is left out of a list that must stay short. */
const leastShown = 0.01;
const mostShown = 6;

/** Why a stretch is as likely to chafe as it is: how it is held and covered, then each cause with its share. */
export function ReasonList({
  causes,
  nameOf,
  lengths,
  most = mostShown,
}: {
  readonly causes: readonly CauseShare[];
  readonly nameOf: (id: string) => string;
  readonly lengths: LengthSystem;
  readonly most?: number;
}) {
  const shown = causes.filter(({ share }) => share >= leastShown).slice(0, most);
  const held = heldWords(causes, lengths);
  if (shown.length === 0) return <p className="quiet">{hazardWords.none}</p>;
  return (
    <div className="reason-list">
      {held ? <p>{held}</p> : null}
      <ul aria-label={hazardWords.reasons}>
        {shown.map((cause) => (
          <li key={`${cause.cause} ${cause.thing}`}>
            <span className="reason-share">{sayShare(cause.share)}</span>
            <span className="reason-bar" aria-hidden="true">
              <span style={{ width: `${cause.share * 100}%` }} />
            </span>
            <span className="reason-words">{causeWords(cause, nameOf, lengths)}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}
