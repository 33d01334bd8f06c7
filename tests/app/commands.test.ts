import { describe, expect, it } from 'vitest';
import { COMMANDS, matches } from '../../src/app/commands.ts';
import type { Command } from '../../src/app/commands.ts';
import { commitEdit } from '../../src/core/session/history.ts';
import type { Job } from '../../src/core/job/types.ts';
import { editor, jobDocument } from '../../src/store/page.ts';

const press = (key: string, held: Partial<KeyboardEvent> = {}): KeyboardEvent =>
  ({ key, code: '', ctrlKey: false, metaKey: false, altKey: false, shiftKey: false, ...held }) as KeyboardEvent;

it('says that a step cannot be taken where the kept history is damaged', () => {
  const { committed, replace } = jobDocument.getState();
  const before = { ...committed.history.job, dies: [{ id: 'gone' }] } as unknown as Job;
  const { history } = committed;
  replace({ ...committed, history: commitEdit({ ...history, job: before }, 'x', history.job) }, '');
  COMMANDS.undo.run();
  expect(editor.getState().notice?.message).toMatch(/history is damaged/u);
  expect(jobDocument.getState().job).toBe(history.job);
  editor.getState().dismissNotice();
  replace(committed, '');
});

describe('a chord', () => {
  it.each<[string, KeyboardEvent, boolean]>([
    ['Mod+Z', press('z', { ctrlKey: true }), true],
    ['Mod+Z', press('z', { metaKey: true }), true],
    ['Mod+Z', press('Z', { ctrlKey: true, shiftKey: true }), false],
    ['Mod+Shift+Z', press('Z', { ctrlKey: true, shiftKey: true }), true],
    ['Mod+Z', press('z'), false],
    ['Mod+Z', press('z', { ctrlKey: true, altKey: true }), false],
    // On a Mac, Alt and 1 type an inverted exclamation mark.
    ['Alt+1', press('\u00a1', { altKey: true, code: 'Digit1' }), true],
    ['Alt+1', press('1', { code: 'Digit1' }), false],
    // Typed with Shift on some keyboards, without on others.
    ['?', press('?', { shiftKey: true }), true],
    ['?', press('?'), true],
    ['Escape', press('Escape'), true],
  ])('%s', (chord, event, expected) => {
    expect(matches(event, chord)).toBe(expected);
  });

  it('asks for one command only', () => {
    const chords = Object.values<Command>(COMMANDS).flatMap(({ keys }) => keys);
    expect(chords.length).toBeGreaterThan(8);
    expect(new Set(chords).size).toBe(chords.length);
  });
});
