/** What file systems refuse, a command line obeys or a reader does not see; halves of characters cannot be written at all. */
const UNFIT = /[\\/:*?"<>|\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]+/gu;
/** Hidden where it begins with a point; Windows drops points and blanks at an end. */
const ENDS = /^[\s.]+|[\s.]+$/gu;
/** Windows keeps these for itself, whatever follows the first point (Microsoft, "Naming Files, Paths, and Namespaces"). */
const DEVICE = /^(?:con|prn|aux|nul|com\d|lpt\d)(?=\s*(?:\.|$))/iu;

/** File systems take 255 bytes of UTF-8; the ending has 18, and a copy wants room for a number. */
const MOST_BYTES = 200;
const MOST_CHARACTERS = 100;

/** The name under which a job is saved: its own, as far as every file system takes it. */
export function fileNameFor(jobName: string, ending = 'cagewright.json'): string {
  const plain = shortened(jobName.replaceAll(UNFIT, '-')).replaceAll(ENDS, '').replace(DEVICE, '$&-job');
  return `${plain === '' ? 'job' : plain}.${ending}`;
}

/** No character is cut in two. */
function shortened(name: string): string {
  const bytes = new TextEncoder();
  let [kept, left] = ['', MOST_BYTES];
  for (const character of Array.from(name.slice(0, 2 * MOST_CHARACTERS)).slice(0, MOST_CHARACTERS)) {
    left -= bytes.encode(character).length;
    if (left < 0) break;
    kept += character;
  }
  return kept;
}
