import type { ReactNode } from 'react';

/** A ruled list with a heading; `empty` is said when there is nothing in it. */
export function List<T>({
  label,
  items,
  keyOf,
  empty,
  children,
  ordered = false,
}: {
  readonly label: string;
  readonly items: readonly T[];
  readonly keyOf: (item: T) => string;
  readonly empty?: ReactNode;
  readonly children: (item: T, index: number) => ReactNode;
  readonly ordered?: boolean;
}) {
  if (items.length === 0) return <div className="list-empty quiet">{empty}</div>;
  const Tag = ordered ? 'ol' : 'ul';
  return (
    <Tag className="list" aria-label={label}>
      {items.map((item, index) => (
        <li key={keyOf(item)} className="list-item">
          {children(item, index)}
        </li>
      ))}
    </Tag>
  );
}
