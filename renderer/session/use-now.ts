import { useEffect, useState } from 'react';

/** The time as ISO text, taken anew every so often while the page is in sight. */
export function useNow(everyMs = 15_000): string {
  const [now, setNow] = useState(() => new Date().toISOString());
  useEffect(() => {
    const take = (): void => setNow(new Date().toISOString());
    const timer = setInterval(take, everyMs);
    return () => clearInterval(timer);
  }, [everyMs]);
  return now;
}
