import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { useEffect, useRef, useState } from "react";
import type { Picture, Stack } from "../../working/picture";
import { shown } from "../parts/amount";
import { useText } from "../theme/text-styles";
import { draw } from "./draw";

const useStyles = makeStyles({
  figure: { margin: `${tokens.spacingVerticalL} 0 ${tokens.spacingVerticalS}`, maxWidth: "560px" },
  title: { fontWeight: tokens.fontWeightSemibold },
  plot: {
    width: "100%",
    // The picture's colours: where the system forces its own, those.
    "--picture-ink": tokens.colorNeutralForeground1,
    "--picture-faint": tokens.colorNeutralForeground3,
    "--picture-rule": tokens.colorNeutralStroke2,
    "--picture-paper": tokens.colorNeutralBackground1,
    "--picture-accent": tokens.colorBrandForeground1,
    "@media (forced-colors: active)": {
      forcedColorAdjust: "none",
      "--picture-ink": "CanvasText",
      "--picture-faint": "CanvasText",
      "--picture-rule": "GrayText",
      "--picture-paper": "Canvas",
      "--picture-accent": "Highlight",
    },
    "& svg": { display: "block", maxWidth: "100%", overflow: "visible" },
  },
  key: { display: "flex", justifyContent: "space-between", gap: tokens.spacingHorizontalM },
  words: { fontSize: tokens.fontSizeBase200, lineHeight: tokens.lineHeightBase200 },
});

/** A picture of a result, drawn to the width there is, with the same in words below it. */
export function PictureView({ picture }: { picture: Picture }) {
  const styles = useStyles();
  const text = useText();
  const place = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);

  useEffect(() => {
    const element = place.current;
    if (element === null) return;
    const observer = new ResizeObserver(([entry]) =>
      setWidth(Math.round(entry?.contentRect.width ?? 0)),
    );
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  useEffect(() => {
    if (width === 0) return;
    const drawn = draw(picture, width);
    // The words of the whole are enough; names of its marks would only be read beside them.
    for (const mark of drawn.querySelectorAll("[aria-label]")) mark.removeAttribute("aria-label");
    drawn.setAttribute("role", "img");
    drawn.setAttribute("aria-label", picture.alt);
    place.current?.replaceChildren(drawn);
  }, [picture, width]);

  return (
    <figure className={styles.figure}>
      <figcaption className={styles.title}>{picture.title}</figcaption>
      <div ref={place} className={styles.plot} />
      {picture.kind === "stack" ? (
        <Key stack={picture} />
      ) : (
        <p className={mergeClasses(text.paragraph, text.faint, styles.words)}>{picture.alt}</p>
      )}
    </figure>
  );
}

/** The parts of a stacked bar by their numbers. */
function Key({ stack }: { stack: Stack }) {
  const styles = useStyles();
  const text = useText();
  return (
    <ol className={mergeClasses(styles.words)}>
      {stack.parts.map(({ label, value }) => (
        <li key={label}>
          <span className={styles.key}>
            <span>{label}</span>
            <span className={text.number}>
              {shown(value)} <span className={text.faint}>{stack.unit}</span>
            </span>
          </span>
        </li>
      ))}
    </ol>
  );
}
