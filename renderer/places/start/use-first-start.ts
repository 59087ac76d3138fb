import { useEffect, useState } from 'react';
import { hostClient } from '../../session/host.ts';

const key = 'start.begun';

/** Whether nothing was ever opened on this machine, so that one sentence should say what to do first. */
export function useFirstStart(): boolean {
  const [first, setFirst] = useState(false);
  useEffect(() => {
    let current = true;
    void hostClient()('place.read', { key }).then((kept) => {
      if (current && kept.ok) setFirst(kept.value.text === null);
    });
    return () => {
      current = false;
    };
  }, []);
  return first;
}

/** From now on the user knows the way. */
export function noteBegun(): void {
  void hostClient()('place.keep', { key, text: 'yes' });
}
