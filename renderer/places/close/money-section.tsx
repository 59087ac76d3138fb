import { agreedLimit } from '#core/job/agreed-limit.ts';
import { type ClockKind, clockKinds } from '#core/job/closing-words.ts';
import { jobClock } from '#core/job/job-clock.ts';
import { jobStage } from '#core/job/job-stage.ts';
import { nextPlacesCost } from '#core/job/next-places-cost.ts';
import { clockWords, closeWords } from '../../language/close.ts';
import { sayMinutes, sayPercent } from '../../language/find.ts';
import { Button, Choice, Disclosure, Field, Figure, NumberField, Select } from '../../parts/index.ts';
import { useDraft } from '../../session/drafts.ts';
import { sayAmount, useShop } from '../../session/shop-settings.ts';
import { useNow } from '../../session/use-now.ts';
import { useFind } from '../find/find-context.ts';
import { optionsOf } from './options.ts';
import { Section } from './section.tsx';
import './money.css';

const words = closeWords.money;

const noMinutes: { readonly open: boolean; readonly kind: ClockKind; readonly minutes: number | null } = {
  open: false,
  kind: 'find',
  minutes: null,
};

const noAmount: {
  readonly measure: 'minutes' | 'amount';
  readonly adds: number | null;
  readonly by: string;
} = { measure: 'minutes', adds: null, by: '' };

/** Clocks of the bill, the limit with its extensions, and what the next three places would cost. */
export function MoneySection() {
  const { standing, session } = useFind();
  const clock = jobClock(standing, useNow());
  return (
    <Section number={6} title={closeWords.sections.money} done={null}>
      <ul className="clocks" aria-label={words.clocks}>
        {clockKinds.map((kind) => {
          const runs = clock.running?.clock === kind;
          return (
            <li key={kind} className={runs ? 'clock clock-runs' : 'clock'}>
              <Figure value={sayMinutes(clock.minutes[kind])} unit={closeWords.header.min} large />
              <Button
                large
                aria-pressed={runs}
                aria-label={words.clockFor(clockWords[kind])}
                onClick={() => session.add({ type: 'time', clock: kind, action: runs ? 'stop' : 'start' })}
              >
                {clockWords[kind]}
              </Button>
            </li>
          );
        })}
      </ul>
      <AdjustClock />
      <Agreed minutes={clock.totalMinutes} />
      <NextPlaces />
    </Section>
  );
}

function AdjustClock() {
  const { session, open: job } = useFind();
  const [{ open, kind, minutes }, change, drop] = useDraft(job.job.id, 'clock put right', noMinutes);
  return (
    <Disclosure label={words.adjust} open={open} onToggle={(opened) => change({ open: opened })}>
      <form
        className="close-row"
        onSubmit={(event) => {
          event.preventDefault();
          if (minutes === null || minutes === 0) return;
          session.add({ type: 'time', clock: kind, action: 'adjust', minutes });
          drop();
        }}
      >
        <Select
          label={words.clock}
          value={kind}
          options={optionsOf(clockWords)}
          onChange={(value) => change({ kind: value })}
        />
        <NumberField
          label={words.adjustBy}
          value={minutes}
          unit={closeWords.header.min}
          min={-10_000}
          max={10_000}
          onChange={(value) => change({ minutes: value })}
        />
        <Button type="submit" disabled={!minutes}>
          {words.adjustKeep}
        </Button>
      </form>
    </Disclosure>
  );
}

function Agreed({ minutes }: { readonly minutes: number }) {
  const { open, standing, session } = useFind();
  const { currency, hourlyRate } = useShop();
  const limit = agreedLimit(standing, minutes, hourlyRate);
  const isFirst = limit.stages.length === 0;
  const [{ measure, adds, by }, change] = useDraft(open.job.id, 'agreed', noAmount);
  const said = (kind: 'minutes' | 'amount', value: number): string =>
    kind === 'minutes' ? `${sayMinutes(value)} ${closeWords.header.min}` : sayAmount(value, currency);
  return (
    <div className="agreed">
      <h3>{words.agreed}</h3>
      {isFirst ? (
        <p className="quiet">{words.noLimit}</p>
      ) : (
        <ul className="plain-list">
          {limit.stages.map((stage) => (
            <li key={stage.id}>
              {stage.extension ? words.extension : words.limit}:{' '}
              {words.stage(said(stage.measure, stage.adds), stage.agreedBy)}
            </li>
          ))}
        </ul>
      )}
      <form
        className="close-row"
        onSubmit={(event) => {
          event.preventDefault();
          if (adds === null) return;
          session.add({ type: 'agreed', measure, adds, extension: !isFirst, agreedBy: by.trim(), note: '' });
          change({ adds: null });
        }}
      >
        <Choice
          label={words.measure}
          value={measure}
          options={optionsOf(words.measures)}
          onChange={(value) => change({ measure: value })}
        />
        <NumberField
          label={isFirst ? words.first : words.more}
          value={adds}
          unit={measure === 'minutes' ? closeWords.header.min : currency}
          min={1}
          max={1_000_000}
          onChange={(value) => change({ adds: value })}
        />
        <Field label={words.by} value={by} maxLength={200} onChange={(value) => change({ by: value })} />
        <Button type="submit" disabled={adds === null}>
          {isFirst ? words.keepFirst : words.keepMore}
        </Button>
      </form>
    </div>
  );
}

function NextPlaces() {
  const { open, standing } = useFind();
  const { currency, hourlyRate } = useShop();
  // A cause that waits for its proof or repair is not searched for any more.
  const stage = jobStage(standing);
  const isFound = stage === 'found' || stage === 'repaired';
  const plan = open.ranking?.digPlan ?? [];
  if (stage === 'closed') return null;
  const cost = nextPlacesCost(open.map, plan, 3, hourlyRate);
  return (
    <div className="next-places">
      <h3>{words.next}</h3>
      {isFound ? (
        <p className="quiet">{words.foundNow}</p>
      ) : cost.steps.length === 0 ? (
        <p className="quiet">{words.nothingNext}</p>
      ) : (
        <>
          <p>
            {words.nextLine(
              sayMinutes(cost.minutes),
              sayMinutes(cost.refitMinutes),
              sayPercent(cost.probability),
            )}
          </p>
          <p className={cost.amount === null ? 'quiet' : undefined}>
            {cost.amount === null ? words.noRate : words.nextAmount(sayAmount(cost.amount, currency))}
          </p>
        </>
      )}
    </div>
  );
}
