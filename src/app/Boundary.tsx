/** When a part breaks while drawing: the rest stays up, the job can be taken away as a file, and a reload brings it back. */
import { Component } from 'react';
import type { ReactNode } from 'react';
import { keeping } from '../store/page.ts';
import { saveFile } from './files.ts';

interface BoundaryProps {
  /** What broke, in words: 'The bay'. */
  readonly part: string;
  readonly children: ReactNode;
}

export class Boundary extends Component<BoundaryProps, { readonly broken: boolean }> {
  override state = { broken: false };

  static getDerivedStateFromError(): { readonly broken: boolean } {
    return { broken: true };
  }

  override render(): ReactNode {
    if (!this.state.broken) return this.props.children;
    const isSaved = keeping.getState().saved !== 'failed';
    return (
      <section className="broken" role="alert">
        <h2>{this.props.part} has stopped.</h2>
        <p>
          {isSaved
            ? 'Your work is saved in this browser.'
            : 'Your work is not saved in this browser: download it first.'}
        </p>
        <div className="row">
          <button type="button" className="press press-live" onClick={() => window.location.reload()}>
            Reload
          </button>
          <button type="button" className="press" onClick={saveFile}>
            Download the job file
          </button>
        </div>
      </section>
    );
  }
}
