import type { ButtonHTMLAttributes } from 'react';
import { Sign, type SignName } from './sign.tsx';

export interface IconButtonProps extends Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'children'> {
  /** What the button does, in words: its accessible name and its tip. */
  readonly label: string;
  readonly sign: SignName;
  readonly pressed?: boolean;
}

/** A square button with a drawn sign; 44 px. */
export function IconButton({ label, sign, pressed, className = '', type, ...rest }: IconButtonProps) {
  return (
    <button
      type={type ?? 'button'}
      className={`button icon-button ${className}`}
      aria-label={label}
      title={label}
      aria-pressed={pressed}
      {...rest}
    >
      <Sign name={sign} />
    </button>
  );
}
