import { FluentProvider, makeStyles, tokens } from "@fluentui/react-components";
import { type ComponentType, useCallback, useMemo, useState } from "react";
import type { FunctionReference } from "../help/reference";
import type { SheetHost } from "../host/host";
import { Additives } from "./additives";
import { Functions } from "./functions";
import { NoticeBar } from "./parts/notice-bar";
import { type Notice, paneContext, TABS, type Tab as TabName } from "./parts/pane-context";
import { Safety } from "./safety";
import { Tabs } from "./tabs";
import { Templates } from "./templates";
import { useTheme } from "./theme/use-theme";
import { Working } from "./working";

const PARTS: Readonly<Record<TabName, ComponentType<{ asked: Asked | undefined }>>> = {
  Additives,
  Safety,
  Functions,
  Templates,
  Working,
};

/** What a link in another part asked a tab to show. A new object each time, so that asking again counts. */
export interface Asked {
  readonly item: string;
}

const useStyles = makeStyles({
  root: {
    display: "flex",
    flexDirection: "column",
    minHeight: "100%",
    boxSizing: "border-box",
    containerType: "inline-size",
    fontSize: tokens.fontSizeBase300,
    lineHeight: tokens.lineHeightBase300,
    // Fields give way to a narrow pane.
    "& .fui-Input, & .fui-Select, & .fui-Select > select, & .fui-Field > *": {
      minWidth: 0,
      maxWidth: "100%",
    },
    "& .fui-Link": { maxWidth: "100%", overflowWrap: "anywhere", textAlign: "start" },
    // Where the system takes the colours away, a line says what can be followed.
    "@media (forced-colors: active)": { "& .fui-Link": { textDecorationLine: "underline" } },
    "@media (prefers-reduced-motion: reduce)": {
      "& *, & *::before, & *::after": {
        animationDuration: "0.01ms !important",
        transitionDuration: "0.01ms !important",
      },
    },
  },
  panel: { flexGrow: 1, padding: "12px 12px 24px", outlineOffset: "-2px" },
});

interface PaneProps {
  readonly host: SheetHost | undefined;
  readonly functions: readonly FunctionReference[];
}

/** The five parts behind their tabs. A part that was opened stays as it was left. */
export function Pane({ host, functions }: PaneProps) {
  const styles = useStyles();
  const [tab, setTab] = useState<TabName>("Additives");
  const [opened, setOpened] = useState<ReadonlySet<TabName>>(new Set(["Additives"]));
  const [asked, setAsked] = useState<Partial<Record<TabName, Asked>>>({});
  const [notice, setNotice] = useState<Notice>();

  const open = useCallback((next: TabName, item?: string) => {
    setTab(next);
    setNotice(undefined);
    setOpened((before) => new Set(before).add(next));
    if (item !== undefined) setAsked((before) => ({ ...before, [next]: { item } }));
  }, []);
  const context = useMemo(
    () => ({ host, functions, open, say: setNotice }),
    [host, functions, open],
  );

  return (
    <paneContext.Provider value={context}>
      <FluentProvider theme={useTheme(host)} className={styles.root}>
        <Tabs shown={tab} open={open} />
        {TABS.map((name) => {
          const Part = PARTS[name];
          return (
            <div
              key={name}
              id={`panel-${name}`}
              role="tabpanel"
              aria-labelledby={`tab-${name}`}
              hidden={name !== tab}
              className={styles.panel}
            >
              {opened.has(name) && <Part asked={asked[name]} />}
            </div>
          );
        })}
        <NoticeBar notice={notice} onClose={() => setNotice(undefined)} />
      </FluentProvider>
    </paneContext.Provider>
  );
}
