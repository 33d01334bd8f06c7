/** Edits of certificates, of photos, and of the diameters measured over a bend. */
import { describe, expect, it } from 'vitest';
import { setBentAcross } from '../../../src/core/edit/bent.ts';
import { addCertificate, removeCertificate, updateCertificate } from '../../../src/core/edit/certificates.ts';
import { addPhoto, datePhoto, namePhoto, removePhoto, showsTube } from '../../../src/core/edit/photos.ts';
import { certificatesOf } from '../../../src/core/job/kinds/certificate.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { fittedBends } from '../../../src/core/run/fitted-bends.ts';
import { withTubesCalled } from '../../../src/core/shape/named-tubes.ts';
import { sampleFile, sampleJob, withValue } from '../job/sample.ts';

const JOB = sampleJob();
const faultsOf = (keys: readonly (string | number)[], value: unknown) => {
  const parsed = parseJob(JSON.stringify(withValue(sampleFile(), keys, value)));
  return parsed.ok ? [] : parsed.faults.map(({ place, message }) => `${place}: ${message}`);
};

describe('certificates', () => {
  it('are added, changed field by field, and taken out; what is not there changes nothing', () => {
    const two = addCertificate(JOB, { batch: 'L-7', certificate: '' });
    const said = updateCertificate(two, 1, { certificate: 'Sheet 4', section: 'main', note: 'Copy' });
    expect(said.certificates[1]).toEqual({ batch: 'L-7', certificate: 'Sheet 4', section: 'main', note: 'Copy' });
    expect(said.certificates[0]).toBe(JOB.certificates[0]);
    expect(updateCertificate(said, 1, { section: '', note: '' }).certificates[1]).toEqual({
      batch: 'L-7',
      certificate: 'Sheet 4',
    });
    expect(updateCertificate(said, 1, { note: 'Copy' })).toBe(said);
    expect(updateCertificate(said, 2, { note: 'Copy' })).toBe(said);
    expect(removeCertificate(said, 0).certificates).toEqual([said.certificates[1]]);
    expect(removeCertificate(said, 2)).toBe(said);
  });

  it('are those of the heat, and of no other section', () => {
    const list = [
      { batch: 'a', section: 'main', certificate: '1' },
      { batch: 'a', certificate: '2' },
      { batch: 'b', section: 'main', certificate: '3' },
      { batch: 'a', section: 'light', certificate: '4' },
    ];
    const of = (batch?: string) =>
      certificatesOf(list, { section: 'main', ...(batch !== undefined && { batch }) }).map(
        ({ certificate }) => certificate,
      );
    expect(of('a')).toEqual(['1', '2']);
    expect(of('c')).toEqual([]);
    expect(of()).toEqual([]);
  });
});

describe('photos', () => {
  it('are added once, captioned, dated, and said to show tubes', () => {
    const sum = 'ffffffffffffffffffffffff';
    const two = addPhoto(JOB, { name: 'Feet', sum });
    expect(two.photos[1]).toEqual({ id: 'photo2', name: 'Feet', sum });
    expect(addPhoto(two, { name: 'Again', sum })).toBe(two);
    const dated = datePhoto(namePhoto(two, 'photo2', 'All feet'), 'photo2', '2026-03-05');
    expect(dated.photos[1]).toEqual({ id: 'photo2', name: 'All feet', sum, on: '2026-03-05' });
    expect(datePhoto(dated, 'photo2', '').photos[1]).toEqual({ id: 'photo2', name: 'All feet', sum });
    const shown = showsTube(dated, 'photo2', 'stay', true);
    expect(shown.photos[1]!.tubes).toEqual(['stay']);
    expect(showsTube(shown, 'photo2', 'stay', true)).toBe(shown);
    expect(showsTube(shown, 'photo2', 'stay', false)).toEqual(dated);
    expect(removePhoto(shown, 'photo1').photos).toEqual([shown.photos[1]]);
  });

  it('go on to show tubes that are called otherwise', () => {
    const called = withTubesCalled(JOB, (tube) => (tube === 'hoop' ? 'main' : tube));
    expect(called.photos[0]!.tubes).toEqual(['main', "stay'"]);
  });

  it.each(['../../etc/passwd', '0A1B2C3D4E5F60718293A4B5', '', '0a1b2c3d4e5f60718293a4b5.jpg', '0a1b'])(
    'with %j for a sum are refused: files are looked for under it',
    (sum) => {
      expect(faultsOf(['photos', 0, 'sum'], sum)).toEqual([
        'photos[0].sum: is no sum of a picture: 24 figures, 0 to 9 and a to f',
      ]);
    },
  );
});

describe('the diameters over a bend', () => {
  it('stand the least first, and go with an empty field', () => {
    const measured = setBentAcross(JOB, 'hoop', 1, [45.2, 43.8]);
    expect(measured.bent[0]!.bends[0]!.across).toEqual([43.8, 45.2]);
    expect(setBentAcross(measured, 'hoop', 1, [43.8, 45.2])).toBe(measured);
    expect(setBentAcross(measured, 'hoop', 1, null).bent[0]!.bends[0]).not.toHaveProperty('across');
    expect(setBentAcross(JOB, 'hoop', 2, [44, 45])).toBe(JOB);
  });

  it('are refused in a file the other way round', () => {
    expect(faultsOf(['bent', 0, 'bends', 0, 'across'], [45, 44])).toEqual([
      'bent[0].bends[0].across: the least comes first, then the greatest',
    ]);
  });

  it('stay with the bend when the tape says how it came out', () => {
    const parts = [
      { what: 'angle', bend: 1, toMark: 0, value: 84.1 },
      { what: 'middle', bend: 1, toMark: -1.3, value: 1200 },
    ] as const;
    const [once] = fittedBends(parts, JOB.bent[0]!.bends);
    expect(once).toMatchObject({ net: 84.1, across: [43.1, 45.6], read: { net: 84.5, straight: 1003.5 } });
    expect(once!.read).not.toHaveProperty('across');
    expect(fittedBends(parts, [once!])[0]!.across).toEqual([43.1, 45.6]);
  });
});
