// How a flat top and a lift with two flows are told.
import { describe, expect, test } from "vitest";
import { BENCH, codesOf, findingOf, record } from "../kit/check-record.ts";

const HEAD = "lift[in]  depression[inH2O]  flow[cfm]  settle[s]";
const bench = [...BENCH, "quick 2 s"];
const slow = (settle: string) =>
  record({
    bench,
    head: HEAD,
    rows: [
      "0.300 28.0 150.0 1.3",
      "0.400 28.0 185.0 1.4",
      `0.500 28.0 185.9 ${settle}`,
      "0.600 28.0 185.6 1.5",
    ],
  });

describe("a flat top", () => {
  test("is marked where the approach took longest, from its first station to its last", () => {
    const { finding } = findingOf(slow("7.4"), "flat-top");
    const lines = slow("7.4").split("\n");
    expect(lines[finding.span.line]).toContain("0.500");
    expect(finding.related.map(({ span, message }) => `${message} ${lines[span.line]?.slice(0, 5)}`)).toEqual(
      ["flat from here 0.400", "up to here 0.600"],
    );
  });

  test("says how flat, how slow, and what to do", () => {
    const { message, help, severity } = findingOf(slow("7.4"), "flat-top");
    expect(severity).toBe("warning");
    // 185.6/185.0 = +0.324 %; 1.645 · 0.4 % · sqrt(2) = 0.931 %, by hand.
    expect(message).toBe(
      "flow is flat from 0.400 in to 0.600 in (185.0 → 185.6 cfm, +0.32 %; chance alone gives 0.93 %) on a slow approach: 7.4 s at 0.500 in, quick is 2 s",
    );
    expect(help).toBe(
      "a slow approach may carry air that would let go: a trace of 0.500 in tells, open from shut at full speed",
    );
  });

  test("is not questioned on a quick approach", () => {
    expect(codesOf(slow("2.0"))).toEqual([]);
  });

  test("names the limit that it took where the bench does not say what is quick", () => {
    const usual = slow("7.4").replace("quick 2 s", "settle 1.5 s");
    expect(findingOf(usual, "flat-top").message).toContain("1.5 times the usual settle is 2.25 s");
  });
});

describe("a trace in the flat answers it", () => {
  /** Ten samples a second of a bench that comes up with a time constant; from 1.3 s on the flow is lower by a share. */
  const traced = (timeConstant: number, drop = 0, lift = "0.600", flow = true) => {
    const rows = Array.from({ length: 100 }, (_, at) => {
      const time = at / 10;
      const depression = 28 * -Math.expm1(-time / timeConstant);
      const passed = 35 * Math.sqrt(depression) * (time > 1.25 ? 1 - drop : 1);
      return `${time} ${depression.toFixed(2)}${flow ? ` ${passed.toFixed(1)}` : ""}`;
    });
    const head = `time[s] depression[inH2O]${flow ? " flow[cfm]" : ""}`;
    return `${slow("7.4")}\ntrace ${lift} in of r1\n${head}\n${rows.join("\n")}\n`;
  };
  const found = (fixture: string) => {
    const { message, help, severity, finding } = findingOf(fixture, "flat-top");
    return { answer: message.replace(/^.*quick is 2 s/, ""), help, severity, finding };
  };

  test("with the port letting go there, which the flat hides", () => {
    const { answer, help, severity, finding } = found(traced(0.35, 0.05));
    expect(answer).toBe("; the trace at 0.600 in lets go at 1.3 s, which the flat hides");
    expect(help).toContain("look at the short side");
    expect(severity).toBe("warning");
    expect(finding.related.at(-1)?.message).toBe("the trace");
  });

  test("with air that stays attached on a quick approach: what is left is a hint", () => {
    const { answer, help, severity } = found(traced(0.35));
    expect(answer).toBe("; the trace at 0.600 in came up in 1.8 s and shows no letting-go");
    expect(help).toContain("at 0.600 in the air stays attached on a quick approach too");
    expect(severity).toBe("hint");
  });

  test("with nothing where it came up as slowly as the sweep", () => {
    const { answer, help, severity } = found(traced(1.2));
    expect(answer).toBe(
      "; the trace at 0.600 in shows no letting-go, but took 6.0 s to come up and so answers nothing",
    );
    expect(help).toContain("open from shut at full speed at 0.500 in, and trace that");
    expect(severity).toBe("warning");
  });

  test("but not from a lift outside the flat, nor without a flow", () => {
    expect(found(traced(0.35, 0, "0.300")).answer).toBe("");
    expect(found(traced(0.35, 0, "0.600", false)).answer).toBe("");
  });
});

describe("a lift with two flows", () => {
  const loop = [
    "0.200 28.0 108.0",
    "0.300 28.0 150.0",
    "0.400 28.0 178.0",
    "0.300 28.0 146.5",
    "0.200 28.0 108.0",
  ];

  test("is marked on the way down, and points to the way up", () => {
    const fixture = record({ rows: loop });
    expect(codesOf(fixture)).toEqual(["direction-dependent"]);
    const { finding, message } = findingOf(fixture, "direction-dependent");
    const lines = fixture.split("\n");
    expect(lines[finding.span.line]).toContain("146.5");
    expect(finding.related.map(({ span }) => lines[span.line])).toEqual(["0.300 28.0 150.0"]);
    expect(message).toBe(
      "at 0.300 in the flow is 2.3 % lower on the way down (150.0 → 146.5 cfm; chance alone gives 1.1 %); no other lift was read both ways, and chance alone marks it in 5.0 % of stable sweeps",
    );
  });

  test("is told once a sweep: at the clearest lift, with the others beside it and how many chance marks", () => {
    const rows = ["0.200 28.0 108.0", "0.300 28.0 150.0", "0.350 28.0 166.0", "0.400 28.0 178.0"];
    const down = ["0.350 28.0 161.0", "0.300 28.0 147.5", "0.200 28.0 108.1", "0.100 28.0 55.0"];
    const fixture = record({ rows: [...rows, ...down] });
    expect(codesOf(fixture)).toEqual(["direction-dependent"]);
    const { finding, message } = findingOf(fixture, "direction-dependent");
    expect(message).toBe(
      "at 0.350 in the flow is 3.0 % lower on the way down (166.0 → 161.0 cfm; chance alone gives 1.1 %); 2 of 3 lifts differ: chance alone marks one or more in 14.3 % of stable sweeps, and 2 or more in 0.72 %",
    );
    const lines = fixture.split("\n");
    expect(lines[finding.span.line]).toContain("161.0");
    expect(finding.related.map(({ span, message: said }) => [lines[span.line]?.trim(), said])).toEqual([
      ["0.350 28.0 166.0", "on the way up"],
      ["0.300 28.0 147.5", "0.300 in too: 1.7 % lower on the way down"],
    ]);
  });

  test("may pass more on the way down too", () => {
    const fixture = record({ rows: loop.map((row) => row.replace("146.5", "153.5")) });
    expect(findingOf(fixture, "direction-dependent").message).toContain("2.3 % higher on the way down");
  });
});
