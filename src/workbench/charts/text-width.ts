const context = document.createElement("canvas").getContext("2d");

/** Pixels that a text takes in the type of the pictures. */
export function textWidth(text: string): number {
  if (!context) return 6.4 * text.length;
  context.font = `12px ${getComputedStyle(document.body).fontFamily}`;
  return context.measureText(text).width;
}
