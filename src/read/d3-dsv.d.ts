/** The part of d3-dsv that the readers use; the package brings no types. */
declare module "d3-dsv" {
  /** Reads texts with one separator. */
  export function dsvFormat(delimiter: string): {
    /** Cells by rows; a line end at the end of the text begins no row. */
    readonly parseRows: (text: string) => string[][];
  };
}
