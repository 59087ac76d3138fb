import { useState } from 'react';
import { findWords, warningSentence } from '../../language/find.ts';
import { nameOf } from '../../language/name-of.ts';
import { whereLine } from '../../language/say-where.ts';
import { Disclosure, Notice } from '../../parts/index.ts';
import { useFind } from './find-context.ts';

/** What to know before trusting the order. What can hurt stands open; the rest opens on demand. */
export function Warnings() {
  const view = useFind();
  const [open, setOpen] = useState(false);
  const warnings = view.open.ranking?.warnings ?? [];
  const duty = view.open.line?.circuit.duty;
  const sentences = [
    ...new Set(
      warnings
        .map((warning) =>
          warningSentence(
            warning,
            (id) => view.say(nameOf(view.open.map, id)),
            (fromMm, toMm) => whereLine(view.where({ fromMm, toMm })),
          ),
        )
        .filter((sentence) => sentence !== null),
    ),
  ];
  return (
    <>
      {duty === 'restraint' ? (
        <Notice tone="caution" sign="airbag" title={findWords.restraint.title}>
          {findWords.restraint.words}
        </Notice>
      ) : null}
      {duty === 'high-voltage' ? (
        <Notice tone="caution" sign="voltage" title={findWords.highVoltage.title}>
          {findWords.highVoltage.words}
        </Notice>
      ) : null}
      {sentences.length > 0 ? (
        <Disclosure label={findWords.warnings(sentences.length)} open={open} onToggle={setOpen}>
          <ul className="warning-list">
            {sentences.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </Disclosure>
      ) : null}
    </>
  );
}
