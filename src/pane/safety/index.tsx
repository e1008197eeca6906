import {
  Button,
  Field,
  Link,
  makeStyles,
  mergeClasses,
  Select,
  tokens,
} from "@fluentui/react-components";
import { useEffect, useRef, useState } from "react";
import { layOut } from "../../workbook/layout/lay-out";
import type { Asked } from "../pane";
import { NeedsSheet } from "../parts/needs-sheet";
import { usePane } from "../parts/pane-context";
import { reasonOf, useDeed } from "../parts/use-deed";
import { useText } from "../theme/text-styles";
import { cautionSheet, FIRST_OF_ALL, ownCautions, SUBJECTS, splitTasks } from "./cautions";

const useStyles = makeStyles({
  list: { margin: `${tokens.spacingVerticalM} 0`, paddingInlineStart: "18px", maxWidth: "64ch" },
  caution: { marginBottom: tokens.spacingVerticalS },
  last: {
    maxWidth: "64ch",
    margin: `${tokens.spacingVerticalM} 0`,
    padding: "8px 12px",
    borderLeft: `3px solid ${tokens.colorBrandForeground1}`,
    fontWeight: tokens.fontWeightSemibold,
  },
});

export function Safety({ asked }: { asked: Asked | undefined }) {
  const styles = useStyles();
  const text = useText();
  const { host } = usePane();
  const { busy, run } = useDeed();
  const [name, setName] = useState<string>(asked?.item ?? SUBJECTS[0].names[0] ?? "");
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (asked !== undefined) setName(asked.item);
  }, [asked]);

  const read = (next: string) => {
    setName(next);
    heading.current?.focus();
  };
  const cautions = cautionsOrReason(name);

  const makeSheet = () => {
    if (host === undefined) return;
    run(async () => {
      const names = await host.addSheets((taken) => layOut(cautionSheet(name), taken));
      return `The cautions stand on the new sheet ${names.join(", ")}. Nothing else was changed.`;
    });
  };

  return (
    <>
      <h2 className={text.hidden}>Safety</h2>
      <Field label="Task or additive">
        <Select value={name} onChange={(_, { value }) => setName(value)}>
          {SUBJECTS.map(({ label, names }) => (
            <optgroup key={label} label={label}>
              {names.map((one) => (
                <option key={one}>{one}</option>
              ))}
            </optgroup>
          ))}
        </Select>
      </Field>
      <h3 ref={heading} tabIndex={-1} className={mergeClasses(text.subheading)} aria-live="polite">
        {name}
      </h3>
      <ul className={styles.list}>
        {cautions.map((caution) => (
          <li key={caution} className={styles.caution}>
            {splitTasks(caution, name).map((piece, i) =>
              piece.isTask ? (
                // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of a sentence keep their places
                <Link key={i} as="button" inline onClick={() => read(piece.text)}>
                  {piece.text}
                </Link>
              ) : (
                piece.text
              ),
            )}
          </li>
        ))}
      </ul>
      <p className={styles.last}>{FIRST_OF_ALL}</p>
      {host === undefined ? (
        <NeedsSheet to="to put these cautions on a sheet to print" />
      ) : (
        <Button disabled={busy || !host.can.addSheets} onClick={makeSheet}>
          Put on a sheet to print
        </Button>
      )}
    </>
  );
}

/** An own entry has no cautions of its own: then the library says what it does know. */
function cautionsOrReason(name: string): readonly string[] {
  try {
    return ownCautions(name);
  } catch (problem) {
    return [reasonOf(problem)];
  }
}
