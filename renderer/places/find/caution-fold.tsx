import { type ReactNode, useId } from 'react';
import { findWords } from '../../language/find.ts';
import { Sign, type SignName } from '../../parts/index.ts';

/** One caution in a few words. */
export interface CautionLine {
  readonly key: string;
  readonly sign: SignName;
  readonly words: ReactNode;
}

/** Cautions in a few words each; pressing them opens the whole text. */
export function CautionFold({
  lines,
  shown,
  onShow,
  children,
}: {
  readonly lines: readonly CautionLine[];
  /** Whether the whole text stands open. */
  readonly shown: boolean;
  readonly onShow: (shown: boolean) => void;
  readonly children: ReactNode;
}) {
  const id = useId();
  return (
    <>
      <button
        type="button"
        className="step-cautions-head"
        aria-expanded={shown}
        aria-controls={id}
        onClick={() => onShow(!shown)}
      >
        <span className="step-cautions-lines">
          {lines.map(({ key, sign, words }) => (
            <span key={key} className="step-caution">
              <Sign name={sign} size={18} />
              <span>{words}</span>
            </span>
          ))}
        </span>
        <span className="step-cautions-open">
          <span className="only-read-aloud">{findWords.caution.whole}</span>
          <Sign name={shown ? 'up' : 'down'} size={18} />
        </span>
      </button>
      <div id={id} hidden={!shown} className="step-cautions-text">
        {shown ? children : null}
      </div>
    </>
  );
}
