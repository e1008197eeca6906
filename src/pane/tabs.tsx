import { makeStyles, Tab, TabList, tokens } from "@fluentui/react-components";
import type { KeyboardEvent } from "react";
import { TABS, type Tab as TabName } from "./parts/pane-context";

const useStyles = makeStyles({
  tabs: {
    flexWrap: "wrap",
    borderBottom: `1px solid ${tokens.colorNeutralStroke2}`,
    paddingInline: "4px",
    "@container (max-width: 379.98px)": { paddingInline: "2px", columnGap: 0 },
  },
  tab: {
    paddingInline: "6px",
    minWidth: 0,
    // Five names side by side, also in the narrowest pane.
    "@container (max-width: 379.98px)": {
      paddingInline: "2px",
      "& .fui-Tab__content": { fontSize: tokens.fontSizeBase200 },
      "& .fui-Tab__content--reserved-space": { fontSize: tokens.fontSizeBase200 },
    },
  },
});

/** How far each key goes among the tabs; the ends of the row as numbers beyond it. */
const STEPS: Readonly<Record<string, (at: number) => number>> = {
  ArrowRight: (at) => (at + 1) % TABS.length,
  ArrowLeft: (at) => (at + TABS.length - 1) % TABS.length,
  Home: () => 0,
  End: () => TABS.length - 1,
};

/** The list's own handling of keys puts invisible stops around it, which a screen reader would meet. */
const OWN_KEYS = { "data-tabster": undefined };

/** The names of the five parts. One of them takes the Tab key, arrows go on from there. */
export function Tabs({ shown, open }: { shown: TabName; open: (tab: TabName) => void }) {
  const styles = useStyles();
  const move = (event: KeyboardEvent) => {
    const tabs = [...event.currentTarget.querySelectorAll<HTMLElement>("[role=tab]")];
    const step = STEPS[event.key];
    if (step === undefined) return;
    event.preventDefault();
    tabs[step(tabs.indexOf(document.activeElement as HTMLElement))]?.focus();
  };
  return (
    <TabList
      size="small"
      className={styles.tabs}
      aria-label="Parts of the pane"
      selectedValue={shown}
      onTabSelect={(_, { value }) => open(value as TabName)}
      onKeyDown={move}
      {...OWN_KEYS}
    >
      {TABS.map((name) => (
        <Tab
          key={name}
          value={name}
          id={`tab-${name}`}
          tabIndex={name === shown ? 0 : -1}
          aria-controls={`panel-${name}`}
          className={styles.tab}
        >
          {name}
        </Tab>
      ))}
    </TabList>
  );
}
