import { type ReactNode, useEffect, useState } from 'react';
import type { Problem } from '#core/quantity/problem.ts';
import { reportWords } from '../../language/report.ts';
import { Button, Notice, ProblemNotice } from '../../parts/index.ts';
import { hostClient } from '../../session/host.ts';
import { useShop } from '../../session/shop-settings.ts';
import { useFind } from '../find/find-context.ts';
import { closeHash } from './close-page.ts';
import { useKeptPicture } from './kept-photo.tsx';
import './sheet.css';

/** A printed sheet on screen: the paper, its head with the workshop, and the ways to print it. */
export function SheetFrame({
  title,
  fileName,
  ready,
  children,
}: {
  readonly title: string;
  readonly fileName: string;
  /** Pictures are in place: only then is it printed. */
  readonly ready: boolean;
  readonly children: ReactNode;
}) {
  const { open } = useFind();
  const shop = useShop();
  const logo = useKeptPicture(shop.logoSha256);
  const [saved, setSaved] = useState(false);
  const [problem, setProblem] = useState<Problem | null>(null);
  useEffect(() => {
    // The name of the page is what a browser proposes for the file.
    const before = document.title;
    document.title = fileName;
    return () => {
      document.title = before;
    };
  }, [fileName]);
  const print = async (): Promise<void> => {
    if (!window.undertrim) return window.print();
    setProblem(null);
    const printed = await hostClient()('page.print', { fileName: `${fileName}.pdf`, paper: shop.paper });
    if (printed.ok) setSaved(printed.value.saved);
    else setProblem(printed.problem);
  };
  return (
    <main className="sheet-place">
      <div className="sheet-actions button-row">
        <a className="button" href={closeHash(open.job.id)}>
          {reportWords.back}
        </a>
        <Button weight="main" disabled={!ready} onClick={() => void print()}>
          {window.undertrim ? reportWords.saveFile : reportWords.print}
        </Button>
        {saved ? <Notice>{reportWords.saved}</Notice> : null}
        {problem ? <ProblemNotice problem={problem} /> : null}
      </div>
      <article className="sheet" data-ready={ready}>
        <header className="sheet-head">
          <div>
            <h1>{title}</h1>
            <p>{open.job.vehicle.plate}</p>
          </div>
          <div className="sheet-shop">
            {logo && logo !== 'gone' ? <img src={logo} alt="" /> : null}
            <div>
              <b>{shop.name}</b>
              <p className="sheet-address">{shop.address}</p>
            </div>
          </div>
        </header>
        {children}
      </article>
    </main>
  );
}
