import { Link } from "@fluentui/react-components";
import { splitMentions } from "../../help/wording";
import { usePane } from "../parts/pane-context";

/** A text in which the functions that it names can be opened. */
export function Words({ text, about }: { text: string; about: string }) {
  const { functions, open } = usePane();
  return splitMentions(text, functions).map((piece, i) => {
    if (typeof piece === "string") return piece;
    // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of a sentence keep their places
    if ("code" in piece) return <code key={i}>{piece.code}</code>;
    if (piece.id === about) return piece.id;
    return (
      // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of a sentence keep their places
      <Link key={i} as="button" inline onClick={() => open("Functions", piece.id)}>
        {piece.id}
      </Link>
    );
  });
}
