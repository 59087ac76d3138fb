import { Component, type ReactNode } from 'react';
import { words } from './language/words.ts';
import { Button, Notice } from './parts/index.ts';

interface State {
  readonly detail: string | null;
}

/** Catches our own bugs at the edge: says that it is ours, that the work is kept, and how to go on. */
export class Mishap extends Component<{ readonly children: ReactNode }, State> {
  override state: State = { detail: null };

  static getDerivedStateFromError(error: unknown): State {
    return { detail: error instanceof Error ? error.message : String(error) };
  }

  override componentDidCatch(error: unknown): void {
    console.error(error);
  }

  override render() {
    if (this.state.detail === null) return this.props.children;
    return (
      <main className="mishap">
        <Notice
          tone="failed"
          title={words.mishap.title}
          actions={
            <Button weight="main" onClick={() => window.location.reload()}>
              {words.mishap.again}
            </Button>
          }
        >
          <p>{words.mishap.kept}</p>
          <p className="mono quiet">{this.state.detail}</p>
        </Notice>
      </main>
    );
  }
}
