import { hazardWords, sayShare } from '../../../language/hazard.ts';

const words = hazardWords.whatIf;
/** Less than this either way is not worth a word. */
const leastShare = 0.005;

/** A run's hazard before and after a change, as two bars and a sentence. */
export function BeforeAfter({
  before,
  after,
  ofMap,
}: {
  readonly before: number;
  readonly after: number;
  /** The run's share of the whole map's hazard. */
  readonly ofMap: number;
}) {
  const ratio = before > 0 ? after / before : 1;
  const fall = 1 - ratio;
  const most = Math.max(1, ratio);
  const bars = [
    { label: words.before, share: 1 },
    { label: words.after, share: ratio },
  ];
  return (
    <div className="before-after" role="status" data-falls-by={fall}>
      {bars.map(({ label, share }) => (
        <div key={label} className="before-after-line">
          <span>{label}</span>
          <span className="reason-bar" aria-hidden="true">
            <span style={{ width: `${(share / most) * 100}%` }} />
          </span>
          <span className="reason-share">{sayShare(share)}</span>
        </div>
      ))}
      <p>
        {fall >= leastShare ? `${words.falls(fall)} ${words.ofMap(fall * ofMap)}` : null}
        {fall <= -leastShare ? words.rises(-fall) : null}
        {Math.abs(fall) < leastShare ? words.same : null}
      </p>
    </div>
  );
}
