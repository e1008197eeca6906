import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { type ReactNode, useEffect, useRef, useState } from "react";

const ground = tokens.colorNeutralBackground1;
const shade = tokens.colorNeutralStrokeAccessible;

const useStyles = makeStyles({
  scroll: { overflowX: "auto", overflowY: "hidden", maxWidth: "100%" },
  // Scroll bars may hide until they are used: a shade lies at each edge beyond which there is more. It stays
  // with the place; what hides it at the ends moves with what stands in it.
  shaded: {
    backgroundImage: [
      `linear-gradient(to right, ${ground} 50%, transparent)`,
      `linear-gradient(to left, ${ground} 50%, transparent)`,
      `linear-gradient(to right, ${shade}, transparent)`,
      `linear-gradient(to left, ${shade}, transparent)`,
    ].join(", "),
    backgroundPosition: "left, right, left, right",
    backgroundSize: "24px 100%, 24px 100%, 10px 100%, 10px 100%",
    backgroundRepeat: "no-repeat",
    backgroundAttachment: "local, local, scroll, scroll",
  },
});

const isWiderThanItsPlace = (element: HTMLElement) => element.scrollWidth > element.clientWidth;

/** What may be wider than the pane. Where it is, the keyboard can scroll it, too. */
export function Scroll(props: { label: string; className?: string; children: ReactNode }) {
  const styles = useStyles();
  const place = useRef<HTMLElement>(null);
  const [isWide, setWide] = useState(false);
  useEffect(() => {
    const element = place.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => setWide(isWiderThanItsPlace(element)));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  // What stands in it may have changed, though its place has not.
  useEffect(() => setWide(place.current !== null && isWiderThanItsPlace(place.current)));
  return (
    <section
      ref={place}
      className={mergeClasses(styles.scroll, isWide && styles.shaded, props.className)}
      {...(isWide ? { tabIndex: 0, "aria-label": props.label } : {})}
    >
      {props.children}
    </section>
  );
}
