import {
  Button,
  MessageBar,
  MessageBarActions,
  MessageBarBody,
  makeStyles,
  tokens,
} from "@fluentui/react-components";
import { DismissRegular } from "@fluentui/react-icons";
import type { Notice } from "./pane-context";

const useStyles = makeStyles({
  place: {
    position: "sticky",
    bottom: 0,
    zIndex: 1,
    backgroundColor: tokens.colorNeutralBackground1,
  },
  text: { overflowWrap: "anywhere", whiteSpace: "normal" },
});

/** What was done last, or why it was not. A screen reader hears it as it comes. */
export function NoticeBar(props: { notice: Notice | undefined; onClose: () => void }) {
  const styles = useStyles();
  const { notice, onClose } = props;
  return (
    <div className={styles.place} role="status" aria-live="polite">
      {notice !== undefined && (
        <MessageBar
          intent={notice.kind === "done" ? "success" : "warning"}
          layout="multiline"
          politeness="polite"
        >
          <MessageBarBody className={styles.text}>{notice.text}</MessageBarBody>
          <MessageBarActions
            containerAction={
              <Button
                appearance="transparent"
                icon={<DismissRegular />}
                aria-label="Close this message"
                onClick={onClose}
              />
            }
          >
            {notice.choice !== undefined && (
              <Button size="small" onClick={notice.choice.choose}>
                {notice.choice.label}
              </Button>
            )}
          </MessageBarActions>
        </MessageBar>
      )}
    </div>
  );
}
