// How the analysis reaches files, whether they lie on a disk, in an editor or in a test.

/** What reading a file gave. */
export type FileRead = { readonly text: string } | { readonly problem: string };

/** The files of one platform; paths use `/`. */
export interface Files {
  readonly read: (path: string) => FileRead;
  /** The folder that a file's includes must stay in. */
  readonly root: (path: string) => string;
}
