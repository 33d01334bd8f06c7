import papaparse from 'papaparse';
import { describe, expect, it } from 'vitest';
import type { Derived } from '../../../src/core/derive.ts';
import { csvFiles } from '../../../src/exports/tables/csv.ts';
import { fabrication } from '../../../src/exports/tables/fabrication.ts';
import { secondRoundText } from '../../command-line.ts';
import { bentTube, branchAt60, derivedFrom } from '../jobs.ts';

type Row = Record<string, string>;

/** The rows of one table by their headings; a table that is no clean CSV fails the test. */
function rowsOf(derived: Derived, fileName: string): Row[] {
  const { text } = csvFiles(derived).find((file) => file.fileName === fileName)!;
  const { data, errors } = papaparse.parse<Row>(text, { header: true, skipEmptyLines: true });
  expect(errors).toEqual([]);
  return data;
}

/** '' for null, else the number that the cell must read as. */
const cell = (value: number | null | undefined) => (value === null || value === undefined ? '' : String(value));

const demo = derivedFrom(secondRoundText());
const file = fabrication(demo);

describe('the tables', () => {
  it('are these four', () => {
    expect(csvFiles(demo).map(({ fileName }) => fileName)).toEqual(['tubes.csv', 'bends.csv', 'xyz.csv', 'copes.csv']);
  });

  it('tubes.csv reads back as the fabrication file has it', () => {
    const rows = rowsOf(demo, 'tubes.csv');
    expect(rows).toHaveLength(file.tubes.length);
    file.tubes.forEach((tube, i) =>
      expect(rows[i]).toMatchObject({
        number: String(tube.number),
        id: tube.id,
        name: tube.name,
        role: tube.role,
        die: tube.die ?? '',
        twin_of: tube.twinOf ?? '',
        blank_mm: cell(tube.blankLength),
        developed_mm: cell(tube.developedLength),
        sharp_corner_mm: cell(tube.sharpCornerLength),
        mass_kg: cell(tube.mass),
      }),
    );
    expect(rows[0]).toMatchObject({ section: '1 3/4 x .120', outer_diameter_mm: '44.45', wall_mm: '3.048' });
  });

  it('tubes.csv says what to cut: the blank with its grip, and errors that bar it', () => {
    const dies = demo.job.dies.map((die) => ({ ...die, leastGrip: 700, leastStraight: 5000 }));
    const [hoop] = rowsOf(derivedFrom(JSON.stringify({ ...demo.job, dies })), 'tubes.csv');
    // 518.36 mm of last straight with the plate's 0.53 falls 181.1 short of 700 (tests/golden/demo.txt has the lengths).
    expect(Number(hoop!['grip_b_mm'])).toBeCloseTo(700 - 518.36 - 0.53, 1);
    expect(Number(hoop!['cut_to_mm'])).toBeCloseTo(3028.9 + 181.11, 1);
    expect(hoop).toMatchObject({ grip_a_mm: '0', batch: '', errors: '3' });
  });

  it('bends.csv has the clamp mark of the sheet: beyond the bend where end B is in front, and the blank’s end with its grip', () => {
    const dies = demo.job.dies.map((die) => ({ ...die, leastGrip: 700, leastStraight: 5000 }));
    const rowOf = (from: 'A' | 'B') =>
      rowsOf(
        derivedFrom(JSON.stringify({ ...demo.job, dies, marking: { from, mark: 'clamp', fine: false } })),
        'bends.csv',
      ).find(({ tube, bend }) => tube === 'hoop' && bend === '4')!;
    const bend = file.tubes[0]!.bends[3]!;
    const [offset, toNodeB] = [dies[0]!.clampOffset, file.tubes[0]!.developedLength - bend.end];
    // 518.36 mm of straight at either end, with 0.53 more of the plate, falls 181.1 short of 700 at the end behind.
    const grip = 700 - 518.36 - 0.53;
    const fromA = rowOf('A');
    expect(fromA).toMatchObject({ end_in_front: 'A', tape_from: 'A' });
    expect(Number(fromA['clamp_mark_from_node_a_mm'])).toBeCloseTo(bend.start - offset, 6);
    expect(Number(fromA['clamp_mark_on_tape_mm'])).toBeCloseTo(bend.start - offset + 0.53, 1);
    expect(Number(fromA['blank_end_to_node_a_mm'])).toBeCloseTo(0.53, 1);
    const fromB = rowOf('B');
    expect(fromB).toMatchObject({ end_in_front: 'B', tape_from: 'B' });
    expect(Number(fromB['clamp_mark_from_node_a_mm'])).toBeCloseTo(bend.end + offset, 6);
    expect(Number(fromB['clamp_mark_on_tape_mm'])).toBeCloseTo(toNodeB - offset + 0.53, 1);
    expect(Number(fromB['blank_end_to_node_a_mm'])).toBeCloseTo(0.53 + grip, 1);
  });

  it('bends.csv reads back as the fabrication file has it, one row a bend', () => {
    const rows = rowsOf(demo, 'bends.csv');
    const bends = file.tubes.flatMap((tube) => tube.bends.map((bend, i) => ({ tube, bend, i })));
    expect(rows).toHaveLength(bends.length);
    bends.forEach(({ tube, bend, i }, k) =>
      expect(rows[k]).toMatchObject({
        tube: tube.id,
        bend: String(i + 1),
        straight_before_mm: cell(tube.straights[i]),
        rotation_deg: cell(bend.rotation),
        angle_deg: cell(bend.angle),
        pull_to_deg: cell(bend.pullTo),
        pull_to_is: bend.pullToIs,
        machine_angle_deg: cell(bend.machineAngle),
        radius_mm: cell(bend.radius),
        arc_mm: cell(bend.arc),
        start_from_node_a_mm: cell(bend.start),
        end_from_node_a_mm: cell(bend.end),
        straight_after_mm: cell(tube.straights[i + 1]),
      }),
    );
  });

  it('xyz.csv reads back as the fabrication file has it, one row a corner', () => {
    const rows = rowsOf(demo, 'xyz.csv');
    const corners = file.tubes.flatMap((tube) => tube.corners.map((at) => [tube.id, ...at.map(String)]));
    expect(rows.map((row) => [row['tube'], row['x_mm'], row['y_mm'], row['z_mm']])).toEqual(corners);
  });

  it('copes.csv reads back as the fabrication file has it, one row a cut', () => {
    const rows = rowsOf(demo, 'copes.csv').filter((row) => row['against'] !== '');
    const cuts = file.tubes.flatMap((tube) =>
      tube.ends.flatMap((end, i) =>
        end.cuts.map((cut, at) => ({ tube, side: 'AB'[i]!, end, cut, notch: end.notching!.notches[at]! })),
      ),
    );
    expect(rows).toHaveLength(cuts.length);
    cuts.forEach(({ tube, side, end, cut, notch }, k) =>
      expect(rows[k]).toMatchObject({
        tube: tube.id,
        end: side,
        node: end.node,
        fit: 'cope',
        against: cut.against,
        included_angle_deg: cell(cut.includedAngle),
        off_square_deg: cell(cut.offSquare),
        clocking_deg: cell(cut.clocking),
        axis_offset_mm: cell(cut.axisOffset),
        saw_diameter_mm: cell(cut.sawDiameter),
        saw_depth_mm: cell(cut.sawDepth),
        on_bend: String(cut.onBend),
        tip_mm: cell(end.tip),
        throat_mm: cell(end.throat),
        way: notch.way,
        why_wrap: notch.why ?? '',
        saw_taken_mm: cell(notch.saw),
        set_off_square_deg: cell(notch.set),
        centre_from_sawn_end_mm: cell(notch.centre),
        saw_travel_mm: cell(notch.depth),
        gap_left_mm: cell(end.notching!.gap),
      }),
    );
  });

  it('copes.csv has a row for an end without a cut too', () => {
    const rows = rowsOf(branchAt60(), 'copes.csv');
    expect(rows.map((row) => [row['tube'], row['end'], row['fit'], row['against']])).toEqual([
      ['run', 'A', 'square', ''],
      ['run', 'B', 'square', ''],
      ['branch', 'A', 'cope', 'run'],
      ['branch', 'B', 'plate', ''],
    ]);
  });

  it('have inches beside millimetres only in a job shown in inches', () => {
    const [inMm] = rowsOf(bentTube(), 'tubes.csv');
    expect(Object.keys(inMm!).filter((heading) => heading.endsWith('_in'))).toEqual([]);
    const [inInches] = rowsOf(bentTube({ lengthUnit: 'in' }), 'tubes.csv');
    // 1473.3861 mm (computed with two independent methods) / 25.4
    expect(inInches).toMatchObject({ outer_diameter_mm: '45', outer_diameter_in: '1.7717', developed_in: '58.0073' });
  });
});

