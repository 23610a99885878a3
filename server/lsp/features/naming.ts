// Where names are defined and used, over all files: definition, references, rename, links.
import { DocumentHighlightKind, type Location, ResponseError } from "vscode-languageserver";
import { NAMES, type NamesAnswer, namesParams } from "../../../shared/messages/requests.ts";
import { definition } from "../../service/definition.ts";
import { documentLinks } from "../../service/document-links.ts";
import { type KnownName, knownNames } from "../../service/known-names.ts";
import { references } from "../../service/references.ts";
import { renamable, rename } from "../../service/rename.ts";
import { guarded } from "../guard.ts";
import { toRange, toWorkspaceEdit } from "../to-protocol.ts";
import { uriOf } from "../uris.ts";
import { type Asked, at, type Document, type Place } from "./asked.ts";

export function registerNaming({ connection, guard, analysed, others }: Asked): void {
  connection.onDefinition(
    guard("definition", null, async (params: Place) => {
      const analysis = await analysed(params);
      const found = analysis && definition(analysis, at(params));
      return found === undefined ? null : { uri: uriOf(found.path), range: toRange(found.span) };
    }),
  );
  connection.onReferences(
    guard(
      "references",
      [],
      async (params: Place & { context: { includeDeclaration: boolean } }): Promise<Location[]> => {
        const analysis = await analysed(params);
        if (analysis === undefined) return [];
        return references(analysis, at(params), await others())
          .filter(({ role }) => params.context.includeDeclaration || role === "use")
          .map(({ path, span }) => ({ uri: uriOf(path), range: toRange(span) }));
      },
    ),
  );
  connection.onDocumentHighlight(
    guard("highlight", [], async (params: Place) => {
      const analysis = await analysed(params);
      if (analysis === undefined) return [];
      return references(analysis, at(params), [])
        .filter(({ path }) => path === analysis.scope.file.path)
        .map(({ span, role }) => ({
          range: toRange(span),
          kind: role === "definition" ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
        }));
    }),
  );
  connection.onPrepareRename(
    guard("rename", null, async (params: Place) => {
      const analysis = await analysed(params);
      const name = analysis && renamable(analysis, at(params));
      return name === undefined ? null : { range: toRange(name.span), placeholder: name.id };
    }),
  );
  connection.onRenameRequest(
    guarded("rename", connection.console, null, async (params: Place & { newName: string }) => {
      const analysis = await analysed(params);
      if (analysis === undefined) return null;
      const renamed = rename(analysis, at(params), params.newName, await others());
      if ("problem" in renamed) throw new ResponseError(-32803, renamed.problem);
      return toWorkspaceEdit(renamed);
    }),
  );
  connection.onDocumentLinks(
    guard("links", [], async (params: Document) => {
      const analysis = await analysed(params);
      const found = analysis === undefined ? [] : documentLinks(analysis);
      return found.map(({ path, span }) => ({ range: toRange(span), target: uriOf(path) }));
    }),
  );
  const nothing: NamesAnswer = { benches: [], ports: [], stages: [] };
  connection.onRequest<NamesAnswer, void>(
    NAMES,
    guard("names", nothing, async (params: unknown): Promise<NamesAnswer> => {
      const { uri } = namesParams.parse(params);
      const here = await analysed({ textDocument: { uri } });
      const { benches, ports, stages } = knownNames(await others(), here?.scope);
      const placed = ({ id, path }: KnownName) => ({ id, uri: uriOf(path) });
      return { benches: benches.map(placed), ports: ports.map(placed), stages: [...stages] };
    }),
  );
}
