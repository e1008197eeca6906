import { Field, Link, makeStyles, mergeClasses, Select, tokens } from "@fluentui/react-components";
import { useState } from "react";
import type { Call } from "../../cells/observer";
import type { SelectedCell, SheetHost } from "../../host/host";
import { tellWorking } from "../../working";
import { Words } from "../functions/words";
import { Amount, shown } from "../parts/amount";
import { Equation } from "../parts/equation";
import { usePane } from "../parts/pane-context";
import { PictureView } from "../pictures";
import { useText } from "../theme/text-styles";
import { answerOf } from "./answer-of";
import { Arguments } from "./arguments";
import { CaseChooser } from "./case-chooser";
import { cautionsOf } from "./cautions-of";
import { failedArguments, failureOf } from "./failure";
import { FailureNote } from "./failure-note";
import type { FoundCalls, Place } from "./find-calls";
import { writtenCalls } from "./given";
import { Steps } from "./steps";

const useStyles = makeStyles({
  answer: {
    margin: `${tokens.spacingVerticalXS} 0 ${tokens.spacingVerticalS}`,
    fontSize: tokens.fontSizeBase500,
    lineHeight: tokens.lineHeightBase500,
  },
  name: { fontSize: tokens.fontSizeBase300, color: tokens.colorNeutralForeground2 },
  says: { margin: `${tokens.spacingVerticalXS} 0 ${tokens.spacingVerticalS}`, maxWidth: "64ch" },
  list: { margin: 0, paddingInlineStart: "18px", maxWidth: "64ch" },
});

interface StoryProps {
  readonly host: SheetHost;
  readonly cell: SelectedCell;
  readonly found: FoundCalls;
}

const START: Place = { row: 0, column: 0 };

/** How the number of a cell came about; where several functions made it, one at a time. */
export default function Story({ host, cell, found }: StoryProps) {
  const text = useText();
  const last = found.calls.length - 1;
  const [chosen, choose] = useState(last);
  const call = found.calls[chosen] as Call;
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
      <p className={mergeClasses(text.paragraph, text.code)}>{found.formula}</p>
      {found.calls.length > 1 && (
        <Field label="Function in this cell" size="small">
          <Select
            size="small"
            value={String(chosen)}
            onChange={(_, { value }) => choose(Number(value))}
          >
            {found.calls.map((one, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: the calls keep their places
              <option key={i} value={i}>
                {nameOf(found.calls, one)}
              </option>
            ))}
          </Select>
        </Field>
      )}
      {chosen === last && found.place === undefined && (
        <p className={mergeClasses(text.paragraph, text.faint)}>
          The formula goes on from this answer: the cell shows {shown(cell.value)}.
        </p>
      )}
      <CallStory
        key={chosen}
        call={call}
        given={givenTo(found, call, host.namespace)}
        start={(chosen === last ? found.place : undefined) ?? START}
        reason={chosen === last && found.place ? cell.reason : undefined}
      />
    </article>
  );
}

/** The name of a call among the others of the cell: numbered where its function is there more than once. */
function nameOf(calls: readonly Call[], call: Call): string {
  const alike = calls.filter(({ id }) => id === call.id);
  return alike.length === 1 ? call.id : `${call.id}, ${alike.indexOf(call) + 1} of ${alike.length}`;
}

/** The arguments as the formula writes them: of a function that stands there twice, those of this call. */
function givenTo({ calls, formula }: FoundCalls, call: Call, namespace: string) {
  const alike = calls.filter(({ id }) => id === call.id);
  const written = writtenCalls(formula, namespace).filter(({ id }) => id === call.id);
  return written.length === alike.length ? written[alike.indexOf(call)]?.given : undefined;
}

interface CallStoryProps {
  readonly call: Call;
  /** Its arguments as the formula writes them; undefined where that is not known. */
  readonly given: readonly string[] | undefined;
  /** Which cell of its answer is told first. */
  readonly start: Place;
  /** Why that cell shows an error, where the host knows more than the call. */
  readonly reason: string | undefined;
}

function CallStory({ call, given, start, reason }: CallStoryProps) {
  const styles = useStyles();
  const text = useText();
  const { functions, open } = usePane();
  const [{ row, column }, setPlace] = useState(start);
  const reference = functions.find(({ id }) => id === call.id);
  if (reference === undefined) return null;

  const isShown = row === start.row && column === start.column;
  const failure = failureOf(call, row, column, isShown ? reason : undefined);
  const values = failure === undefined ? call.values(row, column) : undefined;
  const working = values === undefined ? undefined : tellWorking(call.id, values);
  const answer = answerOf(call, { row, column }, reference.returns);
  const tasks = cautionsOf(call.id);
  return (
    <>
      <CaseChooser call={call} row={row} column={column} choose={setPlace} />
      {failure !== undefined && <FailureNote failure={failure} />}
      {answer !== undefined && (
        <p className={styles.answer}>
          {answer.name !== "" && <span className={styles.name}>{answer.name}: </span>}
          <Amount value={answer.value} unit={answer.unit} />
        </p>
      )}
      {working?.says !== undefined && <p className={styles.says}>{working.says}</p>}
      <h4 className={text.subheading}>Equation</h4>
      <Equation mathml={reference.mathml} label={`Equation of ${call.id}`} />
      {working !== undefined && <Steps steps={working.steps} />}
      {working?.picture !== undefined && <PictureView picture={working.picture} />}
      <h4 className={text.subheading}>Arguments</h4>
      <Arguments
        call={call}
        reference={reference}
        given={given}
        values={values}
        row={row}
        column={column}
        failed={failure === undefined ? [] : failedArguments(call, row, column)}
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
