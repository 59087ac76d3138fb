import { useState } from 'react';
import { copyWords } from '../language/copy-details.ts';
import { Button } from './button.tsx';

/** Puts the facts of a trouble on the clipboard, to be sent to whoever can help. */
export function CopyDetails({ details }: { readonly details: string }) {
  const [done, setDone] = useState<boolean | null>(null);
  return (
    <Button weight="quiet" onClick={() => setDone(copyText(details))}>
      {done === null ? copyWords.copy : done ? copyWords.copied : copyWords.refused}
    </Button>
  );
}

/** Copies through the page's own copy event, which needs no leave as writing to the clipboard would. */
function copyText(text: string): boolean {
  let carried = false;
  const carry = (event: ClipboardEvent): void => {
    event.preventDefault();
    event.stopImmediatePropagation();
    event.clipboardData?.setData('text/plain', text);
    carried = true;
  };
  document.addEventListener('copy', carry, { capture: true });
  try {
    document.execCommand('copy');
  } finally {
    document.removeEventListener('copy', carry, { capture: true });
  }
  return carried;
}
