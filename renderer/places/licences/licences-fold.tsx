import { lazy, Suspense, useState } from 'react';
import { licenceWords } from '../../language/licences.ts';
import { Disclosure } from '../../parts/index.ts';
import './licences.css';

/** The texts are long and seldom read: they come when they are asked for. */
const LicenceList = lazy(() => import('./licence-list.tsx'));

/** On what terms Undertrim and everything it is made of are used. */
export function LicencesFold() {
  const [open, setOpen] = useState(false);
  return (
    <Disclosure label={licenceWords.title} open={open} onToggle={setOpen}>
      <Suspense fallback={<p>{licenceWords.reading}</p>}>
        <LicenceList />
      </Suspense>
    </Disclosure>
  );
}
