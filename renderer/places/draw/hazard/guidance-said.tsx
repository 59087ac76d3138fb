import { useState } from 'react';
import { guidanceFlags } from '#core/chafe/guidance-flags.ts';
import type { Segment } from '#core/map/records.ts';
import { guidanceSentence, guidanceWords } from '../../../language/guidance.ts';
import { nameOf } from '../../../language/name-of.ts';
import { saySmallLength } from '../../../language/say-length.ts';
import { Disclosure } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';
import './guidance.css';

/** Where a run lies outside published aircraft guidance, each with the paragraph it rests on; nothing where it does not. */
export function GuidanceSaid({ segment }: { readonly segment: Segment }) {
  const { map, lengths } = useDraw();
  const [open, setOpen] = useState(false);
  const flags = guidanceFlags(map, segment);
  if (flags.length === 0) return null;
  const from = nameOf(map, segment.fromNodeId);
  return (
    <Disclosure label={guidanceWords.title(flags.length)} open={open} onToggle={setOpen}>
      <ul className="guidance">
        {flags.map((flag) => {
          const place = flag.atMm === null ? null : saySmallLength(flag.atMm, lengths);
          return (
            <li key={`${flag.code} ${flag.thing} ${flag.atMm}`}>
              {guidanceSentence(flag, (id) => nameOf(map, id), lengths)}{' '}
              <span className="quiet">
                {place ? `${guidanceWords.at(`${place.value} ${place.unit}`, from)}; ` : ''}
                {guidanceWords.source(flag.code)}
              </span>
            </li>
          );
        })}
      </ul>
      <p className="field-hint">{guidanceWords.hint}</p>
    </Disclosure>
  );
}
