import { useState } from 'react';
import { stepCautions } from '#core/job/step-cautions.ts';
import { trimOverLook } from '#core/job/trim-over-look.ts';
import { findWords } from '../../language/find.ts';
import { whereLine } from '../../language/say-where.ts';
import { IconButton } from '../../parts/index.ts';
import { useFind } from './find-context.ts';
import { StepCautions } from './step-cautions.tsx';
import { Verdict } from './verdict.tsx';
import { Where } from './where.tsx';

/** The stretch picked on the board or on the straight loom, with the same three answers. */
export function PickedBar() {
  const { open, standing, picked, pick, where } = useFind();
  const [text, setText] = useState(false);
  const { map, line } = open;
  if (!picked || !line) return null;
  const place = where(picked);
  const trim = trimOverLook(map, line, [picked], standing);
  const cautions = stepCautions(map, line.circuit, trim, []);
  return (
    <section className="picked" aria-label={findWords.verdict.picked}>
      <header>
        <div>
          <h2>{findWords.verdict.picked}</h2>
          <Where place={place} />
        </div>
        <IconButton label={findWords.verdict.letGo} sign="close" onClick={() => pick(null)} />
      </header>
      <StepCautions cautions={cautions} shown={text} onShow={setText} />
      <Verdict pieces={[picked]} trim={trim} about={whereLine(place)} />
    </section>
  );
}
