import { describe, expect, it } from 'vitest';
import {
  angleKind,
  bendAngleKind,
  dayKind,
  lengthKind,
  numberKind,
  orNothing,
  readBackOf,
  rotationKind,
  sizeKind,
  tapeKind,
  textKind,
  wallKind,
  deviationKind,
} from '../../../src/ui/fields/kinds.ts';

describe('a length as a person types it', () => {
  const inches = lengthKind('in');
  const metric = lengthKind('mm');

  it('is read back in both units', () => {
    // 21 1/2 in = 546.1 mm exactly: the international inch is 25.4 mm.
    expect(inches.readBack(546.1)).toBe('= 21 1/2 in · 546.1 mm');
    expect(metric.readBack(546.1)).toBe('= 546.1 mm · 21 1/2 in');
  });

  it('says when the figures shown are rounded', () => {
    const typed = inches.read('546mm');
    expect(typed).toEqual({ ok: true, value: 546 });
    expect(inches.readBack(546)).toBe('≈ 21 1/2 in · 546.0 mm');
    expect(metric.readBack(546.05)).toMatch(/^≈/);
  });

  it('says how a sum was read, and what it comes to', () => {
    const said = (kind: typeof inches, text: string): string => {
      const typed = kind.read(text);
      return typed.ok ? readBackOf(typed, kind) : typed.why;
    };
    expect(said(inches, '47 1/2 / 2')).toBe('47 1/2 ÷ 2 = 23 3/4 in · 603.3 mm');
    expect(said(metric, '1200 - 44.45/2')).toBe('1200 − 44.45 ÷ 2 ≈ 1177.8 mm · 46 3/8 in');
    expect(said(orNothing(sizeKind('in')) as typeof inches, '2 x 3/4')).toBe('2 × 3/4 = 1 1/2 in · 38.1 mm');
    expect(said(deviationKind('mm', 10), '3 / 4')).toBe('3 ÷ 4 = 0.75');
    expect(said(angleKind, '90 - 12.5')).toBe('90 − 12.5 = 77.5°');
    expect(said(inches, '21 1/2')).toBe('= 21 1/2 in · 546.1 mm');
  });

  it('is nudged by a sixteenth of an inch, or a millimetre', () => {
    expect(inches.nudge?.(0, 16)).toBeCloseTo(25.4, 12);
    expect(inches.show(inches.nudge?.(546.1, -1) ?? 0)).toBe('21 7/16');
    expect(metric.nudge?.(100, -10)).toBe(90);
  });

  it('shows what reads back to the same sixteenth', () => {
    for (let sixteenths = -200; sixteenths <= 200; sixteenths += 7) {
      const mm = (sixteenths * 25.4) / 16;
      const read = inches.read(inches.show(mm));
      expect(read.ok && read.value).toBeCloseTo(mm, 9);
    }
  });

  it('asks touch screens for the keyboard that has the slash, in inches, and the minus, where there may be one', () => {
    expect([inches.inputMode, metric.inputMode, angleKind.inputMode]).toEqual(['text', 'text', 'text']);
    expect([sizeKind('in').inputMode, sizeKind('mm').inputMode, bendAngleKind.inputMode]).toEqual([
      'text',
      'decimal',
      'decimal',
    ]);
    expect([numberKind(-90, 90, 1).inputMode, numberKind(0, 0.5, 0.1).inputMode]).toEqual(['text', 'decimal']);
  });
});

describe('sizes and walls', () => {
  it('refuse nothing and less than nothing', () => {
    expect(sizeKind('in').read('0')).toEqual({ ok: false, why: 'has to be more than 0' });
    expect(sizeKind('mm').read('-4').ok).toBe(false);
    expect(wallKind('in').read('0').ok).toBe(false);
    expect(wallKind('mm').read('0.009')).toEqual({ ok: false, why: 'has to be 0.01 mm or more' });
    expect(sizeKind('mm').read('0.01')).toEqual({ ok: true, value: 0.01 });
    expect(bendAngleKind.read('0.001')).toEqual({ ok: false, why: 'has to be 0.01° or more' });
  });

  it('show a wall as the certificate does, not to the nearest sixteenth', () => {
    expect(wallKind('in').show(3.048)).toBe('0.120');
    expect(wallKind('mm').show(2.413)).toBe('2.41');
  });
});

