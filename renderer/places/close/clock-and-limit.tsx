import { agreedLimit } from '#core/job/agreed-limit.ts';
import { jobClock } from '#core/job/job-clock.ts';
import { clockWords, closeWords } from '../../language/close.ts';
import { sayMinutes } from '../../language/find.ts';
import { Button, Figure } from '../../parts/index.ts';
import { sayAmount, useShop } from '../../session/shop-settings.ts';
import { useNow } from '../../session/use-now.ts';
import { useFind } from '../find/find-context.ts';

const words = closeWords.header;

/** From this share of the limit on it is time to ask. Common practice, no source. */
const askAtShare = 0.8;

/** The running clock against the limit agreed: starts and stops finding, and says when to ask for more. */
export function ClockAndLimit() {
  const { standing, session } = useFind();
  const { currency, hourlyRate } = useShop();
  const clock = jobClock(standing, useNow());
  const limit = agreedLimit(standing, clock.totalMinutes, hourlyRate);
  const { running } = clock;
  const kind = running?.clock ?? 'find';
  const share = limit.shareUsed;
  const tone = share === null || share < askAtShare ? '' : share < 1 ? ' clock-near' : ' clock-over';
  return (
    <div className={`clock-and-limit${tone}`}>
      <Button
        aria-pressed={running !== null}
        onClick={() => session.add({ type: 'time', clock: kind, action: running ? 'stop' : 'start' })}
      >
        {closeWords.money.clockFor(clockWords[kind])}
      </Button>
      <p className="clock-spent">
        <Figure value={sayMinutes(clock.totalMinutes)} unit={words.min} />
        {limit.minutes === null && limit.amount === null ? null : (
          <span className="clock-limit">
            {' '}
            {closeWords.money.of}{' '}
            {limit.minutes === null
              ? sayAmount(limit.amount ?? 0, currency)
              : `${sayMinutes(limit.minutes)} ${words.min}`}
          </span>
        )}
      </p>
      {tone === '' ? null : (
        <span className="clock-ask" role="status">
          {tone === ' clock-over' ? closeWords.money.over : closeWords.money.near}
        </span>
      )}
    </div>
  );
}
