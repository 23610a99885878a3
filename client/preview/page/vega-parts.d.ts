// What of the drawing library's parts is used; they come without types of their own.
declare module "vega-dataflow" {
  export const transforms: Record<string, unknown>;
}
declare module "vega-transforms" {}
declare module "vega-view-transforms" {}
declare module "vega-encode" {}
declare module "vega-parser" {
  export function parse(spec: object, config: null, options: { readonly ast: true }): object;
}
declare module "vega-view" {
  /** An event on the picture, and the mark under the pointer. */
  export type Handler = (event: MouseEvent, item: { readonly datum?: unknown } | null | undefined) => void;
  export class View {
    constructor(
      runtime: object,
      options: {
        readonly expr: unknown;
        readonly renderer: "svg" | "none";
        readonly container?: Element;
        readonly hover?: boolean;
        readonly logLevel: number;
      },
    );
    addEventListener(type: string, handler: Handler): this;
    data(name: string, rows: readonly unknown[]): this;
    signal(name: string, value: unknown): this;
    runAsync(): Promise<this>;
    finalize(): this;
    toSVG(scale?: number): Promise<string>;
    toCanvas(scale?: number): Promise<HTMLCanvasElement>;
  }
}
