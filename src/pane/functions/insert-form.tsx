import {
  Button,
  Field,
  Input,
  makeStyles,
  mergeClasses,
  Select,
  tokens,
} from "@fluentui/react-components";
import { type FormEvent, useState } from "react";
import type { ArgumentReference, FunctionReference } from "../../help/reference";
import { HostRefusal, type SheetHost } from "../../host/host";
import type { Notice } from "../parts/pane-context";
import { usePane } from "../parts/pane-context";
import { selectedAddress } from "../parts/selected-address";
import { useDeed } from "../parts/use-deed";
import { useText } from "../theme/text-styles";
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
  given: { display: "grid", gridTemplateColumns: "1fr auto", gap: tokens.spacingHorizontalXS },
  narrow: { minWidth: 0 },
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
      return insertOrAsk(host, address, written.formula, (replace) => run(replace));
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
          {...(argument.choices === undefined ? { hint: argument.unit } : {})}
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

function Choice(props: {
  argument: ArgumentReference;
  typed: Readonly<Record<string, string>>;
  give: (name: string, value: string) => void;
  id?: string;
}) {
  const { argument, typed, give, ...field } = props;
  return (
    <Select
      {...field}
      value={typed[argument.name] ?? ""}
      onChange={(_, { value }) => give(argument.name, value)}
    >
      <option value="">{argument.optional ? "as usual" : "choose"}</option>
      {argument.choices?.map((choice) => (
        <option key={choice}>{choice}</option>
      ))}
    </Select>
  );
}

function Given(props: {
  label: string;
  value: string;
  give: (value: string) => void;
  take: () => void;
  id?: string;
}) {
  const styles = useStyles();
  const { label, value, give, take, ...field } = props;
  return (
    <div className={styles.given}>
      <Input
        {...field}
        className={styles.narrow}
        size="small"
        value={value}
        autoComplete="off"
        spellCheck={false}
        onChange={(_, { value: next }) => give(next)}
      />
      <Button size="small" aria-label={`Take selection for ${label}`} onClick={take}>
        Take selection
      </Button>
    </div>
  );
}

/** Where something stands already, it is shown and the person asked; nothing is replaced unseen. */
async function insertOrAsk(
  host: SheetHost,
  address: string,
  formula: string,
  again: (deed: () => Promise<string>) => void,
): Promise<string | Notice> {
  try {
    await host.insertFormula(address, formula);
  } catch (problem) {
    if (!(problem instanceof HostRefusal) || problem.kind !== "occupied") throw problem;
    const selection = await host.readSelection();
    if (selection?.cell.address !== address) throw problem;
    const { cell } = selection;
    const choose = () =>
      again(async () => {
        await host.insertFormula(address, formula, cell);
        return `${address} now holds ${formula}. It held ${cell.formula || String(cell.value)} before.`;
      });
    return {
      kind: "refused",
      text: problem.message,
      choice: { label: `Replace ${address}`, choose },
    };
  }
  return `${address} now holds ${formula}.`;
}
