// Headnote's own requests beside the protocol's, as both sides check them.
import * as z from "zod/mini";

/** Server to client: the text of a file that the client can reach. */
export const READ_FILE = "headnote/readFile";
/** Server to client: the files of the workspace whose names end alike. */
export const LIST_FILES = "headnote/listFiles";
/** Client to server: the row that follows the one whose end is given. */
export const ON_ENTER = "headnote/onEnter";
/** Client to server: what a new session can name. */
export const NAMES = "headnote/names";

/** A command of the client that a lens runs: a picture; its arguments are a URI and the run's id, or else null and what a trace, ladder or map is called. */
export const SHOW_CURVE = "headnote.showCurve";
/** A command of the client that a lens runs: places beside one, with their texts. */
export const SHOW_PLACES = "headnote.showPlaces";

const position = z.object({ line: z.number(), character: z.number() });

/** Where it is asked, and the lines to show. */
export const showPlacesArguments = z.tuple([
  z.string(),
  position,
  z.array(z.object({ uri: z.string(), position })),
]);

export const readFileParams = z.object({ uri: z.string() });
export const readFileAnswer = z.union([z.object({ text: z.string() }), z.object({ problem: z.string() })]);
/** Records, and the logs that a trace can name. */
export const listFilesParams = z.object({ ending: z.enum([".headnote", ".csv"]) });
export const listFilesAnswer = z.object({ uris: z.array(z.string()) });
export const onEnterParams = z.object({ uri: z.string(), position });
/** The text of the next row, or nothing. */
export const onEnterAnswer = z.nullable(z.object({ text: z.string() }));
export const namesParams = z.object({ uri: z.string() });
/** A name and the file that defines it. */
const knownName = z.object({ id: z.string(), uri: z.string() });
export const namesAnswer = z.object({
  benches: z.array(knownName),
  ports: z.array(knownName),
  stages: z.array(z.string()),
});

export type ShowPlacesArguments = z.infer<typeof showPlacesArguments>;
export type FileEnding = z.infer<typeof listFilesParams>["ending"];
export type OnEnterAnswer = z.infer<typeof onEnterAnswer>;
export type NamesAnswer = z.infer<typeof namesAnswer>;
export type ReadFileAnswer = z.infer<typeof readFileAnswer>;
