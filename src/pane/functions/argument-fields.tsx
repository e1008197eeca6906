import { Button, Input, makeStyles, Select, tokens } from "@fluentui/react-components";
import type { ArgumentReference } from "../../help/reference";

const useStyles = makeStyles({
  given: { display: "grid", gridTemplateColumns: "1fr auto", gap: tokens.spacingHorizontalXS },
  narrow: { minWidth: 0 },
});

/** Words to choose from. What else comes in the properties is the field's: its id and what describes it. */
export function Choice(props: {
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

/** A cell, a range or a value, typed or taken from the selection. */
export function Given(props: {
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
