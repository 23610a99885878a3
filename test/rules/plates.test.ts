// Check plates: when a bench is off, and when a certificate has run out.
import { describe, expect, test } from "vitest";
import { codesOf, findingOf } from "../kit/check-record.ts";

interface Parts {
  readonly plate?: readonly string[];
  readonly date?: string;
  readonly rows?: readonly string[];
}

function plateRecord({ plate, date, rows }: Parts): string {
  return [
    "headnote 1",
    "bench north",
    "shows flow",
    "repeat 0.4 %",
    "uncertainty 1.2 %",
    "plate p2000",
    ...(plate ?? ["flow 270.0 cfm at 28 inH2O", "uncertainty 0.6 %"]),
    `session ${date ?? "2026-03-02T09:30+01:00"}`,
    "bench north",
    "target 28 inH2O",
    "air 20 degC 1000 hPa 40 %RH",
    "leak none",
    "plate-check p2000",
    "depression[inH2O] flow[cfm]",
    ...(rows ?? ["28.0 270.0"]),
  ].join("\n");
}

describe("a plate is off", () => {
  // U of the difference: the root of 1.2² + 0.6² + (2 · 0.4)² + digits = 1.57 %.
  test.each([
    ["28.0 274.0", []],
    ["28.0 274.5", ["plate-off"]],
    ["28.0 266.0", []],
    ["28.0 265.5", ["plate-off"]],
  ])("beyond the combined uncertainty: %s", (row, codes) => {
    expect(codesOf(plateRecord({ rows: [row] }))).toEqual(codes);
  });

  test("never where the plate does not say how well it is known", () => {
    expect(codesOf(plateRecord({ plate: ["flow 270.0 cfm at 28 inH2O"], rows: ["28.0 300.0"] }))).toEqual([]);
  });

  test("says by how much, against what, and in which direction", () => {
    const { message, finding } = findingOf(plateRecord({ rows: ["28.0 276.0"] }), "plate-off");
    expect(message).toBe(
      "bench 'north' reads plate 'p2000' 2.2 % high (276 cfm for 270.0 cfm at 28 inH2O); the two are known to 1.6 % together (En 1.4)",
    );
    expect(finding.span).toEqual({ line: 13, from: 0, to: 17 });
    expect(finding.related).toEqual([{ span: { line: 6, from: 0, to: 26 }, message: "the certificate" }]);
  });

  test("a plate that was scaled too far is told so", () => {
    const { help } = findingOf(plateRecord({ rows: ["10.0 166.0"] }), "plate-off");
    expect(help).toMatch(/^hold the certificate's own depression: this was scaled by 67\.3 %/);
  });
});

describe("a plate is overdue", () => {
  const due = (date: string) => ["flow 270.0 cfm at 28 inH2O", "uncertainty 0.6 %", `due ${date}`];

  test.each([
    ["2026-03-01", ["plate-overdue"]],
    ["2026-03-02", []],
    ["2027-01-01", []],
  ])("from the day after: %s", (date, codes) => {
    expect(codesOf(plateRecord({ plate: due(date) }))).toEqual(codes);
  });

  test("the plate may stand in another file, where its line is shown", () => {
    const record = `
      headnote 1
      include "shop.headnote"
      session 2026-03-02
      plate-check p1
      depression[Pa] flow[cfm]
      #- /shop.headnote
      headnote 1
      plate p1
      due 2026-01-01
    `;
    const { message, finding } = findingOf(record, "plate-overdue");
    expect(message).toBe("plate 'p1' was to be certified again by 2026-01-01; this session is of 2026-03-02");
    expect(finding.related).toEqual([
      { file: "/shop.headnote", span: { line: 2, from: 0, to: 14 }, message: "the date" },
    ]);
  });

  test("a session without a date, and a plate that is not there, are not judged", () => {
    expect(codesOf("headnote 1\nsession 2026-03-02\nplate-check p9\ndepression[Pa] flow[cfm]\n")).toEqual([
      "name-not-found",
    ]);
    expect(
      codesOf("headnote 1\nplate p1\ndue 2020-01-01\nplate-check p1\ndepression[Pa] flow[cfm]\n"),
    ).toEqual([]);
  });
});
