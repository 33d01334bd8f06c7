import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { canSend, sendJob } from '../../src/app/send.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import { editor, jobDocument, opening } from '../../src/store/page.ts';
import { demoText } from '../command-line.ts';

const sent: File[] = [];
const said = (): string | undefined => editor.getState().notice?.message;

/** A platform that says it takes what `takes` says, and answers what `share` does. */
const platform = (takes: (file: File) => boolean, share: () => Promise<void> = () => Promise.resolve()): void => {
  vi.stubGlobal('navigator', {
    canShare: ({ files }: { files: File[] }) => files.every(takes),
    share({ files }: { files: File[] }) {
      sent.push(...files);
      return share();
    },
  });
};

const fails = (name: string) => (): Promise<void> => Promise.reject(new DOMException('No', name));

beforeEach(() => {
  sent.length = 0;
  editor.getState().dismissNotice();
  opening.open('demo.cagewright.json', demoText());
});
afterEach(() => vi.unstubAllGlobals());

it('is not offered where the platform has no share sheet, or one without files', () => {
  vi.stubGlobal('navigator', {});
  expect(canSend()).toBe(false);
  platform(() => false);
  expect(canSend()).toBe(false);
});

it('sends the job file as it would be saved', async () => {
  platform(() => true);
  expect(canSend()).toBe(true);
  await sendJob();
  const [file] = sent;
  const { fileName, text } = jobDocument.getState().file();
  expect([file!.name, file!.type]).toEqual([fileName, 'application/json']);
  expect(await file!.text()).toBe(text);
  expect(said()).toBeUndefined();
});

it('goes as plain text where the platform asks for that', async () => {
  platform(({ type }) => type === 'text/plain');
  await sendJob();
  expect(sent.map(({ name, type }) => [name.split('.').at(-1), type])).toEqual([['json', 'text/plain']]);
});

it('says nothing where the person leaves the sheet, and what to do where it fails', async () => {
  platform(() => true, fails('AbortError'));
  await sendJob();
  expect(said()).toBeUndefined();
  platform(() => true, fails('InvalidStateError'));
  await sendJob();
  expect(said()).toMatch(/Try again/u);
});

it('is tried as text when it was turned away, then said to be impossible, and begins anew', async () => {
  platform(() => true, fails('NotAllowedError'));
  await sendJob();
  expect(said()).toMatch(/again: it then goes as plain text/u);
  await sendJob();
  await sendJob();
  expect(said()).toMatch(/Save it, and send it .* It says: No/u);
  expect(sent.map(({ name, type }) => [name.split('.').at(-1), type])).toEqual([
    ['json', 'application/json'],
    ['json', 'text/plain'],
    ['txt', 'text/plain'],
  ]);
  const { name } = jobDocument.getState().job;
  const read = parseJob(await sent[2]!.text());
  expect(read.ok && read.job.name).toBe(name);
  platform(() => true);
  await sendJob();
  expect(sent.at(-1)!.type).toBe('application/json');
});
