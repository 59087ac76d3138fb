import { useEffect, useRef, useState } from 'react';

/** Watches the whole window for a file let go over it; gives whether one is being held over it now. */
export function useDrop(onFile: (file: File) => void): boolean {
  const [over, setOver] = useState(false);
  const newest = useRef(onFile);
  newest.current = onFile;
  useEffect(() => {
    const hold = (event: DragEvent): void => {
      if (!event.dataTransfer?.types.includes('Files')) return;
      event.preventDefault();
      setOver(true);
    };
    const leave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent): void => {
      event.preventDefault();
      setOver(false);
      const file = event.dataTransfer?.files[0];
      if (file) newest.current(file);
    };
    window.addEventListener('dragover', hold);
    window.addEventListener('dragleave', leave);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', hold);
      window.removeEventListener('dragleave', leave);
      window.removeEventListener('drop', drop);
    };
  }, []);
  return over;
}
