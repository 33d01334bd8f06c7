/** Each kind of file read back by a program that is not ours; every complaint is a sentence. */
import { spawnSync } from 'node:child_process';
import { validateBytes } from 'gltf-validator';
import papaparse from 'papaparse';
import { auditDxf, hasEzdxf, readDxf, textsOf } from '../exports/dxf.ts';
import { readPdf } from '../exports/pdf.ts';

export interface Given {
  readonly fileName: string;
  readonly bytes: Uint8Array;
}

export interface ReadBack {
  /** All words in the file. */
  readonly words: readonly string[];
  readonly complaints: readonly string[];
}

const PYTHON = '/usr/bin/python3';
const hasExpat = spawnSync(PYTHON, ['-c', 'import xml.parsers.expat']).status === 0;
if (!hasExpat) console.warn('python3 is not there: SVG files are looked through without a strict reader of XML');

/** Line feeds and returns part the lines of a text file; a tab, and every other control, has no business in one. */
const CONTROLS = /[^\P{Cc}\n\r]/u;
/** Turn the reading direction, or are no characters. */
const TURNING = /[\u202a-\u202e\u2066-\u2069]/u;

/** Strict UTF-8 without controls. */
function textOf({ bytes }: Given, complaints: string[]): string {
  const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  const control = CONTROLS.exec(text);
  if (control !== null) complaints.push(`holds the control character U+${control[0].charCodeAt(0).toString(16)}`);
  return text;
}

export async function readPdfBack({ bytes }: Given): Promise<ReadBack> {
  const { pages, scripts } = await readPdf(bytes);
  const texts = pages.flatMap((page) => page.texts);
  return {
    words: texts.map(({ text }) => text),
    complaints: [
      ...(pages.length === 0 ? ['has no page'] : []),
      ...(scripts ? ['runs a script'] : []),
      ...(pages.some(({ annotations }) => annotations > 0) ? ['has an annotation or a link'] : []),
      ...texts.flatMap(({ text }) =>
        /[\p{Cc}\p{Cs}]/u.test(text) || TURNING.test(text) ? [`prints ${JSON.stringify(text)}`] : [],
      ),
      ...pages.flatMap(({ texts: printed, width, height }) =>
        printed.flatMap(({ x, y, width: wide, text }) =>
          x < -1 || y < -1 || x + wide > width + 1 || y > height + 1
            ? [`prints off the page: ${text.slice(0, 40)}`]
            : [],
        ),
      ),
    ],
  };
}

/** Text that a spreadsheet reckons: = + - @ and their wide forms, after blanks of any kind or none; a number is one. */
const FORMULA = /^[\s\p{Cf}]*[=+\-@\uff1d\uff0b\uff0d\uff20]/u;
const NUMBER = /^-?\d+(?:\.\d+)?(?:e[-+]\d+)?$/iu;

export function readCsvBack(file: Given): ReadBack {
  const complaints: string[] = [];
  const text = textOf(file, complaints);
  const { data, errors } = papaparse.parse<string[]>(text, { skipEmptyLines: true });
  const [head = []] = data;
  for (const { message } of errors) complaints.push(message);
  for (const row of data)
    if (row.length !== head.length) complaints.push(`a row of ${row.length} cells under ${head.length}`);
  // One that splits at every line end, knowing no quotes, finds as many rows.
  const lines = text.split(/\r\n|\n|\r/u).filter((line) => line !== '');
  if (lines.length !== data.length) complaints.push(`${lines.length} lines for ${data.length} rows`);
  for (const cell of data.flat())
    if (FORMULA.test(cell) && !NUMBER.test(cell)) complaints.push(`a formula: ${JSON.stringify(cell.slice(0, 40))}`);
  return { words: data.flat(), complaints };
}

const ELEMENTS = new Set(['svg', 'title', 'desc', 'g', 'path', 'text', 'circle']);
const ATTRIBUTES =
  /^(?:xmlns|version|width|height|viewBox|id|d|fill|stroke|stroke-width|stroke-dasharray|x|y|cx|cy|r|font-family|font-size|font-weight|text-anchor|transform)$/u;

