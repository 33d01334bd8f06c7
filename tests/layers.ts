/**
 * Who may import whom, as data, and the check of one source file against it. Imports go one way only, type imports
 * counted too; each package has the layers it may be used in; the core stays pure.
 */
import { posix } from 'node:path';
import { parseSync } from 'vite';

const base = ['core/geometry', 'core/numerics', 'core/units', 'core/remembered.ts'];
const job = [...base, 'core/job'];
const surveyed = [...job, 'core/survey'];
const sprung = [...surveyed, 'core/springback'];
const solved = [...sprung, 'core/solve'];
const judged = [
  ...solved,
  'core/mesh',
  'core/feet',
  'core/gusset',
  'core/rehearse',
  'core/gaps',
  'core/fitting',
  'core/forecast',
  'core/checks',
  'core/rules',
  'core/stock',
  'core/marks',
  'core/cope',
  'core/run',
  'core/tack',
  'core/scan',
  'core/dossier',
  'core/quote',
  'core/photo',
];
const derived = [...judged, 'core/shop', 'core/stages', 'core/derive.ts', 'core/words'];
const compared = [...derived, 'core/compare'];
const drawn = [...derived, 'drawing'];
const trades = [
  'exports/tables',
  'exports/wraps',
  'exports/layout',
  'exports/feet',
  'exports/gussets',
  'exports/sheets',
  'exports/mesh',
  'exports/solids',
];
const papers = ['exports/dossier', 'exports/quote'];
const exporting = ['drawing', 'exports/shared', ...trades, ...papers, 'exports/products'];
const edited = [
  ...compared,
  'core/edit',
  'core/take-over',
  'core/session',
  'core/sharing',
  'core/shape',
  'core/mend',
  ...exporting,
  'workers',
];
const stored = ['store/types.ts', 'store/storage', 'store/tabs'];
const edits = ['store/document', 'store/editor'];
const stores = [...stored, ...edits, 'store/results', 'store/keeping', 'store/opening.ts'];
/** What is shown takes its stores ready made from the page. */
const kept = [
  ...edited,
  'store/types.ts',
  'store/page.ts',
  'store/scan-page.ts',
  'store/photo-page.ts',
  'store/pairing/types.ts',
  'store/pairing-page.ts',
];
const scene = [...kept, 'view/camera', 'view/meshes', 'view/canvas', 'view/scene'];
const views = [...scene, 'view/labels', 'view/gizmo', 'view/draw', 'view/rehearsal', 'view/bay'];
const parts = [...views, 'ui/kit', 'ui/fields', 'ui/table', 'ui/bending'];
const tasks = [
  'ui/survey',
  'ui/frame',
  'ui/checks',
  'ui/shop',
  'ui/run',
  'ui/rehearsal',
  'ui/shop-record',
  'ui/stock',
  'ui/pairing',
];