describe('the text', () => {
  // RFC 4180, section 2: CRLF after each record, a quote doubled within quotes, as many fields in every record.
  it('ends every record with CRLF and has as many fields in each', () => {
    for (const { text } of csvFiles(demo)) {
      expect(text.endsWith('\r\n')).toBe(true);
      expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/u);
      const { data } = papaparse.parse<string[]>(text, { skipEmptyLines: true });
      expect(new Set(data.map((row) => row.length)).size).toBe(1);
    }
  });

  it('keeps a negative number a bare number', () => {
    const { text } = csvFiles(bentTube({}, { mirror: true })).find(({ fileName }) => fileName === 'bends.csv')!;
    expect(text).toMatch(/,-90,/u);
  });

  it.each([
    ['quotes', 'The "long" bar'],
    ['commas and semicolons', 'a,b;=cmd()'],
    ['emoji', '🏁 \u{1F469}\u200D\u{1F527} bar'],
    ['right-to-left text', 'קורה \u202e ראשית'],
    ['200 characters', 'bar '.repeat(50)],
    ['a path', '../../etc/passwd'],
    ['blanks at both ends', '  bar  '],
    ['nothing', ''],
  ])('brings back a name with %s unchanged', (_, name) => {
    const derived = bentTube({}, { name });
    expect(rowsOf(derived, 'tubes.csv')[0]!['name']).toBe(fabrication(derived).tubes[0]!.name);
    expect(rowsOf(derived, 'tubes.csv')[0]!['name']).toBe(name);
  });

  it.each([
    ['line breaks', 'over\r\ntwo lines\nand\u2028three', 'over two lines and three'],
    ['control characters', 'a\u0000\u001b[31mb\tc\u0085', 'a [31mb c '],
    ['2000 characters', 'bar '.repeat(500), `${'bar '.repeat(49)}bar…`],
  ])('replaces %s in a name, role, batch and material', (_, given, written) => {
    const sections = [{ id: 'tube', outerDiameter: 45, wall: 2.5, material: given }];
    const derived = bentTube({ sections }, { name: given, role: given, batch: given });
    const [row] = rowsOf(derived, 'tubes.csv');
    for (const heading of ['name', 'role', 'batch', 'material']) expect(row![heading]).toBe(written);
    for (const { text } of csvFiles(derived)) expect(text.replaceAll('\r\n', '')).not.toMatch(/[\p{Cc}\u2028]/u);
  });

  // OWASP, "CSV Injection": cells that begin with = + - @, tab or carriage return are run; quoting alone is no cure.
  it.each(['=cmd()', '+1+1', '-2+3', '@SUM(A1)', '\t=1', '\r=1', '\n=1', '  =1', '＝1', '="x","y"'])(
    'puts an apostrophe before %j',
    (name) => {
      const derived = bentTube({}, { name, role: name });
      const written = name.replace(/^[\t\r\n]/u, ' ');
      for (const fileName of ['tubes.csv', 'bends.csv', 'xyz.csv', 'copes.csv']) {
        for (const row of rowsOf(derived, fileName)) expect(row['name']).toBe(`'${written}`);
      }
      expect(rowsOf(derived, 'tubes.csv')[0]!['role']).toBe(`'${written}`);
    },
  );

  it('quotes all text, so that a program which splits at semicolons finds no formula in it', () => {
    const [tubes] = csvFiles(bentTube({}, { name: 'a;=cmd()' }));
    expect(tubes!.text).toContain(',"a;=cmd()",');
  });

  it.each(['\u200b=1+1', '\u2066 \ufeff@SUM(A1:A9)'])(
    'writes an apostrophe before a formula behind characters that are not seen: %j',
    (name) => {
      const [tubes] = csvFiles(bentTube({}, { name }));
      const cells = tubes!.text.split('"').map((cell) => cell.replace(/[^'=@+A-Z0-9:()]/gu, ''));
      expect(cells.filter((cell) => /^'[=@]/u.test(cell))).toHaveLength(1);
      expect(cells.filter((cell) => /^[=@]/u.test(cell))).toEqual([]);
    },
  );
});
