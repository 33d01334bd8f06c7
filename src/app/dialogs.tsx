/** The dialogs that the menu opens over the work: earlier versions, the shop record, the phone at the bender, the keys, about and cautions. */
import { shownName } from '../core/job/shown.ts';
import { Suspense, useEffect, useState } from 'react';
import type { ReactNode } from 'react';
import { CAUTIONS, WHO_DECIDES } from '../core/words/cautions.ts';
import { MOST_DOCUMENTS, MOST_VERSIONS } from '../store/keeping/autosave.ts';
import type { Version } from '../store/types.ts';
import { keeping, opening, useKeeping, useShop } from '../store/page.ts';
import { TABLE_KEYS } from '../ui/table/keys.ts';
import { BAY_KEYS } from '../view/canvas/keys.ts';
import { COMMANDS } from './commands.ts';
import type { Command, DialogName } from './commands.ts';
import { dated } from './dated.ts';
import { downloadVersion, pickShopFile, saveShopFile } from './files.ts';
import { Dialog } from './Dialog.tsx';
import { Pairing, ShopRecord } from './later.ts';
import { STORAGE_WORDS } from './StorageTrouble.tsx';

interface OpenDialogProps {
  readonly name: DialogName;
  readonly closed: () => void;
}

export function OpenDialog({ name, closed }: OpenDialogProps): ReactNode {
  switch (name) {
    case 'versions':
      return <VersionsDialog closed={closed} />;
    case 'shop':
      return <ShopDialog closed={closed} />;
    case 'pairing':
      return (
        <Dialog title={COMMANDS.pairing.name} closed={closed}>
          <Suspense>
            <Pairing />
          </Suspense>
        </Dialog>
      );
    case 'keys':
      return <KeysDialog closed={closed} />;
    case 'about':
      return <AboutDialog closed={closed} />;
  }
}

interface Closes {
  readonly closed: () => void;
}

function VersionsDialog({ closed }: Closes): ReactNode {
  const [versions, setVersions] = useState<readonly Version[] | null | undefined>(undefined);
  useEffect(() => {
    void keeping.getState().earlierVersions().then(setVersions);
  }, []);
  return (
    <Dialog title="Earlier versions" closed={closed}>
      <p>
        The newest {MOST_DOCUMENTS} jobs that this browser holds, also those that another took the place of, and work
        from other tabs. Of each, one version a minute, the last {MOST_VERSIONS}. What is older is let go: save files. A
        version of the open job comes back as a step that undo takes back; one of another job is opened in its place,
        and the open one stays here.
      </p>
      {versions === undefined && <Looking />}
      {versions === null && <p>They cannot be reached now: this browser's storage does not answer.</p>}
      {versions?.length === 0 && <p>None yet: the first is kept with the first change.</p>}
      <ul className="versions">
        {versions?.map((version, index) => (
          <li key={index}>
            <time dateTime={new Date(version.savedAt).toISOString()}>{dated(version.savedAt)}</time>
            <span className="version-name">{shownName(version.name)}</span>
            <div className="version-keys">
              <button type="button" className="press" onClick={() => downloadVersion(version)}>
                Download
              </button>
              {version.why === undefined && (
                <button
                  type="button"
                  className="press press-live"
                  onClick={(event) => {
                    opening.restore(version);
                    event.currentTarget.closest('dialog')?.close();
                  }}
                >
                  {version.isOther ? 'Open' : 'Bring back'}
                </button>
              )}
            </div>
            {version.why !== undefined && <p className="damage">Could not be read: {version.why}</p>}
          </li>
        ))}
      </ul>
    </Dialog>
  );
}

/** ms without an answer after which it is said that it takes long. */
const LONG = 3000;

/** Until they are there: why they are not, where that is known or it takes long. */
function Looking(): ReactNode {
  const trouble = useKeeping((state) => state.trouble);
  const [isLong, setLong] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setLong(true), LONG);
    return () => clearTimeout(timer);
  }, []);
  const why = trouble ?? (isLong ? 'slow' : null);
  return <p role="status">{why === null ? 'Looking' : `They are not here yet. ${STORAGE_WORDS[why]}`}</p>;
}

/** What is in it is kept by itself; where that fails it is said here, since the strip over the work speaks of the job. */
function ShopDialog({ closed }: Closes): ReactNode {
  const trouble = useShop((state) => state.trouble);
  return (
    <Dialog title="Shop record" closed={closed}>
      {trouble !== null && (
        <p role="status">
          <strong>Not saved in this browser now.</strong> {STORAGE_WORDS[trouble]} Save it as a file.
        </p>
      )}
      <Suspense>
        <ShopRecord save={saveShopFile} pick={pickShopFile} />
      </Suspense>
    </Dialog>
  );
}

const isMac = /Mac|iPad|iPhone/.test(navigator.userAgent);

const spoken = (chord: string): string =>
  chord === '+' ? chord : chord.replace('Mod', isMac ? 'Cmd' : 'Ctrl').replaceAll('+', ' + ');

function KeysDialog({ closed }: Closes): ReactNode {
  return (
    <Dialog title="Keys" closed={closed}>
      <KeyList commands={Object.values<KeyedCommand>(COMMANDS).filter(({ keys }) => keys.length > 0)} />
      <h3>In a table</h3>
      <KeyList commands={TABLE_KEYS} />
      <h3>In the bay</h3>
      <KeyList commands={BAY_KEYS} />
    </Dialog>
  );
}

type KeyedCommand = Pick<Command, 'name' | 'keys'>;

const KeyList = ({ commands }: { readonly commands: readonly KeyedCommand[] }): ReactNode => (
  <dl className="keys">
    {commands.map(({ name, keys }) => (
      <div key={name}>
        <dt>{name}</dt>
        <dd>
          {keys.map((chord) => (
            <kbd key={chord}>{spoken(chord)}</kbd>
          ))}
        </dd>
      </div>
    ))}
  </dl>
);

function AboutDialog({ closed }: Closes): ReactNode {
  return (
    <Dialog title="About and cautions" closed={closed}>
      <p className="who-decides">
        <strong>{WHO_DECIDES}</strong>
      </p>
      <ul className="cautions">
        {CAUTIONS.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <p>
        Cagewright turns measured points into finished tubes. The job stays in this browser and in the file that you
        save; nothing is sent anywhere, and it works with the network off.
      </p>
    </Dialog>
  );
}
