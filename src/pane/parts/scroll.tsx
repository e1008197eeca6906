import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { type ReactNode, useEffect, useRef, useState } from "react";

const useStyles = makeStyles({
  scroll: { overflowX: "auto", overflowY: "hidden", maxWidth: "100%" },
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
      className={mergeClasses(styles.scroll, props.className)}
      {...(isWide ? { tabIndex: 0, "aria-label": props.label } : {})}
    >
      {props.children}
    </section>
  );
}
