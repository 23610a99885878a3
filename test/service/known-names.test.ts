import { expect, test } from "vitest";
import { knownNames } from "../../server/service/known-names.ts";
import { open } from "../kit/service.ts";

const SHOPS = `headnote 1
include "north.headnote"
run r
  stage "as cast"
run s
  stage "as cast"
#- attic.headnote
headnote 1
bench one
port intake
#- north.headnote
headnote 1
bench one
bench two
`;

function names(here: boolean) {
  const { paths, analyse, analysis } = open(SHOPS);
  // The attic comes first in the list of files.
  const scopes = [...paths].sort().map((path) => analyse(path).scope);
  return knownNames(scopes, here ? analysis.scope : undefined);
}

const endings = (found: readonly { readonly id: string; readonly path: string }[]) =>
  found.map(({ id, path }) => `${id} ${path.split("/").at(-1)}`);

test("each name is known once, from the file that the open record takes in", () => {
  expect(endings(names(true).benches)).toEqual(["one north.headnote", "two north.headnote"]);
  expect(endings(names(true).ports)).toEqual(["intake attic.headnote"]);
  expect(names(true).stages).toEqual(["as cast"]);
});

test("without one the first file counts", () => {
  expect(endings(names(false).benches)).toEqual(["one attic.headnote", "two north.headnote"]);
});
