/** The sheets that the menu lays over the work: earlier versions, the shop record, the keys, about and cautions. */
import { shownName } from '../core/job/shown.ts';
import { useEffect, useState } from 'react';
import type { ReactNode } from 'react';
import { CAUTIONS, WHO_DECIDES } from '../core/words/cautions.ts';
import { MOST_DOCUMENTS, MOST_VERSIONS } from '../store/keeping/autosave.ts';
import type { Version } from '../store/types.ts';
import { keeping, opening, useKeeping, useShop } from '../store/page.ts';
import { ShopRecord } from '../ui/shop-record/ShopRecord.tsx';
import { BAY_KEYS } from '../view/canvas/keys.ts';
import { COMMANDS } from './commands.ts';
import type { Command, SheetName } from './commands.ts';
import { dated } from './dated.ts';
import { downloadVersion, pickShopFile, saveShopFile } from './files.ts';
import { Sheet } from './Sheet.tsx';
import { STORAGE_WORDS } from './StorageTrouble.tsx';

interface OpenSheetProps {
  readonly name: SheetName | null;
  readonly closed: () => void;
}

export function OpenSheet({ name, closed }: OpenSheetProps): ReactNode {
  switch (name) {
    case 'versions':
      return <VersionsSheet closed={closed} />;
    case 'shop':
      return <ShopSheet closed={closed} />;
    case 'keys':
      return <KeysSheet closed={closed} />;
    case 'about':
      return <AboutSheet closed={closed} />;
    case null:
      return null;
  }
}

interface Closes {
  readonly closed: () => void;
}

function VersionsSheet({ closed }: Closes): ReactNode {
  const [versions, setVersions] = useState<readonly Version[] | null | undefined>(undefined);
  useEffect(() => {
    void keeping.getState().earlierVersions().then(setVersions);
  }, []);
  return (
    <Sheet title="Earlier versions" closed={closed}>
      <p>
        The newest {MOST_DOCUMENTS} jobs that this browser holds, also those that another took the place of, and work
        from other tabs. Of each, one version a minute, the last {MOST_VERSIONS}. What is older is let go: save files.
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
                  Bring back
                </button>
              )}
            </div>
            {version.why !== undefined && <p className="damage">Could not be read: {version.why}</p>}
          </li>
        ))}
      </ul>
    </Sheet>
  );
}

/** ms without an answer after which the sheet says that it takes long. */
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
function ShopSheet({ closed }: Closes): ReactNode {
  const trouble = useShop((state) => state.trouble);
  return (
    <Sheet title="Shop record" closed={closed}>
      {trouble !== null && (
        <p role="status">
          <strong>Not saved in this browser now.</strong> {STORAGE_WORDS[trouble]} Save it as a file.
        </p>
      )}
      <ShopRecord save={saveShopFile} pick={pickShopFile} />
    </Sheet>
  );
}

const isMac = /Mac|iPad|iPhone/.test(navigator.userAgent);

const spoken = (chord: string): string =>
  chord === '+' ? chord : chord.replace('Mod', isMac ? 'Cmd' : 'Ctrl').replaceAll('+', ' + ');

function KeysSheet({ closed }: Closes): ReactNode {
  return (
    <Sheet title="Keys" closed={closed}>
      <KeyList commands={Object.values<KeyedCommand>(COMMANDS).filter(({ keys }) => keys.length > 0)} />
      <h3>In the bay</h3>
      <KeyList commands={BAY_KEYS} />
    </Sheet>
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

function AboutSheet({ closed }: Closes): ReactNode {
  return (
    <Sheet title="About and cautions" closed={closed}>
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
    </Sheet>
  );
}
