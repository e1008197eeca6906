import { Field, Link, makeStyles, mergeClasses, Select, tokens } from "@fluentui/react-components";
import { useState } from "react";
import type { Call } from "../../cells/observer";
import type { SheetCell, SheetHost } from "../../host/host";
import { tellWorking } from "../../working";
import { Words } from "../functions/words";
import { Amount } from "../parts/amount";
import { Equation } from "../parts/equation";
import { usePane } from "../parts/pane-context";
import { PictureView } from "../pictures";
import { useText } from "../theme/text-styles";
import { Arguments } from "./arguments";
import { CaseChooser } from "./case-chooser";
import { cautionsOf } from "./cautions-of";
import { failedArguments, failureOf } from "./failure";
import { FailureNote } from "./failure-note";
import type { FoundCalls } from "./find-calls";
import { writtenCalls } from "./given";
import { Steps } from "./steps";

const useStyles = makeStyles({
  answer: {
    margin: `${tokens.spacingVerticalXS} 0 ${tokens.spacingVerticalS}`,
    fontSize: tokens.fontSizeBase500,
    lineHeight: tokens.lineHeightBase500,
  },
  list: { margin: 0, paddingInlineStart: "18px", maxWidth: "64ch" },
});

interface StoryProps {
  readonly host: SheetHost;
  readonly cell: SheetCell;
  readonly found: FoundCalls;
}

/** How the number of a cell came about; where several functions made it, one at a time. */
export default function Story({ host, cell, found }: StoryProps) {
  const text = useText();
  const [place, setPlace] = useState(found.calls.length - 1);
  const call = found.calls[place] as Call;
  const isSpilled = found.address !== cell.address;
  return (
    <article>
      <h3 className={text.heading}>{cell.address}</h3>
      {isSpilled && (
        <p className={mergeClasses(text.paragraph, text.faint)}>
          Spilled from{" "}
          <Link as="button" inline onClick={() => void host.select(found.address)}>
            {found.address}
          </Link>
        </p>
      )}
      {cell.formula !== "" && (
        <p className={mergeClasses(text.paragraph, text.code)}>{cell.formula}</p>
      )}
      {found.calls.length > 1 && (
        <Field label="Function in this cell" size="small">
          <Select
            size="small"
            value={String(place)}
            onChange={(_, { value }) => setPlace(Number(value))}
          >
            {found.calls.map(({ id }, i) => (
              <option key={id} value={i}>
                {id}
              </option>
            ))}
          </Select>
        </Field>
      )}
      <CallStory
        key={place}
        call={call}
        formula={cell.formula}
        namespace={host.namespace}
        // A spilled cell shows the last call's answer; inner calls are told from their start.
        row={place === found.calls.length - 1 ? found.row : 0}
        column={place === found.calls.length - 1 ? found.column : 0}
      />
    </article>
  );
}

interface CallStoryProps {
  readonly call: Call;
  readonly formula: string;
  readonly namespace: string;
  readonly row: number;
  readonly column: number;
}

function CallStory({ call, formula, namespace, ...start }: CallStoryProps) {
  const styles = useStyles();
  const text = useText();
  const { functions, open } = usePane();
  const [{ row, column }, setPlace] = useState(start);
  const reference = functions.find(({ id }) => id === call.id);
  if (reference === undefined) return null;

  const failure = failureOf(call, row, column);
  const values = failure === undefined ? call.values(row, column) : undefined;
  const working = values === undefined ? undefined : tellWorking(call.id, values);
  const answer: unknown = Array.isArray(call.answer) ? call.answer[row]?.[column] : undefined;
  const written = writtenCalls(formula, namespace).find(({ id }) => id === call.id);
  const tasks = cautionsOf(call.id);
  return (
    <>
      <CaseChooser call={call} row={row} column={column} choose={setPlace} />
      {failure !== undefined && <FailureNote failure={failure} />}
      {(typeof answer === "number" || (typeof answer === "string" && !isTable(call))) && (
        <p className={styles.answer}>
          <Amount value={answer} unit={call.by === "whole" ? "" : unitOf(reference.returns)} />
        </p>
      )}
      <h4 className={text.subheading}>Equation</h4>
      <Equation mathml={reference.mathml} label={`Equation of ${call.id}`} />
      {working !== undefined && <Steps steps={working.steps} />}
      {working?.picture !== undefined && <PictureView picture={working.picture} />}
      <h4 className={text.subheading}>Arguments</h4>
      <Arguments
        call={call}
        reference={reference}
        given={written?.given}
        values={values}
        row={row}
        column={column}
        failed={failure === undefined ? [] : failedArguments(call)}
      />
      <h4 className={text.subheading}>Keep in mind</h4>
      <ul className={styles.list}>
        {working?.remarks?.map((remark) => (
          <li key={remark}>{remark}</li>
        ))}
        <li>
          Holds for: <Words text={reference.range} about={call.id} />
        </li>
        <li>
          Source: <Words text={reference.source} about={call.id} />
        </li>
        {tasks.map((task) => (
          <li key={task}>
            Cautions:{" "}
            <Link as="button" inline onClick={() => open("Safety", task)}>
              {task}
            </Link>
          </li>
        ))}
      </ul>
      <p>
        <Link as="button" onClick={() => open("Functions", call.id)}>
          All about {call.id}
        </Link>
      </p>
    </>
  );
}

/** Whether an answer is more than one value, so that a text in it is but a label. */
const isTable = ({ by, answer }: Call) =>
  by === "whole" && Array.isArray(answer) && answer.length * (answer[0]?.length ?? 0) > 1;

/** The unit in the words of what comes back, where there is one for all. */
function unitOf(returns: string): string {
  const unit = /\[([^\]]+)\]/.exec(returns)?.[1] ?? "";
  return unit.includes(",") ? "" : unit;
}
