import { useEffect, useRef } from 'react';
import { IconButton } from './icon-button.tsx';

/** Every key of a place on one sheet. Escape or the cross closes it. */
export function KeyboardSheet({
  label,
  closeLabel,
  keys,
  onClose,
}: {
  readonly label: string;
  readonly closeLabel: string;
  readonly keys: readonly { readonly key: string; readonly does: string }[];
  readonly onClose: () => void;
}) {
  const sheet = useRef<HTMLElement>(null);
  useEffect(() => {
    const before = document.activeElement;
    sheet.current?.querySelector('button')?.focus();
    return () => {
      if (before instanceof HTMLElement) before.focus();
    };
  }, []);
  return (
    <section
      ref={sheet}
      className="keyboard-sheet"
      aria-label={label}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        onClose();
      }}
    >
      <header>
        <h2>{label}</h2>
        <IconButton label={closeLabel} sign="close" onClick={onClose} />
      </header>
      <dl>
        {keys.map((line) => (
          <div key={line.key}>
            <dt>
              <kbd>{line.key}</kbd>
            </dt>
            <dd>{line.does}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
