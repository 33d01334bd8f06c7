/** A part of a station that folds: the browser's own details, so that keyboard and screen reader know it, with a heading to come to it by. */
import { useState, type ReactNode } from 'react';

export function Section(props: {
  title: string;
  /** How many things are in it, shown beside the title. */
  count?: number | string;
  /** How it stands at first; after that it is the person's own. */
  open?: boolean;
  /** What is in it is made only while it is open: much of it would slow every edit down. */
  onlyOpen?: boolean;
  children: ReactNode;
}): ReactNode {
  const [openAtFirst] = useState(props.open);
  const [isOpen, setOpen] = useState(props.open ?? false);
  return (
    <details className="section" open={openAtFirst} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <h3 className="section-title">{props.title}</h3>
        {props.count !== undefined && <span className="section-count">{props.count}</span>}
      </summary>
      <div className="section-body">{(isOpen || !props.onlyOpen) && props.children}</div>
    </details>
  );
}
