import { useState } from 'react';
import { type NodeKind, nodeKinds } from '#core/map/kinds.ts';
import { markWords } from '../language/marks.ts';
import { nodeKindWords, words } from '../language/words.ts';
import { Button, Key } from '../parts/index.ts';
import type { Theme } from '../theme/tokens.ts';
import { MarkPicture } from './mark-picture.tsx';
import {
  cleanSample,
  clipSample,
  damagedSample,
  foundSample,
  likelihoodSample,
  type MarkSample,
  nodeSample,
  panelSample,
  rubSpotSample,
  runSample,
  uncheckedRunSample,
} from './mark-samples.ts';

const drawn: readonly (readonly [MarkSample, string])[] = [
  [runSample, markWords.run],
  [uncheckedRunSample, markWords.unchecked],
  [clipSample(false), markWords.clip],
  [clipSample(true), markWords.clipMissing],
  [rubSpotSample(1), markWords.rubSpotSlight],
  [rubSpotSample(3), markWords.rubSpotSevere],
  [panelSample(false), markWords.panel],
  ...nodeKinds.map((kind: NodeKind) => [nodeSample(kind), nodeKindWords[kind]] as const),
];

const judged: readonly (readonly [MarkSample, string])[] = [
  [likelihoodSample, markWords.likelihood],
  [cleanSample, markWords.clean],
  [damagedSample, markWords.damaged],
  [foundSample, markWords.found],
  [panelSample(true), markWords.panelOff],
];

/** The key to the marks, opened from the board. With `withJob` it also explains what a job adds. */
export function MarksKey({ theme, withJob }: { readonly theme: Theme; readonly withJob: boolean }) {
  const [open, setOpen] = useState(false);
  const entries = [...(withJob ? judged : []), ...drawn].map(([sample, meaning]) => ({
    mark: <MarkPicture sample={sample} theme={theme} />,
    meaning,
  }));
  return (
    <div className="marks-key" onPointerDown={(event) => event.stopPropagation()}>
      {open ? (
        <div className="marks-key-sheet">
          <Key label={words.key} entries={entries} />
        </div>
      ) : null}
      <Button weight="plain" aria-expanded={open} onClick={() => setOpen(!open)}>
        {open ? markWords.closeKey : words.key}
      </Button>
    </div>
  );
}
