/** A file to be written or downloaded: what every export answers. No I/O here. */
export interface TextFile {
  /** Fixed by the format, never taken from the job: a name in a job file cannot lead out of the folder. */
  readonly fileName: string;
  readonly text: string;
}
