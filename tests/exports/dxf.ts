/** DXF read by programs that are not ours: dxf-parser always, and ezdxf (Debian's python3-ezdxf) where it is installed. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Reader, { type IDxf, type IEntity, type ILwpolylineEntity, type ITextEntity } from 'dxf-parser';

const readText = (bytes: Uint8Array): string => new TextDecoder('utf-8', { fatal: true }).decode(bytes);

export function readDxf(bytes: Uint8Array): IDxf {
  const drawing = new Reader().parseSync(readText(bytes));
  if (drawing === null) throw new Error('not a DXF file');
  return drawing;
}

export const outlinesOf = (drawing: IDxf, layer: string): ILwpolylineEntity[] =>
  drawing.entities.filter(
    (entity): entity is ILwpolylineEntity => entity.type === 'LWPOLYLINE' && entity.layer === layer,
  );

export const textsOf = (drawing: IDxf): string[] =>
  drawing.entities
    .filter((entity: IEntity): entity is ITextEntity => entity.type === 'TEXT')
    .map((entity) => entity.text);

const PYTHON = '/usr/bin/python3';

/** Whether ezdxf is there; says so where it is not, so that a check left out is seen to be. */
export const hasEzdxf = spawnSync(PYTHON, ['-c', 'import ezdxf']).status === 0;
if (!hasEzdxf) console.warn('python3-ezdxf is not installed: DXF files are read back by dxf-parser alone');

const AUDIT = `
import ezdxf, json, sys
def audited(file):
  drawing = ezdxf.readfile(file)
  audit = drawing.audit()
  space = drawing.modelspace()
  return {
    'version': drawing.dxfversion,
    'units': drawing.header['$INSUNITS'],
    'troubles': [str(each.message) for each in audit.errors + audit.fixes],
    'layers': [layer.dxf.name for layer in drawing.layers],
    'undefined': sorted({each.dxf.layer for each in space} - {layer.dxf.name for layer in drawing.layers}),
    'open': sum(1 for each in space.query('LWPOLYLINE[layer=="CUT"]') if not each.closed),
    'cut': [[list(point[:2]) for point in each.get_points()] for each in space.query('LWPOLYLINE[layer=="CUT"]')],
  }
print(json.dumps([audited(file) for file in sys.argv[1:]]))
`;

export interface Audit {
  readonly version: string;
  readonly units: number;
  readonly troubles: readonly string[];
  readonly layers: readonly string[];
  readonly undefined: readonly string[];
  readonly open: number;
  readonly cut: readonly (readonly (readonly [number, number])[])[];
}

export const auditDxf = (bytes: Uint8Array): Audit => auditAll([bytes])[0]!;

/** Of each file, by one reader: it takes longer to start than to read. */
export function auditAll(files: readonly Uint8Array[]): readonly Audit[] {
  const folder = mkdtempSync(join(tmpdir(), 'cagewright-'));
  try {
    const paths = files.map((bytes, i) => {
      const path = join(folder, `${i}.dxf`);
      writeFileSync(path, bytes);
      return path;
    });
    const { stdout, stderr, status } = spawnSync(PYTHON, ['-c', AUDIT, ...paths], {
      encoding: 'utf8',
      maxBuffer: 1 << 28,
    });
    if (status !== 0) throw new Error(stderr);
    return JSON.parse(stdout) as Audit[];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
