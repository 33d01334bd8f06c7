import { describe, expect, it } from 'vitest';
import type { Derived } from '../../../src/core/derive.ts';
import { fabrication, fabricationFile, fabricationJson } from '../../../src/exports/tables/fabrication.ts';
import { bentTube, branchAt60, derivedDemo } from '../jobs.ts';

/** Contract's fields of each record, in its order; fields of our own may stand between them. */
const FIELDS = {
  file: ['format', 'version', 'job', 'tubes', 'clearances', 'findings'],
  tube: 'id name role section die twinOf corners straights bends developedLength sharpCornerLength blankLength cutLength mass ends'.split(
    ' ',
  ),
  bend: ['angle', 'rotation', 'radius', 'arc', 'start', 'end', 'machineAngle', 'clampMark'],
  end: ['node', 'fit', 'direction', 'reference', 'cuts', 'profile', 'tip', 'throat'],
  cut: ['against', 'includedAngle', 'offSquare', 'clocking', 'axisOffset', 'sawDiameter', 'sawDepth', 'onBend'],
  finding: ['id', 'severity', 'tube', 'message', 'source'],
  clearance: ['envelope', 'tube', 'distance', 'gap', 'ok', 'at'],
};

const among = (record: object, fields: readonly string[]) => Object.keys(record).filter((key) => fields.includes(key));

describe('fabrication', () => {
  it('has every field of the format, in its order', () => {
    const file = fabrication(derivedDemo());
    expect(among(file, FIELDS.file)).toEqual(FIELDS.file);
    for (const clearance of file.clearances) expect(among(clearance, FIELDS.clearance)).toEqual(FIELDS.clearance);
    for (const finding of file.findings) expect(among(finding, FIELDS.finding)).toEqual(FIELDS.finding);
    for (const tube of file.tubes) {
      expect(among(tube, FIELDS.tube)).toEqual(FIELDS.tube);
      for (const bend of tube.bends) expect(among(bend, FIELDS.bend)).toEqual(FIELDS.bend);
      for (const end of tube.ends) {
        expect(among(end, FIELDS.end)).toEqual(FIELDS.end);
        expect(end.profile).toHaveLength(360);
        for (const cut of end.cuts) expect(among(cut, FIELDS.cut)).toEqual(FIELDS.cut);
      }
    }
  });

  // Computed with two independent methods; CLR 135.
  it('gives bends in degrees: 90, 90, 90, turned 0, 90, 116.5651', () => {
    const [tube] = fabrication(bentTube()).tubes;
    const bends = tube!.bends;
    [0, 90, 116.5651].forEach((rotation, i) => {
      expect(bends[i]!.angle).toBeCloseTo(90, 9);
      expect(bends[i]!.rotation).toBeCloseTo(rotation, 4);
    });
    [165, 130, 230, 312.2136].forEach((straight, i) => expect(tube!.straights[i]).toBeCloseTo(straight, 3));
    expect(tube!.developedLength).toBeCloseTo(1473.3861, 3);
  });

  it('marks the clamp the die offset before the start of the bend', () => {
    const bends = fabrication(bentTube()).tubes[0]!.bends;
    expect(bends[0]!.start).toBeCloseTo(165, 9);
    expect(bends[0]!.clampMark).toBeCloseTo(65, 9);
    // 165 + an arc of 135 x pi/2 = 212.058 + 130 = 507.058
    expect(bends[1]!.clampMark).toBeCloseTo(407.058, 3);
  });

  it('has no machine angle for a tube of unknown steel, and an estimate for a known one', () => {
    expect(fabrication(bentTube()).tubes[0]!.bends[0]).toMatchObject({ machineAngle: null, machineAngleFrom: null });
    const sections = [{ id: 'tube', name: '45 x 2.5', outerDiameter: 45, wall: 2.5, material: 'dom-1020' }];
    const bend = fabrication(bentTube({ sections })).tubes[0]!.bends[0]!;
    expect(bend.machineAngleFrom).toBe('estimate');
    // Common practice: 2 to 3 degrees in 90; elastic recovery alone reads low.
    expect(bend.machineAngle).toBeGreaterThan(91);
    expect(bend.machineAngle).toBeLessThan(93);
  });

  // Computed with two independent methods: R 22.225, r 19.05, 60 degrees, every 45 degrees from the acute side.
  it('counts the profile from the acute side, in whole degrees', () => {
    const [end] = fabrication(branchAt60()).tubes[1]!.ends;
    expect(end.cuts).toHaveLength(1);
    expect(end.cuts[0]).toMatchObject({ against: 'run', sawDiameter: 44.45, onBend: false });
    expect(end.cuts[0]!.includedAngle).toBeCloseTo(60, 9);
    expect(end.cuts[0]!.offSquare).toBeCloseTo(30, 9);
    [36.662, 28.19, 13.219, 12.635, 14.665, 12.635, 13.219, 28.19].forEach((s, i) =>
      expect(end.profile[45 * i]).toBeCloseTo(s, 3),
    );
    expect(end.throat).toBeCloseTo(36.662, 3);
  });

  it('names the mirror image of a mirrored member by what it is the twin of', () => {
    const { tubes } = fabrication(bentTube({}, { mirror: true }));
    expect(tubes.map(({ id, twinOf }) => [id, twinOf])).toEqual([
      ['bar', null],
      ["bar'", 'bar'],
    ]);
    expect(tubes[1]!.bends[1]!.rotation).toBeCloseTo(-90, 9);
  });
});

describe('fabricationJson', () => {
  it('reads back as the same data, to the last bit', () => {
    const derived = derivedDemo();
    expect(JSON.parse(fabricationJson(derived))).toEqual(JSON.parse(JSON.stringify(fabrication(derived))));
  });

  it('writes null where no cutter reaches, never NaN', () => {
    const derived = branchAt60();
    const [run, branch] = derived.tubes;
    const [a, b] = branch!.ends;
    const holed: Derived = {
      ...derived,
      tubes: [run!, { ...branch!, ends: [{ ...a, outer: a.outer.with(7, NaN) }, b] }],
    };
    const text = fabricationJson(holed);
    expect(text).not.toContain('NaN');
    const [end] = JSON.parse(text).tubes[1].ends;
    expect(end.profile[6]).toBeTypeOf('number');
    expect(end.profile[7]).toBeNull();
  });

  it('keeps a point, a bend and a profile on one line each', () => {
    const lines = fabricationJson(bentTube()).split('\n');
    expect(lines).toContain('        [300, 400, 0],');
    expect(lines.filter((line) => /^ +\{ "angle": .*\},?$/u.test(line))).toHaveLength(3);
    expect(lines.filter((line) => /^ +"profile": \[.*\],$/u.test(line))).toHaveLength(2);
  });

  it('keeps hostile names as data', () => {
    const name = '"]}\u2028</script>\u0000\ud800 \u202e../';
    const text = fabricationJson(bentTube({ name }, { name }));
    expect(JSON.parse(text).job).toBe(name);
    expect(JSON.parse(text).tubes[0].name).toBe(name);
  });

  it('has its one fixed file name', () => {
    expect(fabricationFile(bentTube({ name: '../../elsewhere' })).fileName).toBe('fabrication.json');
  });
});
