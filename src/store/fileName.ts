/** The name under which a job is saved: its own, without what file systems refuse or what turns or hides its letters. */
export function fileNameFor(jobName: string): string {
  const plain = jobName.replaceAll(/[\\/:*?"<>|\p{Cc}\p{Cf}]+/gu, '-').replace(/^[\s.]+|[\s.]+$/gu, '');
  return `${plain === '' ? 'job' : plain.slice(0, 100)}.cagewright.json`;
}
