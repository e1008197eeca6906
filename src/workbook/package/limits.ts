/** What a file may ask of this machine. An honest workbook stays far below each of these. */
export interface Limits {
  /** Bytes of the file itself. */
  readonly fileBytes: number;
  readonly entries: number;
  /** Bytes of one part of the package when it is unpacked. */
  readonly partBytes: number;
  /** Bytes of all parts that are read, unpacked. */
  readonly readBytes: number;
  /** How many times its packed size a large part may grow. Rows of equal numbers reach about 30. */
  readonly ratio: number;
  /** Cells that hold something, in all sheets; texts that they share. */
  readonly cells: number;
  /** Merged areas, in all sheets. */
  readonly merged: number;
  /** Characters of all formulas, those written out that cells share. */
  readonly formulas: number;
}

const megabyte = 2 ** 20;

export const usualLimits: Limits = {
  fileBytes: 256 * megabyte,
  entries: 20_000,
  partBytes: 256 * megabyte,
  readBytes: 512 * megabyte,
  ratio: 200,
  cells: 4_000_000,
  merged: 250_000,
  formulas: 256 * megabyte,
};

/** Below this unpacked size no ratio matters. */
export const smallPart = 8 * megabyte;
