import type { ReactNode } from 'react';

/** Words about what is pointed at, over the half of a board where the pointer is not. */
export function BoardCard({
  title,
  pointerRight,
  children,
}: {
  readonly title: string;
  /** The pointer is on the right half. */
  readonly pointerRight: boolean;
  readonly children: ReactNode;
}) {
  return (
    <div className="board-card" data-pointer={pointerRight ? 'right' : 'left'}>
      <p className="board-card-title">{title}</p>
      {children}
    </div>
  );
}
