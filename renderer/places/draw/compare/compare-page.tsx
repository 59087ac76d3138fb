import { useDeferredValue, useEffect, useMemo, useState } from 'react';
import { type ComparedThing, compareMaps, type MapComparison } from '#core/map/compare-maps.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { recordOf } from '#core/map/map-draft.ts';
import { emptyOverlay } from '../../../board/overlay.ts';
import { compareWords, recordFieldWords } from '../../../language/draw-compare.ts';
import { nameOf } from '../../../language/name-of.ts';
import { sayDrawnLength } from '../../../language/say-drawn-length.ts';
import type { LengthSystem } from '../../../language/say-length.ts';
import { ProblemNotice, Progress, Select } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';
import { boundsOfThings } from '../things-bounds.ts';
import './compare.css';
import { comparisonMarks } from './comparison-marks.ts';
import { firstFrom, type MapStateLine, notableStates } from './notable-states.ts';
import { sayState } from './say-state.ts';
import { useMapAt, useStates } from './use-states.ts';

const now = 'now';
/** Longer lists say how many more there are. */
const mostLines = 200;

/** Compares two states of the map: lists what differs, marks it on the board, and each line leads there. */
export function ComparePage() {
  const { map, session } = useDraw();
  const states = useStates(map.id, session);
  if (states.at === 'asking') return <Progress label={compareWords.listing} />;
  if (states.at === 'refused') return <ProblemNotice problem={states.problem} />;
  const from = firstFrom(states.value);
  if (!from) return <p>{compareWords.onlyOne}</p>;
  return <Chosen states={states.value} first={from} />;
}

function Chosen({
  states,
  first,
}: {
  readonly states: readonly MapStateLine[];
  readonly first: MapStateLine;
}) {
  const { map } = useDraw();
  const [from, setFrom] = useState(first.revision);
  const [to, setTo] = useState<number | typeof now>(now);
  const lines = useMemo(() => notableStates(states), [states]);
  const options = lines.map((state) => ({ value: String(state.revision), label: sayState(state) }));
  const before = useMapAt(map.id, from);
  const later = useMapAt(map.id, to === now ? null : to);
  const live = useDeferredValue(map);
  const turned = to !== now && to <= from;
  const refused = before?.at === 'refused' ? before : later?.at === 'refused' ? later : null;
  const after = to === now ? live : later?.at === 'here' ? later.value : null;
  return (
    <div className="compare">
      <p className="quiet">{compareWords.lead}</p>
      <Select
        label={compareWords.from}
        value={String(from)}
        options={options}
        onChange={(value) => setFrom(Number(value))}
      />
      <Select
        label={compareWords.to}
        value={String(to)}
        options={[{ value: now, label: compareWords.now }, ...options]}
        onChange={(value) => setTo(value === now ? now : Number(value))}
      />
      {turned ? <p role="alert">{compareWords.swap}</p> : null}
      {refused ? <ProblemNotice problem={refused.problem} /> : null}
      {!turned && !refused && before?.at === 'here' && after ? (
        <Differences before={before.value} after={after} />
      ) : null}
      {!turned && !refused && !(before?.at === 'here' && after) ? (
        <Progress label={compareWords.opening} />
      ) : null}
    </div>
  );
}

function Differences({ before, after }: { readonly before: MapDocument; readonly after: MapDocument }) {
  const { mark, lengths } = useDraw();
  const comparison = useMemo(() => compareMaps(before, after), [before, after]);
  const marks = useMemo(() => comparisonMarks(before, after, comparison), [before, after, comparison]);
  useEffect(() => {
    mark(marks);
    return () => mark(emptyOverlay);
  }, [mark, marks]);
  const { added, moved, changed, removed } = comparison;
  if (added.length + moved.length + changed.length + removed.length === 0) {
    return <p role="status">{compareWords.same}</p>;
  }
  const facts = {
    added: () => '',
    removed: () => '',
    moved: (thing: MapComparison['moved'][number]) => sayBy(thing.byMm, lengths),
    changed: (thing: MapComparison['changed'][number]) =>
      thing.fields.map((field) => recordFieldWords[field] ?? field).join(', '),
  };
  return (
    <>
      <p role="status">{compareWords.sum(added.length, moved.length, changed.length, removed.length)}</p>
      <p className="quiet">{compareWords.marked}</p>
      <Lines
        label={compareWords.lists.added}
        things={added}
        factOf={facts.added}
        before={before}
        after={after}
      />
      <Lines
        label={compareWords.lists.moved}
        things={moved}
        factOf={facts.moved}
        before={before}
        after={after}
      />
      <Lines
        label={compareWords.lists.changed}
        things={changed}
        factOf={facts.changed}
        before={before}
        after={after}
      />
      <Lines
        label={compareWords.lists.removed}
        things={removed}
        factOf={facts.removed}
        before={before}
        after={after}
      />
    </>
  );
}

function sayBy(byMm: number | null, lengths: LengthSystem): string {
  if (byMm === null) return '';
  const { text, unit } = sayDrawnLength(byMm, lengths);
  return `${text} ${unit}`;
}

/** One list of differences; each line leads to the thing, or to where it was. */
function Lines<T extends ComparedThing>({
  label,
  things,
  factOf,
  before,
  after,
}: {
  readonly label: string;
  readonly things: readonly T[];
  readonly factOf: (thing: T) => string;
  readonly before: MapDocument;
  readonly after: MapDocument;
}) {
  const { map, open, goTo, lookAt, session } = useDraw();
  if (things.length === 0) return null;
  const go = (thing: T): void => {
    if (thing.kind === 'details') session.select([]);
    else if (recordOf(map, thing.id)) goTo([thing.id]);
    else lookAt(boundsOfThings(recordOf(after, thing.id) ? after : before, [thing.id]));
  };
  const nameIn = (thing: T): string =>
    thing.kind === 'details'
      ? compareWords.details
      : nameOf(recordOf(after, thing.id) ? after : before, thing.id);
  return (
    <section aria-label={label}>
      <h2>
        {label} <span className="quiet">{things.length}</span>
      </h2>
      <ul className="list">
        {things.slice(0, mostLines).map((thing) => (
          <li key={thing.id} className="list-item">
            <button
              type="button"
              className="thing"
              aria-pressed={open.selection.includes(thing.id)}
              onClick={() => go(thing)}
            >
              <span>
                {nameIn(thing)}
                {factOf(thing) ? <span className="compare-fact quiet">{factOf(thing)}</span> : null}
              </span>
              <span className="quiet">{kindOf(thing)}</span>
            </button>
          </li>
        ))}
      </ul>
      {things.length > mostLines ? (
        <p className="quiet">{compareWords.more(things.length - mostLines)}</p>
      ) : null}
    </section>
  );
}

const kindOf = ({ kind }: ComparedThing): string =>
  kind in compareWords.kinds ? compareWords.kinds[kind as keyof typeof compareWords.kinds] : '';
