import { useState } from 'react';
import { findWords, warningSentence } from '../../language/find.ts';
import { nameOf } from '../../language/name-of.ts';
import { whereLine } from '../../language/say-where.ts';
import { Disclosure, Notice } from '../../parts/index.ts';
import { useFind } from './find-context.ts';

/** A circuit of a kind that can hurt: said before anything else. */
export function DutyNotice() {
  const duty = useFind().open.line?.circuit.duty;
  if (duty === 'restraint') {
    return (
      <Notice tone="caution" sign="airbag" title={findWords.restraint.title}>
        {findWords.restraint.words}
      </Notice>
    );
  }
  if (duty === 'high-voltage') {
    return (
      <Notice tone="caution" sign="voltage" title={findWords.highVoltage.title}>
        {findWords.highVoltage.words}
      </Notice>
    );
  }
  return null;
}

/** What else to know before trusting the order; opens on demand. */
export function Warnings() {
  const view = useFind();
  const [open, setOpen] = useState(false);
  const warnings = view.open.ranking?.warnings ?? [];
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
  if (sentences.length === 0) return null;
  return (
    <Disclosure label={findWords.warnings(sentences.length)} open={open} onToggle={setOpen}>
      <ul className="warning-list">
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </Disclosure>
  );
}
