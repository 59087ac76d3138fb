import { type KeyboardEvent, type ReactNode, useId } from 'react';

/** A row of tabs over one shown page; arrow keys move between them. */
export function Tabs<T extends string>({
  label,
  shown,
  pages,
  onShow,
}: {
  readonly label: string;
  readonly shown: T;
  readonly pages: readonly { readonly key: T; readonly label: string; readonly content: ReactNode }[];
  readonly onShow: (key: T) => void;
}) {
  const id = useId();
  const index = pages.findIndex((page) => page.key === shown);
  const move = (event: KeyboardEvent): void => {
    const by = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (by === 0) return;
    event.preventDefault();
    const next = pages[(index + by + pages.length) % pages.length];
    if (!next) return;
    onShow(next.key);
    document.getElementById(`${id}-${next.key}`)?.focus();
  };
  return (
    <div className="tabs">
      <div className="tab-row" role="tablist" aria-label={label} onKeyDown={move}>
        {pages.map((page) => (
          <button
            key={page.key}
            type="button"
            role="tab"
            id={`${id}-${page.key}`}
            className="tab"
            aria-selected={page.key === shown}
            aria-controls={`${id}-page`}
            tabIndex={page.key === shown ? 0 : -1}
            onClick={() => onShow(page.key)}
          >
            {page.label}
          </button>
        ))}
      </div>
      <div className="tab-page" role="tabpanel" id={`${id}-page`} aria-labelledby={`${id}-${shown}`}>
        {pages[index]?.content}
      </div>
    </div>
  );
}
