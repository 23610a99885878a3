// What is used of the CSV reader. Its own types would bring those of Node into folders that know no platform.
declare module "papaparse" {
  interface Chunk<T> {
    readonly data: T[];
    readonly meta: { readonly delimiter: string };
  }

  interface Options {
    readonly delimiter?: string;
    readonly newline?: string;
    readonly header?: boolean;
    /** Reads so many rows at most. */
    readonly preview?: number;
    readonly skipEmptyLines?: boolean;
  }

  interface Streaming<T> extends Options {
    readonly chunkSize: number;
    readonly chunk: (results: Chunk<T>, parser: { readonly abort: () => void }) => void;
  }

  interface Parse {
    <T = string[]>(text: string, options: Streaming<T>): void;
    <T = string[]>(text: string, options?: Options): Chunk<T>;
  }

  const Papa: { readonly parse: Parse };
  export default Papa;
}
