/** Strips under the band: what must be answered or known before going on. Each says what happened and what can be done. */
import { shownName } from '../core/job/shown.ts';
import { Suspense, useSyncExternalStore, type ReactNode } from 'react';
import type { Notice, Version } from '../store/types.ts';
import { editor, keeping, shopRecord, useDocument, useEditor, useKeeping, useShop } from '../store/page.ts';
import { useWayBack } from '../ui/kit/useWayBack.ts';
import { FaultList } from '../ui/kit/FaultList.tsx';
import { ShopAsks } from '../ui/shop-record/ShopAsks.tsx';
import { dated } from './dated.ts';
import { downloadVersion } from './files.ts';
import { closeIcon } from './icons.tsx';
import { HeldStrip, OfSheet } from './later.ts';
import { ShopTrouble, StorageTrouble } from './StorageTrouble.tsx';
import './notices.css';

export function Notices({ mayBePaired }: { readonly mayBePaired: boolean }): ReactNode {
  return (
    <div className="notices" aria-live="assertive">
      {mayBePaired && (
        <Suspense fallback={null}>
          <HeldStrip />
        </Suspense>
      )}
      <StorageTrouble />
      <ShopTrouble />
      <Awaited />
      <OtherTab />
      <Refusal />
      <BySheet />
      <ShopAsks />
      <Known />
    </div>
  );
}

/** A new job begins with the shop record, which may be long in coming. */
function Awaited(): ReactNode {
  const awaited = useShop((state) => state.awaited);
  return (
    awaited && (
      <section className="notice">
        <p>Reading the shop record, with which the new job begins.</p>
      </section>
    )
  );
}

function OtherTab(): ReactNode {
  const behind = useKeeping((state) => state.behind);
  if (!behind) return null;
  return (
    <section className="notice notice-wrong">
      <p>
        <strong>This job was changed in another tab.</strong> What you do here is kept apart, under Earlier versions,
        until you choose.
      </p>
      <div className="row">
        <button type="button" className="press" onClick={() => void keeping.getState().takeOtherTab()}>
          Take the other tab's work
        </button>
        <button type="button" className="press" onClick={() => void keeping.getState().keepAsCopy()}>
          Keep this one as a copy
        </button>
      </div>
    </section>
  );
}

function Refusal(): ReactNode {
  const refused = useEditor((state) => state.refused);
  return (
    refused && (
      <Closable isWrong close={() => editor.getState().dismissRefusal()}>
        <p>
          <strong>{refused.fileName} was not opened.</strong> The open job is untouched.
        </p>
        <FaultList faults={refused.faults} />
      </Closable>
    )
  );
}

/** The page was opened by the code on a sheet. */
function BySheet(): ReactNode {
  const ready = useDocument((state) => state.ready);
  const hash = useSyncExternalStore(onHash, () => location.hash);
  if (!ready || !hash.startsWith('#tube=')) return null;
  return (
    <Closable close={() => (location.hash = '')}>
      <Suspense>
        <OfSheet hash={hash} />
      </Suspense>
    </Closable>
  );
}

function onHash(changed: () => void): () => void {
  window.addEventListener('hashchange', changed);
  return () => window.removeEventListener('hashchange', changed);
}

/** Of the work, and of the shop record beside it. */
function Known(): ReactNode {
  const ofWork = useEditor((state) => state.notice);
  const ofShop = useShop((state) => state.notice);
  return (
    <>
      {ofWork && <Said notice={ofWork} dismiss={() => editor.getState().dismissNotice()} />}
      {ofShop && <Said notice={ofShop} dismiss={() => shopRecord.getState().dismissNotice()} />}
    </>
  );
}

const Said = ({ notice, dismiss }: { readonly notice: Notice; readonly dismiss: () => void }): ReactNode => (
  <Closable close={dismiss}>
    <p>{notice.message}</p>
    <Damaged versions={notice.damaged} />
  </Closable>
);

/** One of many is as good as another: the rest stand under Earlier versions. */
const FIRST_DAMAGED = 3;

const Damaged = ({ versions }: { readonly versions: readonly Version[] }): ReactNode =>
  versions.slice(0, FIRST_DAMAGED).map((version) => (
    <div key={version.text} className="row">
      <button type="button" className="press" onClick={() => downloadVersion(version)}>
        Download what is left of {shownName(version.name)}, {dated(version.savedAt)}
      </button>
      <span className="damage">{version.why}</span>
    </div>
  ));

/** A strip with a key that closes it. */
function Closable(props: {
  readonly isWrong?: true;
  readonly close: () => void;
  readonly children: ReactNode;
}): ReactNode {
  const { isWrong, close, children } = props;
  const { onFocus, answered } = useWayBack();
  function press(): void {
    answered();
    close();
  }
  return (
    <section className={isWrong ? 'notice notice-wrong' : 'notice'} onFocus={onFocus}>
      {children}
      <button type="button" className="dismiss" aria-label="Close this message" onClick={press}>
        {closeIcon}
      </button>
    </section>
  );
}
