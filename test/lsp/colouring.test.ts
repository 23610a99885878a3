// Colours that are sent after an edit make, with those that were there, the colours of the whole text.
import fc from "fast-check";
import { expect, test } from "vitest";
import type { SemanticTokens, SemanticTokensDelta } from "vscode-languageserver";
import { shopRecord } from "../kit/service.ts";
import { FULL, session } from "../kit/session.ts";
import { changed, textChange } from "../kit/text-changes.ts";

const URI = "file:///shop/monday.headnote";
const TWIN = "file:///shop/twin.headnote";
const RECORD = shopRecord(
  '     0.100  28.0  55.0\n     0.200  28.0  99.0  void "slipped"\n\n# one\nrun i2\n',
);

function patched(data: readonly number[], { edits }: SemanticTokensDelta): number[] {
  return edits.reduce<number[]>(
    (numbers, edit) => numbers.toSpliced(edit.start, edit.deleteCount, ...(edit.data ?? [])),
    [...data],
  );
}

test("for any script of edits", async () => {
  const asked = await session(FULL);
  const ask = <T>(method: string, uri: string, more = {}) =>
    asked.ask<T>(`textDocument/semanticTokens/${method}`, { textDocument: { uri }, ...more });
  const script = fc.array(textChange("\n\n", "# c\n", "void", "bench b\n"), { minLength: 1, maxLength: 5 });
  try {
    await fc.assert(
      fc.asyncProperty(script, async (changes) => {
        let text = RECORD;
        await asked.open(URI, text);
        let { data, resultId = "" } = await ask<SemanticTokens>("full", URI);
        for (const change of changes) {
          text = changed(text, change);
          await asked.change(URI, text);
          const delta = await ask<SemanticTokensDelta>("full/delta", URI, { previousResultId: resultId });
          expect(delta.edits.length).toBeLessThanOrEqual(1);
          data = patched(data, delta);
          resultId = delta.resultId ?? "";
          await asked.open(TWIN, text);
          const whole = await ask<SemanticTokens>("range", TWIN, {
            range: { start: { line: 0, character: 0 }, end: { line: 1000, character: 0 } },
          });
          await asked.client.sendNotification("textDocument/didClose", { textDocument: { uri: TWIN } });
          expect(data).toEqual(whole.data);
        }
      }),
      { numRuns: 40 },
    );
    await asked.open(URI, RECORD);
    const { resultId } = await ask<SemanticTokens>("full", URI);
    await asked.change(URI, RECORD.replace("55.0", "56.0"));
    const { edits } = await ask<SemanticTokensDelta>("full/delta", URI, { previousResultId: resultId });
    expect(edits[0]?.data?.length).toBeLessThan(50);
  } finally {
    asked.close();
  }
});
