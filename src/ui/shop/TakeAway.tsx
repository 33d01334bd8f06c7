/** The files that leave the program: the same ones that the command line writes. */
import type { ReactNode } from 'react';
import { csvFiles } from '../../exports/csv.ts';
import { fabricationFile } from '../../exports/fabrication.ts';
import type { TextFile } from '../../exports/text.ts';
import type { Derived } from '../../core/derive.ts';
import { workspace } from '../../store/workspace.ts';
import { downloadText } from '../download.ts';

const table = (name: string) => (derived: Derived) => csvFiles(derived).find(({ fileName }) => fileName === name)!;

const FILES: readonly { name: string; holds: string; write: (derived: Derived) => TextFile }[] = [
  { name: 'tubes.csv', holds: 'one row a tube', write: table('tubes.csv') },
  { name: 'bends.csv', holds: 'length, rotation, angle of each bend', write: table('bends.csv') },
  { name: 'xyz.csv', holds: 'corner points of each tube', write: table('xyz.csv') },
  { name: 'copes.csv', holds: 'the notcher recipe of each cut', write: table('copes.csv') },
  { name: 'fabrication.json', holds: 'everything derived, with profiles', write: fabricationFile },
];

export function TakeAway(): ReactNode {
  return (
    <ul className="files">
      {FILES.map((file) => (
        <li key={file.name}>
          <button type="button" className="press" onClick={() => save(file.write(workspace.getState().derived))}>
            {file.name}
          </button>
          <span className="small">{file.holds}</span>
        </li>
      ))}
    </ul>
  );
}

const save = ({ fileName, text }: TextFile): void =>
  downloadText(fileName, fileName.endsWith('.json') ? 'application/json' : 'text/csv', text);
