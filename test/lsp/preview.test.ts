// The preview as a client asks for it over the protocol.
import { expect, test } from "vitest";
import { PREVIEW, PREVIEW_FILE, previewAnswer } from "../../shared/messages/preview.ts";
import { shopRecord } from "../kit/service.ts";
import { FULL, session } from "../kit/session.ts";

const URI = "file:///shop/a.headnote";
const RECORD = shopRecord("  0.100  28.0  55.0\n  0.200  28.0  111.0\n");
const ASKED = {
  uri: URI,
  line: null,
  shown: null,
  choice: { kind: "cursor" },
  axis: "lift",
  cd: "curtain",
  units: [],
  lifts: null,
};
const LOOK = { width: 700, colours: { kind: "dark", background: "#000", text: "#fff", font: "" } };

test("an open document is shown as it stands, under its version", async () => {
  const { open, change, ask, close } = await session(FULL, { [URI]: "headnote 1\n" });
  await open(URI, RECORD);
  const first = previewAnswer.parse(await ask(PREVIEW, { ...ASKED, look: LOOK }));
  await change(URI, RECORD.replace("111.0", "112.0"));
  const second = previewAnswer.parse(await ask(PREVIEW, { ...ASKED, look: LOOK }));
  if ("unreadable" in first || "unreadable" in second) throw new Error("it was not read");
  expect(second.version).toBe(first.version + 1);
  expect(second.runs.map(({ uri }) => uri)).toEqual([URI]);
  expect([first, second].map(({ tables }) => tables[0]?.rows[1]?.cells.includes("111.2"))).toEqual([
    false,
    true,
  ]);
  close();
});

test("a file that nobody has opened is read, with the files that its client alone can reach", async () => {
  const files = {
    [URI]: `headnote 1\ninclude "b.headnote"\n${RECORD.slice(RECORD.indexOf("session"))}  baseline base\n`,
    "file:///shop/b.headnote": `${RECORD.slice(0, RECORD.indexOf("session"))}\nrun base\n  lift[in]  depression[inH2O]  flow[cfm]\n  0.100  28.0  50.0\n`,
  };
  for (const through of ["disk", "client"] as const) {
    const { ask, close } = await session(FULL, files, through);
    const answer = previewAnswer.parse(await ask(PREVIEW, { ...ASKED, look: LOOK }));
    if ("unreadable" in answer) throw new Error(answer.unreadable);
    expect(answer.version).toBe(-1);
    expect(answer.facts.find(({ label }) => label === "bench")?.words).toContain("north");
    close();
  }
});

test("what cannot be read, and questions that are none, have an answer", async () => {
  const { ask, close } = await session(FULL);
  expect(await ask(PREVIEW, { ...ASKED, look: LOOK })).toEqual({ unreadable: "it is not there" });
  expect(await ask(PREVIEW_FILE, { ...ASKED, format: "csv" })).toBeNull();
  for (const params of [{}, { ...ASKED }, { ...ASKED, look: { ...LOOK, width: -1 } }, { ...ASKED, uri: 3 }]) {
    expect(await ask(PREVIEW, params)).toEqual({ unreadable: expect.stringContaining("log") });
    expect(await ask(PREVIEW_FILE, params)).toBeNull();
  }
  close();
});

test("files are those of the command", async () => {
  const { open, ask, close } = await session(FULL);
  await open(URI, RECORD);
  const file = (format: string) => ask<{ name: string; text: string }>(PREVIEW_FILE, { ...ASKED, format });
  expect((await file("csv")).text).toMatch(/^file,line,run,/);
  expect((await file("markdown")).text).toContain("| lift, in |");
  expect(JSON.parse((await file("vega-lite")).text).$schema).toContain("vega-lite");
  expect((await file("csv")).name).toBe("a-i1");
  close();
});
