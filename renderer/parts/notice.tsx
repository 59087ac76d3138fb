import type { ReactNode } from 'react';
import { Sign, type SignName } from './sign.tsx';

/** Something to know, in place: plain, a caution, or a thing that went wrong. */
export function Notice({
  tone = 'plain',
  sign,
  title,
  children,
  actions,
}: {
  readonly tone?: 'plain' | 'caution' | 'failed';
  readonly sign?: SignName;
  readonly title?: string;
  readonly children?: ReactNode;
  readonly actions?: ReactNode;
}) {
  return (
    <div className={`notice notice-${tone}`} role={tone === 'failed' ? 'alert' : 'note'}>
      {sign ? <Sign name={sign} size={26} /> : null}
      <div className="notice-words">
        {title ? <p className="notice-title">{title}</p> : null}
        {children ? <div>{children}</div> : null}
        {actions ? <div className="button-row">{actions}</div> : null}
      </div>
    </div>
  );
}
