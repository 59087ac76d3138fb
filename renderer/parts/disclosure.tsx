import { type ReactNode, useId } from 'react';
import { Sign } from './sign.tsx';

/** A heading that opens and closes what is under it. */
export function Disclosure({
  label,
  open,
  onToggle,
  children,
}: {
  readonly label: ReactNode;
  readonly open: boolean;
  readonly onToggle: (open: boolean) => void;
  readonly children: ReactNode;
}) {
  const id = useId();
  return (
    <div className="disclosure">
      <button
        type="button"
        className="disclosure-head"
        aria-expanded={open}
        aria-controls={id}
        onClick={() => onToggle(!open)}
      >
        <Sign name={open ? 'up' : 'down'} size={18} />
        <span>{label}</span>
      </button>
      <div id={id} className="disclosure-body" hidden={!open}>
        {open ? children : null}
      </div>
    </div>
  );
}
