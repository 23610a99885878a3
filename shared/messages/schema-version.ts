// The version of the command's machine output, by itself so that writing output does not load the schemas of it.

/** Raised when a document that was valid before could no longer be read as before. */
export const SCHEMA_VERSION = 1;
