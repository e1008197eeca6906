/**
 * In the grid's bundle (see build/grid-bundle) this stands for Intl.Segmenter. At each letter of a text that it lays
 * out the grid asks whether the rest begins with an emoji, and the browser's own segmenter makes itself ready for the
 * whole rest: a key took a time that went with the square of a formula's length. A printable letter of ASCII with
 * any other of ASCII behind it is a grapheme by itself (Unicode Standard Annex 29, rules GB5 and GB999), and nothing
 * is made ready.
 */
const { Segmenter } = Intl;
type Graphemes = Intl.SegmentIterator<Intl.SegmentData>;

class QuickSegmenter extends Segmenter {
  readonly #byGrapheme = this.resolvedOptions().granularity === "grapheme";

  override segment(input: string): Intl.Segments {
    if (!this.#byGrapheme || !/^[ -~](?:[\0-\x7f]|$)/.test(input)) return super.segment(input);
    const whole = () => super.segment(input);
    return {
      containing: (place) => whole().containing(place),
      [Symbol.iterator]: () => behindFirst(input, whole),
    };
  }
}

/** A generator would read better, and take ten times as long. */
function behindFirst(input: string, whole: () => Intl.Segments): Graphemes {
  let rest: Graphemes | undefined;
  let begun = false;
  return {
    next() {
      if (!begun) {
        begun = true;
        return { done: false, value: { segment: input.charAt(0), index: 0, input } };
      }
      if (!rest) {
        rest = whole()[Symbol.iterator]();
        rest.next();
      }
      return rest.next();
    },
    [Symbol.iterator]() {
      return this;
    },
  };
}

export { QuickSegmenter as "Intl.Segmenter" };
