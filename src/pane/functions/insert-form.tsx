import { Button, Field, makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { type FormEvent, useState } from "react";
import type { FunctionReference } from "../../help/reference";
import { insertOrAsk } from "../parts/insert-or-ask";
import { usePane } from "../parts/pane-context";
import { selectedAddress } from "../parts/selected-address";
import { useDeed } from "../parts/use-deed";
import { useText } from "../theme/text-styles";
import { Choice, Given } from "./argument-fields";
import { writeFormula } from "./write-formula";

const useStyles = makeStyles({
  form: {
    display: "grid",
    gap: tokens.spacingVerticalS,
    maxWidth: "480px",
    margin: `${tokens.spacingVerticalM} 0`,
    padding: "10px 12px",
    border: `1px solid ${tokens.colorNeutralStroke2}`,
  },
  preview: { margin: 0, padding: "6px 0" },
  title: { margin: 0 },
  buttons: { display: "flex", flexWrap: "wrap", gap: tokens.spacingHorizontalS },
});

/** Takes a range or a value for each argument and writes one complete formula into one cell. */
export function InsertForm({ one }: { one: FunctionReference }) {
  const styles = useStyles();
  const text = useText();
  const { host, say } = usePane();
  const { busy, run } = useDeed();
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [target, setTarget] = useState("");
  const [isAsked, setAsked] = useState(false);
  const [isOpen, setOpen] = useState(false);
  if (host === undefined) return null;
  const written = writeFormula(host.namespace, one, typed);
  const faults = "faults" in written ? written.faults : {};

  const give = (name: string, value: string) =>
    setTyped((before) => ({ ...before, [name]: value }));
  const takeSelection = (put: (address: string) => void, whole: boolean) => {
    host.readSelection().then(
      (selection) => {
        if (selection !== undefined) put(whole ? selection.address : selection.cell.address);
      },
      (problem: Error) => say({ kind: "refused", text: problem.message }),
    );
  };
  const insert = (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    if (!("formula" in written)) return;
    run(async () => {
      const address = target.trim() === "" ? await selectedAddress(host) : target.trim();
      return insertOrAsk(host, address, written.formula, run);
    });
  };

  if (!isOpen) {
    return (
      <Button appearance="primary" onClick={() => setOpen(true)}>
        Write into a cell…
      </Button>
    );
  }
  return (
    <form className={styles.form} onSubmit={insert} aria-label={`Write ${one.id} into a cell`}>
      <h4 className={mergeClasses(text.subheading, styles.title)}>Write into the sheet</h4>
      {one.arguments.map((argument) => (
        <Field
          key={argument.name}
          size="small"
          label={`${argument.name}${argument.optional ? " (optional)" : ""}`}
          hint={argument.description}
          {...(isAsked && faults[argument.name] !== undefined
            ? { validationMessage: faults[argument.name] }
            : {})}
        >
          {argument.choices !== undefined ? (
            <Choice argument={argument} typed={typed} give={give} />
          ) : (
            <Given
              label={argument.name}
              value={typed[argument.name] ?? ""}
              give={(value) => give(argument.name, value)}
              take={() => takeSelection((address) => give(argument.name, address), true)}
            />
          )}
        </Field>
      ))}
      <Field size="small" label="Cell to write into" hint="The selected cell if left blank.">
        <Given
          label="cell to write into"
          value={target}
          give={setTarget}
          take={() => takeSelection(setTarget, false)}
        />
      </Field>
      <p className={mergeClasses(text.code, styles.preview)} aria-live="polite">
        {"formula" in written ? (
          written.formula
        ) : (
          <span className={text.faint}>{signatureOf(one)}</span>
        )}
      </p>
      <div className={styles.buttons}>
        <Button type="submit" appearance="primary" disabled={busy}>
          Write the formula
        </Button>
        <Button onClick={() => setOpen(false)}>Close</Button>
      </div>
    </form>
  );
}

const signatureOf = (one: FunctionReference) =>
  `=${one.name}(${one.arguments.map(({ name }) => name).join(", ")})`;
