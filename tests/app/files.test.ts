/** Files of the browser against the same bytes on the command line: refused in the same words, taken as the same job. */
import { beforeEach, describe, expect, it } from 'vitest';
import { openFile } from '../../src/app/files.ts';
import { editor, jobDocument } from '../../src/store/page.ts';
import { demoText, runFab } from '../command-line.ts';

beforeEach(() => editor.getState().dismissRefusal());

/** What the command line says of a file of these bytes, after the file's name. */
const saidByFab = async (bytes: Uint8Array): Promise<string> =>
  (await runFab(bytes)).complaints.join('\n').replace(/^.*job\.json: /u, '');

const shown = () =>
  editor
    .getState()
    .refused?.faults.map(({ message }) => message)
    .join('\n');

describe('a file that is opened', () => {
  it('is refused when it is not UTF-8, and the open job stays', async () => {
    const { job } = jobDocument.getState();
    const latin1 = Buffer.from(demoText().replace('"name": "', '"name": "Gr\u00f6\u00dfe '), 'latin1');
    await openFile(new File([latin1], 'latin1.json'));
    expect(editor.getState().refused?.fileName).toBe('latin1.json');
    expect(shown()).toBe(await saidByFab(latin1));
    expect(shown()).toBe('not UTF-8 text');
    expect(jobDocument.getState().job).toBe(job);
  });

  it('is refused unread when it is beyond 64 MB', async () => {
    const large = Buffer.alloc(64 * 1024 * 1024 + 1, ' ');
    const file = new File([large], 'large.json');
    file.arrayBuffer = () => Promise.reject(new Error('read all the same'));
    await openFile(file);
    expect(shown()).toBe(await saidByFab(large));
    expect(shown()).toBe('more than 64 MB, no job file');
  });

  it('is named when the system cannot read it', async () => {
    const gone = new File(['{}'], 'gone.json');
    gone.arrayBuffer = () => Promise.reject(new DOMException('', 'NotFoundError'));
    await openFile(gone);
    expect(editor.getState().refused?.fileName).toBe('gone.json');
    expect(shown()).toBe('cannot be read');
  });

  it('is taken with a byte order mark, as on the command line', async () => {
    const marked = Buffer.from(`\ufeff${demoText()}`);
    expect(await saidByFab(marked)).toBe('');
    await openFile(new File([marked], 'marked.json'));
    expect(editor.getState().refused).toBeNull();
    expect(jobDocument.getState().job.name).toBe(JSON.parse(demoText()).name);
  });
});
