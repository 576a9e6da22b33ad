// Libraries of the pages that come without types of their own; only what is used is declared.

declare module "@observablehq/inputs" {
  /** A form whose `value` follows what the reader chose. */
  export interface InputForm<Value> extends HTMLFormElement {
    value: Value;
  }
  interface InputOptions<Value> {
    readonly label?: string;
    readonly value?: Value | undefined;
  }
  export function range(
    extent: readonly [number, number],
    options?: InputOptions<number> & { readonly step?: number },
  ): InputForm<number>;
  export function select<const Value>(
    data: readonly Value[],
    options?: InputOptions<NoInfer<Value>> & { readonly format?: (value: Value) => string },
  ): InputForm<Value>;
  export function file(options?: {
    readonly label?: string;
    readonly accept?: string;
  }): InputForm<File | null>;
}

declare module "virtual:markdown" {
  export function md(strings: TemplateStringsArray, ...values: unknown[]): HTMLElement;
}