/** Each layer (a folder or a file in src) and the layers it may import; its own files it always may. */
export const layers: Readonly<Record<string, readonly string[]>> = {
  'core/remembered.ts': [],
  'core/numerics': [],
  'core/geometry': ['core/numerics'],
  'core/units': ['core/geometry', 'core/numerics'],
  'core/job': base,
  'core/shop': job,
  'core/survey': job,
  'core/edit': surveyed,
  'core/take-over': [...job, 'core/survey', 'core/edit'],
  'core/session': job,
  'core/sharing': job,
  'core/scan': job,
  'core/springback': job,
  'core/solve': sprung,
  'core/shape': [...solved, 'core/edit', 'core/gusset', 'core/scan', 'core/stock'],
  'core/mesh': solved,
  'core/feet': solved,
  'core/gusset': [...solved, 'core/feet'],
  'core/gaps': solved,
  'core/tack': [...solved, 'core/feet'],
  'core/fitting': [...solved, 'core/gaps'],
  'core/forecast': solved,
  'core/checks': [...solved, 'core/feet', 'core/gusset', 'core/rehearse', 'core/gaps', 'core/fitting', 'core/stock'],
  'core/rules': [...solved, 'core/feet', 'core/gusset', 'core/gaps', 'core/fitting', 'core/checks'],
  'core/photo': [],
  'core/dossier': [...solved, 'core/feet', 'core/gusset'],
  'core/stock': solved,
  'core/quote': [...solved, 'core/feet', 'core/gusset', 'core/rules', 'core/stock', 'core/cope', 'core/dossier'],
  'core/marks': solved,
  'core/cope': solved,
  'core/run': [...solved, 'core/marks'],
  'core/rehearse': solved,
  'core/mend': [
    ...solved,
    'core/rehearse',
    'core/gaps',
    'core/checks',
    'core/rules',
    'core/stages',
    'core/derive.ts',
    'core/edit',
    'core/shape',
  ],
  'core/words': [...judged, 'core/shop', 'core/take-over', 'core/mend', 'core/shape', 'core/compare'],
  'core/stages': [...solved, 'core/rehearse', 'core/gaps', 'core/forecast', 'core/checks', 'core/stock'],
  'core/derive.ts': [...solved, 'core/stages'],
  'core/compare': [...judged, 'core/quote', 'core/stages', 'core/derive.ts'],
  drawing: derived,
  'exports/shared': drawn,
  ...Object.fromEntries(trades.map((trade) => [trade, [...drawn, 'exports/shared']])),
  'exports/dossier': [...drawn, 'exports/shared', 'exports/sheets', 'exports/feet', 'exports/gussets'],
  'exports/quote': [...drawn, 'exports/shared', 'exports/sheets'],
  'exports/products': [...drawn, 'exports/shared', ...trades, ...papers],
  workers: [...compared, ...exporting],
  'fab.ts': [...derived, ...exporting],
  'store/types.ts': edited,
  'store/storage': [...edited, 'store/types.ts'],
  'store/tabs': [...edited, 'store/types.ts', 'store/storage'],
  'store/document': edited,
  'store/editor': [...edited, 'store/types.ts', 'store/document'],
  'store/results': [...edited, ...edits],
  'store/keeping': [...edited, ...stored, ...edits],
  'store/opening.ts': [...edited, ...stored, ...edits, 'store/keeping'],
  'store/shop': [...edited, ...stored, 'store/document'],
  'store/scans': [...edited, ...stored, 'store/document'],
  'store/photos': [...edited, ...stored, 'store/document'],
  'store/pairing/types.ts': edited,
  'store/pairing': [
    ...edited,
    'store/types.ts',
    'store/pairing/types.ts',
    'store/document',
    'store/keeping',
    'store/opening.ts',
  ],
  'store/whenIdle.ts': [],
  'store/browser.ts': [...edited, ...stored, 'store/keeping', 'store/shop', 'store/whenIdle.ts'],
  'store/page.ts': [...edited, ...stores, 'store/shop', 'store/browser.ts'],
  'store/scan-page.ts': [...edited, 'store/storage', 'store/scans', 'store/page.ts'],
  'store/photo-page.ts': [...edited, 'store/storage', 'store/photos', 'store/page.ts'],
  'store/pairing-page.ts': [...edited, 'store/storage', 'store/pairing/types.ts', 'store/pairing', 'store/page.ts'],
  'view/camera': kept,
  'view/meshes': kept,
  'view/canvas': [...kept, 'view/camera', 'view/meshes'],
  'view/scene': [...kept, 'view/camera', 'view/meshes', 'view/canvas'],
  'view/labels': scene,
  'view/gizmo': [...scene, 'view/labels'],
  'view/rehearsal': [...scene, 'view/labels'],
  'view/draw': [...scene, 'view/labels', 'view/gizmo'],
  'view/bay': [...scene, 'view/labels', 'view/gizmo', 'view/draw'],
  'ui/kit': views,
  'ui/fields': [...views, 'ui/kit'],
  'ui/table': [...views, 'ui/kit', 'ui/fields'],
  'ui/bending': [...views, 'ui/kit', 'ui/fields', 'ui/table'],
  ...Object.fromEntries(tasks.map((task) => [task, parts])),
  app: [...parts, ...tasks, 'store/document', 'store/keeping', 'store/pairing', 'store/shop', 'store/whenIdle.ts'],
  scripts: [],
  'start.mjs': ['scripts'],
};

/** Each package (node stands for Node's own modules) and the layers, or all layers of a folder, that may use it. */
export const packages: Readonly<Record<string, readonly string[]>> = {
  'gl-matrix': ['core/geometry'],
  valibot: ['core/job', 'core/shop', 'store/storage'], // files, and what the browser kept: both come from outside
  'jsonc-parser': ['core/job'],
  papaparse: ['exports'],
  '@tarikjabiri/dxf': ['drawing'],
  pdfkit: ['drawing'],
  qr: ['exports', 'ui/pairing', 'scripts'],
  '@gltf-transform/core': ['exports'],
  fflate: ['exports', 'store/storage'],
  'dejavu-fonts-ttf': ['workers'],
  'replicad-opencascadejs': ['exports', 'workers', 'fab.ts'],
  highs: ['exports', 'workers', 'fab.ts'],
  idb: ['store/storage'],
  yjs: ['store/pairing', 'scripts'],
  'y-websocket': ['store/pairing'],
  'y-indexeddb': ['store/pairing'],
  'y-protocols': ['scripts'],
  lib0: ['scripts'],
  ws: ['scripts'],
  zustand: ['store'],
  three: ['view', 'scripts'],
  '@react-three/fiber': ['view'],
  '@react-three/drei': ['view'],
  react: ['view', 'ui', 'app'],
  'react-dom': ['ui', 'app'],
  '@fontsource/b612': ['app'],
  node: ['fab.ts', 'scripts', 'start.mjs'],
  vite: ['scripts', 'start.mjs'],
};

