/** Parts of a station side by side, one shown: arrow keys move between the tabs, as a screen reader expects. */
import { useId, useRef, type KeyboardEvent, type ReactNode } from 'react';

export interface Tab<Name extends string> {
  readonly name: Name;
  readonly title: string;
  readonly count?: number;
}

export function Tabs<Name extends string>(props: {
  label: string;
  tabs: readonly Tab<Name>[];
  shown: Name;
  onShow: (name: Name) => void;
  children: ReactNode;
}): ReactNode {
  const { tabs, shown, onShow } = props;
  const list = useRef<HTMLDivElement>(null);
  const id = useId();

  function onKeyDown(event: KeyboardEvent): void {
    const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (step === 0) return;
    event.preventDefault();
    const at = (tabs.findIndex((tab) => tab.name === shown) + step + tabs.length) % tabs.length;
    const next = tabs[at];
    if (next === undefined) return;
    onShow(next.name);
    list.current?.querySelectorAll<HTMLElement>('[role=tab]')[at]?.focus();
  }

  return (
    <div className="tabs">
      <div
        ref={list}
        role="tablist"
        aria-label={props.label}
        className={tabs.length > 4 ? 'tab-list tab-list-many' : 'tab-list'}
      >
        {tabs.map((tab) => (
          <button
            key={tab.name}
            type="button"
            role="tab"
            id={`${id}-${tab.name}`}
            aria-selected={tab.name === shown}
            aria-controls={`${id}-panel`}
            tabIndex={tab.name === shown ? 0 : -1}
            className="tab"
            onKeyDown={onKeyDown}
            onClick={() => onShow(tab.name)}
          >
            {tab.title}
            {tab.count !== undefined && <span className="section-count">{tab.count}</span>}
          </button>
        ))}
      </div>
      <div role="tabpanel" id={`${id}-panel`} aria-labelledby={`${id}-${shown}`}>
        {props.children}
      </div>
    </div>
  );
}
