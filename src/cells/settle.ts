import { type Answer, errorCell } from "./answer";
import { observer, report, type Told } from "./observer";

/**
 * Ends every call the same way: the answer as cells, or, where the whole answer is one error, that error
 * thrown, which is how a host expects a failed call. The observer sees both.
 */
export function settle(told: Told, given: readonly unknown[], compute: () => Answer): Answer {
  let answer: Answer;
  try {
    answer = compute();
  } catch (problem) {
    answer = [[errorCell(problem)]];
  }
  const only = answer.length === 1 && answer[0]?.length === 1 ? answer[0][0] : undefined;
  const failed = only instanceof CustomFunctions.Error ? only : undefined;
  if (observer !== undefined) report(told, given, failed ?? answer);
  if (failed !== undefined) throw failed;
  return answer;
}
