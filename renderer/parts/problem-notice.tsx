import type { ReactNode } from 'react';
import type { Problem } from '#core/quantity/problem.ts';
import { problemDetails } from '../language/copy-details.ts';
import { problemSentence, type SaidProblem } from '../language/problems.ts';
import { CopyDetails } from './copy-details.tsx';
import { Notice } from './notice.tsx';

/** A problem in words, with what to do about it. */
export function ProblemNotice({
  problem,
  title,
  nameOf,
  said,
  actions,
}: {
  readonly problem: Problem;
  readonly title?: string;
  readonly nameOf?: (id: string) => string;
  /** Other words for it than the usual ones. */
  readonly said?: SaidProblem;
  readonly actions?: ReactNode;
}) {
  const { message, hint } = said ?? problemSentence(problem, nameOf);
  return (
    <Notice
      tone="failed"
      title={title ?? message}
      actions={
        <>
          {actions}
          <CopyDetails details={problemDetails(problem, new Date().toISOString())} />
        </>
      }
    >
      {title ? <p>{message}</p> : null}
      <p className="quiet">{hint}</p>
    </Notice>
  );
}
