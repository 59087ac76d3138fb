import type { ReactNode } from 'react';

/** The key to the marks on a drawing: each mark, and what it means. */
export function Key({
  label,
  entries,
}: {
  readonly label: string;
  readonly entries: readonly { readonly mark: ReactNode; readonly meaning: string }[];
}) {
  return (
    <section className="key" aria-label={label}>
      <h3>{label}</h3>
      <ul>
        {entries.map((entry) => (
          <li key={entry.meaning}>
            <span className="key-mark" aria-hidden="true">
              {entry.mark}
            </span>
            <span>{entry.meaning}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
