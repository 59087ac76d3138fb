import { useEffect, useRef } from 'react';

/** Takes in a picture that is pasted anywhere on the page; pasted text is left to the field it is for. */
export function usePastedPicture(onFile: (file: File) => void): void {
  const newest = useRef(onFile);
  newest.current = onFile;
  useEffect(() => {
    const paste = (event: ClipboardEvent): void => {
      const file = [...(event.clipboardData?.files ?? [])].find((each) => each.type.startsWith('image/'));
      if (!file) return;
      event.preventDefault();
      newest.current(file);
    };
    window.addEventListener('paste', paste);
    return () => window.removeEventListener('paste', paste);
  }, []);
}
