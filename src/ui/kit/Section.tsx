/** A part of a station that folds: the browser's own details, so that keyboard and screen reader know it, with a heading to come to it by. */
import { useState, type ReactNode } from 'react';

export function Section(props: {
  title: string;
  /** How many things are in it, shown beside the title. */
  count?: number;
  /** How it stands at first; after that it is the person's own. */
  open?: boolean;
  children: ReactNode;
}): ReactNode {
  const [openAtFirst] = useState(props.open);
  return (
    <details className="section" open={openAtFirst}>
      <summary>
        <h3 className="section-title">{props.title}</h3>
        {props.count !== undefined && <span className="section-count">{props.count}</span>}
      </summary>
      <div className="section-body">{props.children}</div>
    </details>
  );
}
