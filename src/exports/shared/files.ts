/** What an export is: files made of what was derived. Nothing is written here; that is for whoever asked. */

export interface ExportFile {
  /** With forward slashes where it lies in a folder: wraps/12-B.svg. Made of safe characters only. */
  readonly fileName: string;
  readonly bytes: Uint8Array;
  /** What a person must hear of it, in a sentence: what it does not hold, and why. */
  readonly note?: string;
}

/**
 * Where a format wants a date. None is known here, and with the same one each time the same job gives the same bytes. It
 * is the earliest that a zip can hold.
 */
export const NO_DATE = new Date(Date.UTC(1980, 0, 1));

/** The note of a file that these tubes and gussets are not in, and why; nothing where it has them all. */
export const leftOutNote = (fileName: string, why: string, names: readonly string[]): { readonly note?: string } =>
  names.length === 0
    ? {}
    : {
        note: `${fileName} is without ${names.join(', ')}: ${why}`,
      };

export interface PrintSettings {
  readonly paper: 'a4' | 'letter';
  /**
   * What the printer makes of a length of 1, along the sheet's width and its height: the measured length of the test bar by
   * its true one. Drawings to scale 1:1 are divided by it.
   */
  readonly printed: { readonly x: number; readonly y: number };
  /** When it is printed, as 2026-03-02: given, since here nobody knows it, and the same job and day give the same bytes. Absent: no day is printed. */
  readonly day?: string;
  /** Of the page, for the code by which a sheet is opened in it. Absent: there is none. */
  readonly address?: string;
}

export const plainPrint: PrintSettings = { paper: 'a4', printed: { x: 1, y: 1 } };