describe('angles, numbers and words', () => {
  it('show an angle without idle zeros, and nudge it by half a degree', () => {
    expect(angleKind.show(52)).toBe('52');
    expect(angleKind.show(-12.5)).toBe('−12.5');
    expect(angleKind.nudge?.(90, -10)).toBe(85);
    const again = angleKind.read(angleKind.show(-12.5));
    expect(again).toEqual({ ok: true, value: -12.5 });
  });

  it('take at the bender what a job can hold: above 0, up to 200 degrees, and no comma', () => {
    expect(bendAngleKind.read('26.5°')).toEqual({ ok: true, value: 26.5 });
    expect(bendAngleKind.read('200')).toEqual({ ok: true, value: 200 });
    for (const refused of ['', '0', '-4', '201', '400', '26,5', 'about 60']) {
      expect(bendAngleKind.read(refused), refused).toMatchObject({ ok: false, why: expect.stringMatching(/./u) });
    }
    expect(bendAngleKind.nudge?.(199.9, 10)).toBe(200);
    expect(bendAngleKind.nudge?.(1, -10)).toBeGreaterThan(0);
  });

  it('take a day of the calendar, or none', () => {
    for (const day of ['', '2026-03-02', '2024-02-29'])
      expect(dayKind.read(` ${day} `)).toEqual({ ok: true, value: day });
    for (const day of ['2026-02-29', '2026-13-01', '2026-00-10', '2.3.2026'])
      expect(dayKind.read(day).ok, day).toBe(false);
  });

  it('keep a number within its limits, typed or nudged', () => {
    const part = numberKind(0, 1, 0.01);
    expect(part.read('0.25')).toEqual({ ok: true, value: 0.25 });
    expect(part.read('1.5')).toEqual({ ok: false, why: 'has to be from 0 to 1' });
    expect(part.read('1e-3').ok).toBe(false);
    expect(part.read('').ok).toBe(false);
    expect(part.nudge?.(0.995, 10)).toBe(1);
  });

  it('take a name without the spaces round it, and refuse an empty one', () => {
    expect(textKind(false).read('  Main hoop ')).toEqual({ ok: true, value: 'Main hoop' });
    expect(textKind(false).read('   ').ok).toBe(false);
    expect(textKind(true).read('   ')).toEqual({ ok: true, value: '' });
    expect(textKind(false).read('x'.repeat(201)).ok).toBe(false);
  });
});

describe('what is measured on a bent tube', () => {
  it('is read off a tape, which shows nothing below zero, or left out', () => {
    const kind = orNothing(tapeKind('in'));
    expect(kind.read('')).toEqual({ ok: true, value: null });
    expect(kind.show(null)).toBe('');
    expect(kind.readBack(null)).toBe('');
    expect(kind.read('0')).toEqual({ ok: true, value: 0 });
    expect(kind.read('1/2')).toEqual({ ok: true, value: 12.7 });
    expect(kind.read('-1/16')).toMatchObject({ ok: false, why: expect.stringContaining('below 0') });
    expect(kind.read('12,5')).toMatchObject({ ok: false, why: expect.stringContaining('12.5') });
  });

  it('turns by no more than half a turn either way', () => {
    expect(rotationKind.read('-180')).toEqual({ ok: true, value: -180 });
    expect(rotationKind.read('181')).toMatchObject({ ok: false, why: 'beyond half a turn' });
    expect(rotationKind.read('400')).toMatchObject({ ok: false });
  });
});

describe('how far marks lie off', () => {
  it('is typed and shown in the unit of the job, and lies between nothing and 10 mm', () => {
    const [inches, metric] = [deviationKind('in', 10), deviationKind('mm', 10)];
    expect([inches.show(1), inches.show(0), metric.show(1), metric.show(0.85)]).toEqual(['0.039', '0', '1', '0.85']);
    expect(inches.read('0.04')).toEqual({ ok: true, value: 1.016 });
    expect(metric.read('0.8')).toEqual({ ok: true, value: 0.8 });
    expect(inches.read('0.5')).toEqual({ ok: false, why: 'has to be from 0 to 0.394 in' });
    expect(metric.read('-1')).toEqual({ ok: false, why: 'has to be from 0 to 10 mm' });
    expect(metric.nudge?.(9.95, 1)).toBe(10);
    expect(inches.nudge?.(0.1, -1)).toBe(0);
  });
});
