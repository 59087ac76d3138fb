import { Component, type ReactNode } from 'react';
import { slipDetails } from './language/copy-details.ts';
import { words } from './language/words.ts';
import { CopyDetails } from './parts/copy-details.tsx';
import { Button, Notice } from './parts/index.ts';

interface State {
  readonly slip: { readonly error: unknown } | null;
}

/** Catches our own bugs at the edge: says that it is ours, that the work is kept, and how to go on. */
export class Mishap extends Component<{ readonly children: ReactNode }, State> {
  override state: State = { slip: null };

  static getDerivedStateFromError(error: unknown): State {
    return { slip: { error } };
  }

  override componentDidCatch(error: unknown): void {
    console.error(error);
  }

  override render() {
    const { slip } = this.state;
    if (!slip) return this.props.children;
    const { error } = slip;
    return (
      <main className="mishap">
        <Notice
          tone="failed"
          title={words.mishap.title}
          actions={
            <>
              <Button weight="main" onClick={() => window.location.reload()}>
                {words.mishap.again}
              </Button>
              <CopyDetails details={slipDetails(error, new Date().toISOString())} />
            </>
          }
        >
          <p>{words.mishap.kept}</p>
          <p className="mono quiet">{error instanceof Error ? error.message : String(error)}</p>
        </Notice>
      </main>
    );
  }
}
