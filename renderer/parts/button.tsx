import type { ButtonHTMLAttributes, ReactNode } from 'react';

export interface ButtonProps extends ButtonHTMLAttributes<HTMLButtonElement> {
  /** `main` is the one thing to do next; `plain` the rest; `quiet` has no frame. */
  readonly weight?: 'main' | 'plain' | 'quiet';
  /** 52 px high, for a hand that has just come from under the dash. */
  readonly large?: boolean;
  readonly children: ReactNode;
}

/** A button with words on it; at least 44 px high. */
export function Button({ weight = 'plain', large = false, className = '', type, ...rest }: ButtonProps) {
  return (
    <button
      type={type ?? 'button'}
      className={`button button-${weight}${large ? ' button-large' : ''} ${className}`}
      {...rest}
    />
  );
}