/** Expat, as Python has it: what is no well-formed XML is refused. */
const EXPAT = `
import json, sys
from xml.parsers import expat
answers = []
for document in json.load(sys.stdin):
    words, names, said = [], [], []
    parser = expat.ParserCreate()
    parser.buffer_text = True
    def start(name, attributes):
        names.append([name, list(attributes)])
    parser.StartElementHandler = start
    parser.CharacterDataHandler = words.append
    parser.StartDoctypeDeclHandler = lambda *about: said.append('a document type')
    parser.ProcessingInstructionHandler = lambda *about: said.append('a processing instruction')
    parser.CommentHandler = lambda *about: said.append('a comment')
    try:
        parser.Parse(document.encode('utf-8', 'surrogatepass'), True)
    except expat.ExpatError as error:
        said.append(str(error))
    answers.append({'words': words, 'names': names, 'said': said})
json.dump(answers, sys.stdout)
`;

interface Answer {
  readonly words: readonly string[];
  readonly names: readonly (readonly [string, readonly string[]])[];
  readonly said: readonly string[];
}

/** All at once: the reader takes a while to start. */
export function readSvgsBack(files: readonly Given[]): readonly ReadBack[] {
  const complaints: string[][] = files.map(() => []);
  const texts = files.map((file, i) => textOf(file, complaints[i]!));
  if (!hasExpat || files.length === 0) return texts.map((text, i) => ({ words: [text], complaints: complaints[i]! }));
  const run = spawnSync(PYTHON, ['-c', EXPAT], { input: JSON.stringify(texts), encoding: 'utf8', maxBuffer: 1 << 28 });
  if (run.status !== 0) throw new Error(run.stderr);
  return (JSON.parse(run.stdout) as Answer[]).map(({ words, names, said }, i) => ({
    words,
    complaints: [
      ...complaints[i]!,
      ...said,
      ...names.flatMap(([name, attributes]) => [
        ...(ELEMENTS.has(name) ? [] : [`an element ${name}`]),
        ...attributes.filter((each) => !ATTRIBUTES.test(each)).map((each) => `an attribute ${each}`),
      ]),
    ],
  }));
}

/** Codes of DXF text: a sign by two per cents, a control by a caret, a character by its number. */
const DXF_CODE = /%%|\^[^ ]|\\[UuMm]\+/u;

export function readDxfBack(file: Given): ReadBack {
  const complaints: string[] = [];
  textOf(file, complaints);
  const drawing = readDxf(file.bytes);
  const words = textsOf(drawing);
  for (const text of words) {
    if (DXF_CODE.test(text)) complaints.push(`a text with a code: ${JSON.stringify(text.slice(0, 40))}`);
    if (TURNING.test(text)) complaints.push('a text that turns the reading direction');
  }
  const kinds = new Set(drawing.entities.map(({ type }) => type));
  for (const kind of kinds)
    if (!['LINE', 'LWPOLYLINE', 'ARC', 'CIRCLE', 'TEXT'].includes(kind)) complaints.push(`an entity ${kind}`);
  if (hasEzdxf) {
    const { troubles, undefined: unknown } = auditDxf(file.bytes);
    complaints.push(...troubles, ...unknown.map((layer) => `a layer that is not declared: ${layer}`));
  }
  return { words, complaints };
}

export async function readGlbBack({ bytes }: Given): Promise<ReadBack> {
  const { issues } = await validateBytes(bytes);
  // The JSON chunk of a binary glTF (glTF 2.0, 4.4.3).
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const json = new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(20, 20 + view.getUint32(12, true)));
  const {
    nodes = [],
    images,
    buffers = [],
  } = JSON.parse(json) as {
    nodes?: { name: string }[];
    images?: unknown;
    buffers?: { uri?: string }[];
  };
  return {
    words: nodes.map(({ name }) => name),
    complaints: [
      ...issues.messages.map(({ code, pointer }) => `${code} ${pointer ?? ''}`),
      ...(images === undefined && buffers.every(({ uri }) => uri === undefined) ? [] : ['refers to another file']),
    ],
  };
}

export function readStlBack({ bytes }: Given): ReadBack {
  const facets = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(80, true);
  const head = new TextDecoder().decode(bytes.subarray(0, 80)).replaceAll('\0', '');
  return {
    words: [],
    complaints: [
      ...(bytes.length === 84 + 50 * facets ? [] : [`${bytes.length} bytes for ${facets} facets`]),
      ...(/^[ -~]*$/u.test(head) && !head.startsWith('solid') ? [] : ['a head that is not its own']),
    ],
  };
}

export function readJsonBack({ bytes }: Given): ReadBack {
  const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  const { job, tubes } = JSON.parse(text) as { job: string; tubes: { id: string; name: string }[] };
  const complaints = CONTROLS.test(text) ? ['holds a raw control character'] : [];
  return { words: [job, ...tubes.flatMap(({ id, name }) => [id, name])], complaints };
}
