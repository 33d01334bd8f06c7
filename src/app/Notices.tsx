/** Strips under the band: what must be answered or known before going on. Each says what happened and what can be done. */
import { shownName } from '../core/job/shown.ts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import type { Fault } from '../core/job/fault.ts';
import type { Version } from '../store/types.ts';
import { useWorkspace, workspace } from '../store/workspace.ts';
import { dated } from './dated.ts';
import { downloadVersion } from './files.ts';
import { closeIcon } from './icons.tsx';
import { StorageTrouble } from './StorageTrouble.tsx';
import './notices.css';

export function Notices(): ReactNode {
  return (
    <div className="notices" aria-live="assertive">
      <StorageTrouble />
      <OtherTab />
      <Refusal />
      <Known />
    </div>
  );
}

function OtherTab(): ReactNode {
  const behind = useWorkspace((state) => state.behind);
  if (!behind) return null;
  return (
    <section className="notice notice-wrong">
      <p>
        <strong>This job was changed in another tab.</strong> What you do here is kept apart, under Earlier versions,
        until you choose.
      </p>
      <div className="notice-keys">
        <button type="button" className="press" onClick={() => void workspace.getState().takeOtherTab()}>
          Take the other tab's work
        </button>
        <button type="button" className="press" onClick={() => void workspace.getState().keepAsCopy()}>
          Keep this one as a copy
        </button>
      </div>
    </section>
  );
}

function Refusal(): ReactNode {
  const refused = useWorkspace((state) => state.refused);
  if (!refused) return null;
  return (
    <section className="notice notice-wrong">
      <p>
        <strong>{refused.fileName} was not opened.</strong> The open job is untouched.
      </p>
      <FaultList faults={refused.faults} />
      <Dismiss press={() => workspace.getState().dismissRefusal()} />
    </section>
  );
}

function Known(): ReactNode {
  const notice = useWorkspace((state) => state.notice);
  if (!notice) return null;
  return (
    <section className="notice">
      <p>{notice.message}</p>
      <Damaged versions={notice.damaged} />
      <Dismiss press={() => workspace.getState().dismissNotice()} />
    </section>
  );
}

/** One of many is as good as another: the rest stand under Earlier versions. */
const FIRST_DAMAGED = 3;

const Damaged = ({ versions }: { readonly versions: readonly Version[] }): ReactNode =>
  versions.slice(0, FIRST_DAMAGED).map((version) => (
    <div key={version.text} className="notice-keys">
      <button type="button" className="press" onClick={() => downloadVersion(version)}>
        Download what is left of {shownName(version.name)}, {dated(version.savedAt)}
      </button>
      <span className="damage">{version.why}</span>
    </div>
  ));

const FIRST_FAULTS = 4;

function FaultList({ faults }: { readonly faults: readonly Fault[] }): ReactNode {
  const [all, showAll] = useState(false);
  if (faults.length === 0) return null;
  const shown = all ? faults : faults.slice(0, FIRST_FAULTS);
  return (
    <ul className="faults">
      {shown.map((fault, index) => (
        <li key={index}>
          {fault.place !== '' && <code>{fault.place}</code>} {fault.message}
        </li>
      ))}
      {shown.length < faults.length && (
        <li>
          <button type="button" className="press" onClick={() => showAll(true)}>
            Show all {faults.length}
          </button>
        </li>
      )}
    </ul>
  );
}

function Dismiss({ press }: { readonly press: () => void }): ReactNode {
  return (
    <button type="button" className="dismiss" aria-label="Close this message" onClick={press}>
      {closeIcon}
    </button>
  );
}
