import { describe, expect, test } from "vitest";
import type { Setup } from "../../../shared/model/setup.ts";
import { evaluateRun } from "../../kit/evaluate.ts";
import { AS_CAST, type Parts, smallRecord } from "../sample-record.ts";

function setupOf(parts: Parts): Setup {
  return evaluateRun(smallRecord({ ...parts, rows: [] })).setup;
}

/** The text of a quantity and where it came from. */
function stated(settled: Setup["target"] | undefined): readonly (string | undefined)[] {
  return [settled?.value.text, settled?.value.unit.symbol, settled?.source];
}

describe("the set-up of the sample record", () => {
  const { setup } = evaluateRun(AS_CAST);

  test("names bench, port, head and engine", () => {
    expect([setup.bench?.id, setup.port?.id, setup.head?.id, setup.engine?.id]).toEqual([
      "north",
      "a114-intake",
      "a114",
      "a114-engine",
    ]);
  });

  test("says where each value came from", () => {
    expect(stated(setup.target)).toEqual(["28", "inH2O", "session"]);
    expect(stated(setup.quote)).toEqual(["28", "inH2O", "session"]);
    expect(setup.within).toEqual({ value: 0.2 * 249.08891, source: "bench" });
    expect(setup.air.source).toBe("session");
    expect(setup.leak?.source).toBe("session");
    expect(setup.entry).toEqual({ value: "radiused", source: "session" });
    expect(setup.direction).toEqual({ value: "draws", source: "port" });
    expect(setup.date).toEqual({ value: "2026-11-20T09:30+01:00", source: "session" });
    expect(setup.liftSetting).toEqual({ value: 2.54e-5, source: "default" });
    expect(setup.stub).toBeUndefined();
    expect(setup.cam).toBeUndefined();
  });
});

describe("a value", () => {
  test("of the run goes before the session's", () => {
    const setup = setupOf({
      session: ["target 28 inH2O", "quote 25 inH2O", "leak none", "entry clay", "reference isa", "stub none"],
      run: ["target 10 inH2O", "within 1 inH2O", "entry bare", "date 2026-11-21", "reference din-1343"],
    });
    expect(stated(setup.target)).toEqual(["10", "inH2O", "run"]);
    expect(stated(setup.quote)).toEqual(["25", "inH2O", "session"]);
    expect(setup.within.source).toBe("run");
    expect(setup.entry).toEqual({ value: "bare", source: "run" });
    expect(setup.leak).toEqual({ value: "none", source: "session" });
    expect(setup.stub).toEqual({ value: "none", source: "session" });
    expect(setup.date).toEqual({ value: "2026-11-21", source: "run" });
    expect(setup.reference).toMatchObject({ source: "run", value: { name: "din-1343" } });
  });

  test("that nobody states has its documented default (common practice, no published source)", () => {
    const setup = setupOf({ bench: ["shows flow"], session: [], port: ["valve 2 in"] });
    expect(stated(setup.target)).toEqual(["28", "inH2O", "default"]);
    expect(stated(setup.quote)).toEqual(["28", "inH2O", "default"]);
    expect(setup.within.value).toBeCloseTo(0.28 * 249.08891, 9);
    expect(setup.within.source).toBe("default");
    expect(setup.air.source).toBe("default");
    expect(setup.direction).toEqual({ value: "draws", source: "default" });
    expect(setup.liftSetting).toEqual({ value: 2.54e-5, source: "default" });
    expect(setup.leak).toBeUndefined();
    expect(setup.reference).toBeUndefined();
  });

  test("of the bench stands where neither run nor session has one", () => {
    const setup = setupOf({ bench: ["shows flow in isa", "lift-setting 0.02 mm", "within 0.3 inH2O"] });
    expect(setup.liftSetting).toEqual({ value: 2e-5, source: "bench" });
    expect(setup.within.source).toBe("bench");
    expect(setup.benchAir?.name).toBe("isa");
    expect(setupOf({ bench: ["within 0.3 inH2O"], run: ["within 0.1 inH2O"] }).within.source).toBe("run");
  });
});

describe("the direction", () => {
  test.each([
    [["side intake"], [], "draws", "port"],
    [["side exhaust"], [], "blows", "port"],
    [["side exhaust"], ["direction draws"], "draws", "run"],
    [["side intake"], ["direction blows"], "blows", "run"],
  ] as const)("of a port with %j and a run with %j is %s, from the %s", (port, run, value, source) => {
    expect(setupOf({ port, run }).direction).toEqual({ value, source });
  });
});

describe("what a name stands for", () => {
  test("is missing where it is not found, and nothing else is", () => {
    const setup = setupOf({ run: ["bench nowhere", "port nowhere"] });
    expect(setup.bench).toBeUndefined();
    expect(setup.port).toBeUndefined();
    expect(setup.target.source).toBe("session");
  });

  test("is the cam of the engine that is for the port's side", () => {
    const cam = (id: string, side: string) => [
      `cam ${id} "${id}"`,
      `side ${side}`,
      "lift 0.4 in",
      "law p345",
    ];
    const more = [
      "engine e",
      "cam x",
      "cam i",
      ...cam("x", "exhaust"),
      ...cam("i", "intake"),
      "head h",
      "engine e",
    ];
    const of = (side: string) => setupOf({ port: ["of h", `side ${side}`], more: more.join("\n") }).cam?.id;
    expect(of("intake")).toBe("i");
    expect(of("exhaust")).toBe("x");
  });

  test("is missing for air that cannot be used, and the default is used and says so", () => {
    const setup = setupOf({ session: ["air 900 degC 101325 Pa", "reference nowhere"] });
    expect(setup.statedAir?.source).toBe("session");
    expect(setup.air.source).toBe("default");
    expect(setup.reference).toBeUndefined();
  });
});