/** Names that would let the outside, the clock or chance into the core. */
const impure = new Set(
  (
    'Date performance Intl console window document globalThis self navigator process crypto fetch localStorage ' +
    'indexedDB setTimeout setInterval queueMicrotask requestAnimationFrame eval Function'
  ).split(' '),
);

type Node = { readonly type: string } & Readonly<Record<string, unknown>>;

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';

/** Every node of the tree, with the node above it and the name of the place it has there. */
function walk(
  node: Node,
  visit: (node: Node, parent: Node | undefined, place: string) => void,
  parent?: Node,
  place = '',
): void {
  visit(node, parent, place);
  for (const key in node) {
    const value = node[key];
    if (Array.isArray(value)) for (const child of value) if (isNode(child)) walk(child, visit, node, key);
    if (isNode(value)) walk(value, visit, node, key);
  }
}

/** The layer that a file of src belongs to (path from src), or undefined. */
export const layerOf = (file: string): string | undefined =>
  Object.keys(layers).find((layer) => file === layer || file.startsWith(`${layer}/`));

const importers = new Set([
  'ImportDeclaration',
  'ExportNamedDeclaration',
  'ExportAllDeclaration',
  'ImportExpression',
  'TSImportType',
]);

function importBreach(file: string, layer: string, from: string): string | undefined {
  if (from.startsWith('.')) {
    const target = posix.join(posix.dirname(file), from.replace(/\?.*$/, ''));
    const targetLayer = layerOf(target);
    if (targetLayer === undefined) return `imports ${target}, which no layer holds`;
    if (targetLayer === layer || layers[layer]!.includes(targetLayer)) return undefined;
    return `${layer} imports ${targetLayer} (${target})`;
  }
  const name = from.startsWith('node:') ? 'node' : from.split('/', from.startsWith('@') ? 2 : 1).join('/');
  const mayUse = packages[name]?.some((room) => layer === room || layer.startsWith(`${room}/`)) === true;
  return mayUse ? undefined : `${layer} uses the package ${name}`;
}

/** What may not stand in the core, or undefined. */
function impurity(node: Node, parent: Node | undefined, place: string): string | undefined {
  if (node.type === 'TryStatement') return 'try/catch in the core';
  if (node.type === 'MemberExpression') {
    const name = (node.property as Node).name ?? (node.property as Node).value;
    return (node.object as Node).name === 'Math' && name === 'random' ? 'Math.random in the core' : undefined;
  }
  if (node.type !== 'Identifier' || !impure.has(String(node.name))) return undefined;
  const onlyNamesAMember = (place === 'property' || place === 'key') && !parent?.computed;
  return onlyNamesAMember ? undefined : `${String(node.name)} in the core`;
}

/**
 * The breaches in one source file, each as a sentence; empty if it keeps the rules.
 *
 * @param file its path from src, with forward slashes
 * @param code its text
 */
export function breaches(file: string, code: string): string[] {
  const layer = layerOf(file);
  if (layer === undefined) return [`${file}: belongs to no layer`];
  const { program, errors } = parseSync(file, code);
  const found: (string | undefined)[] = errors.map(({ message }) => `does not parse: ${message}`);

  walk(program as unknown as Node, (node, parent, place) => {
    if (importers.has(node.type) && isNode(node.source)) {
      const from = node.source.value;
      if (typeof from === 'string') found.push(importBreach(file, layer, from));
      else if (layer !== 'scripts') found.push('imports a name that is made when it runs');
    }
    if (file.startsWith('core/')) found.push(impurity(node, parent, place));
  });

  const statements = program.body as unknown as readonly Node[];
  const passesOn = (node: Node) => node.type.startsWith('Export') && isNode(node.source);
  if (statements.some(passesOn) && statements.every((node) => passesOn(node) || node.type === 'ImportDeclaration')) {
    found.push('is a barrel: it only passes on what other files export');
  }
  return found.filter((breach) => breach !== undefined).map((breach) => `${file}: ${breach}`);
}
