import { type ReactNode, useId } from 'react';
import { closeWords } from '../../language/close.ts';
import { Sign } from '../../parts/index.ts';

/** One step of the close, with whether it is done. */
export function Section({
  number,
  title,
  done,
  children,
}: {
  readonly number: number;
  readonly title: string;
  /** Null for steps that are never done for good. */
  readonly done: boolean | null;
  readonly children: ReactNode;
}) {
  const id = useId();
  return (
    <section className={done ? 'close-section close-section-done' : 'close-section'} aria-labelledby={id}>
      <h2 id={id}>
        <span className="close-number">{done ? <Sign name="tick" size={20} /> : number}</span>
        {title}
        {done === null ? null : (
          <span className="only-read-aloud">, {done ? closeWords.done : closeWords.open}</span>
        )}
      </h2>
      {children}
    </section>
  );
}
