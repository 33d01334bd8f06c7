/**
 * cage.step: every tube as an exact solid of planes, cylinders and tori, in car axes and millimetres, AP214. One product a
 * tube, and one a piece of a foot under it, with one body in it, both named by number and name; then one a gusset. Bodies are made and translated one by one, and
 * the kernel's memory freed in between.
 *
 * The kernel writes the file's data; names and header are set in its text afterwards, so that names outside ASCII are
 * spelt as the standard asks, and the same job gives the same bytes.
 */
import type { Going } from '../../drawing/going.ts';
import { WHO_DECIDES } from '../../core/words/cautions.ts';
import type { Derived } from '../../core/derive.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { standsOf } from '../../core/feet/stand.ts';
import { gussetsOf, isMade } from '../../core/gusset/gussets.ts';
import { leftOutNote, NO_DATE, type ExportFile } from '../shared/files.ts';
import { gussetName, standName } from '../shared/stand-name.ts';
import { tubeBody } from './body.ts';
import { footBodies } from './foot-body.ts';
import { gussetBody } from './gusset-body.ts';
import { scoped, type Keep, type Kernel, type Shape } from './kernel.ts';
import { part21Text } from './part21.ts';

/** In the kernel's own file system, which is its memory. */
const SCRATCH = '/cage.step';

/** `going` hears of each tube before it is cut. A tube or a gusset that has no body is left out, and named in the file's note. */
export async function stepFile(derived: Derived, oc: Kernel, going: Going): Promise<ExportFile> {
  const { job, tubes } = derived;
  oc.Interface_Static.SetCVal('write.step.schema', 'AP214IS');
  oc.Interface_Static.SetCVal('write.step.unit', 'MM');
  oc.Interface_Static.SetCVal('write.step.product.name', 'tube');
  const writer = new oc.STEPControl_Writer();
  try {
    const made: SolvedTube[] = [];
    const names: string[] = [];
    const put = (keep: Keep, solid: Shape, name: string): void => {
      const asSolid = oc.STEPControl_StepModelType.STEPControl_ManifoldSolidBrep;
      writer.Transfer(solid, asSolid, true, keep(new oc.Message_ProgressRange()));
      names.push(part21Text(name));
    };
    for (const [i, tube] of tubes.entries()) {
      await going(i, tubes.length);
      const translated = scoped((keep) => {
        const body = tubeBody(oc, keep, tube);
        if (body === null) return false;
        put(keep, body, `${tube.number} ${tube.name}`);
        for (const stand of standsOf(tube)) {
          const bodies = footBodies(oc, keep, stand);
          for (const [i, { part, body: piece }] of bodies.entries()) put(keep, piece, standName(stand, part, i));
        }
        return true;
      });
      if (translated) made.push(tube);
    }
    const gussets = gussetsOf(derived).flatMap((set) => {
      const { made: shape, gusset } = set;
      if (!isMade(shape)) return [];
      const body = scoped((keep) => {
        const solid = gussetBody(oc, keep, shape, gusset);
        if (solid !== null) put(keep, solid, gussetName(set));
        return solid !== null;
      });
      return body ? [] : [gussetName(set)];
    });
    await going(tubes.length, tubes.length);
    const text = named(names.length === 0 ? EMPTY : written(oc, writer), part21Text(job.name), names);
    const leftOut = tubes.filter((tube) => !made.includes(tube));
    return {
      fileName: 'cage.step',
      bytes: new TextEncoder().encode(text),
      ...leftOutNote(
        'cage.step',
        'that cannot be made like this, are cut into a bend of its own, or meet their run again past the cut',
        [...leftOut.map(({ number, name }) => `${number} ${name}`), ...gussets],
      ),
    };
  } finally {
    writer.delete();
  }
}

/** The kernel writes no file that has nothing in it. */
const EMPTY = `ISO-10303-21;
HEADER;
FILE_DESCRIPTION();
FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));
ENDSEC;
DATA;
ENDSEC;
END-ISO-10303-21;
`;

function written(oc: Kernel, writer: InstanceType<Kernel['STEPControl_Writer']>): string {
  writer.Write(SCRATCH);
  const text = oc.FS.readFile(SCRATCH, { encoding: 'utf8' });
  oc.FS.unlink(SCRATCH);
  return text;
}

/**
 * The file as the kernel wrote it, with a header of our own and the tubes' names. Products and bodies stand in it in the order in
 * which they were translated.
 */
function named(text: string, job: string, names: readonly string[]): string {
  let [product, body] = [0, 0];
  const twice = (name: string): string => `'${name}','${name}'`;
  return text
    .replace(/FILE_DESCRIPTION[\s\S]*?(?=FILE_SCHEMA)/u, () => header(job))
    .replaceAll(/(?<=\bPRODUCT\()'[^']*',\s*'[^']*'/gu, () => twice(names[product++]!))
    .replaceAll(/(?<=\bMANIFOLD_SOLID_BREP\()''/gu, () => `'${names[body++]!}'`);
}

const header = (job: string): string =>
  [
    `FILE_DESCRIPTION(('${job}','Tubes, feet and gussets as they stand in the frame: ends cut, no allowance left on them','${WHO_DECIDES}'),'2;1');`,
    `FILE_NAME('cage.step','${NO_DATE.toISOString().slice(0, 19)}',(''),(''),'','Cagewright','');`,
    '',
  ].join('\n');
