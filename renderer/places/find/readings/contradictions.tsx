import { readingWords } from '../../../language/readings.ts';
import { Button, Notice } from '../../../parts/index.ts';
import { useFind } from '../find-context.ts';
import { effectRanges, numberedReadings } from './numbered-readings.ts';
import { formOf } from './reading-form.ts';
import { readingLine } from './reading-line.ts';

const words = readingWords.contradiction;

/** Readings that cannot all hold, named, with the way to each; nothing where all agree. */
export function Contradictions() {
  const view = useFind();
  const { open, standing, point, openReading } = view;
  const { line, ranking } = open;
  const numbered = new Map(numberedReadings(standing).map((each) => [each.entry.id, each]));
  const effects = new Map(ranking?.readings.map((effect) => [effect.entryId, effect]));
  const said = (ranking?.contradictions ?? []).flatMap(({ entryIds, unless }) => {
    const readings = entryIds.flatMap((id) => numbered.get(id) ?? []).sort((a, b) => a.number - b.number);
    return readings.length === 0 ? [] : [{ readings, unless }];
  });
  if (said.length === 0) return null;
  return (
    <Notice title={words.title}>
      {said.map(({ readings, unless }) => {
        const numbers = readings.map(({ number }) => number);
        return (
          <div key={numbers.join(' ')} className="contradiction">
            <p>
              {words.which(listed(numbers))} {words.unless[unless]}
            </p>
            {line ? (
              <div className="button-row">
                {readings.map(({ number, entry }) => {
                  const effect = effects.get(entry.id);
                  const show = (): void => point(effect ? effectRanges(effect) : [], entry.id);
                  return (
                    <Button
                      key={entry.id}
                      title={readingLine(entry, view)}
                      onFocus={show}
                      onBlur={() => point([])}
                      onPointerEnter={show}
                      onPointerLeave={() => point([])}
                      onClick={() => openReading([formOf(entry, line)], entry.id)}
                    >
                      {words.goTo(number)}
                    </Button>
                  );
                })}
              </div>
            ) : null}
          </div>
        );
      })}
    </Notice>
  );
}

/** 1, 2 and 4. */
function listed(numbers: readonly number[]): string {
  const last = numbers.at(-1);
  const rest = numbers.slice(0, -1);
  return rest.length === 0 ? String(last) : `${rest.join(', ')} and ${last}`;
}
