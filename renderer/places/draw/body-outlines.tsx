import { useState } from 'react';
import { starterWords } from '../../language/draw-first.ts';
import { Disclosure } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';
import { StarterForm } from './starter-form.tsx';

/** The outlines of a measured body for a map that has none yet, also once a picture lies under it. */
export function BodyOutlines() {
  const { map } = useDraw();
  const [open, setOpen] = useState(false);
  if (map.outlines.size > 0) return null;
  return (
    <Disclosure label={starterWords.again} open={open} onToggle={setOpen}>
      <StarterForm />
    </Disclosure>
  );
}
