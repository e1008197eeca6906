import { expect, test } from "vitest";
import { emulateExcel, type HostError } from "../host/emulated-excel";

const excel = emulateExcel();

test.each([
  ["RETENTION.FIRSTPASS", [0, 0.2], "headbox is 0 or blank."],
  ["RETENTION.COMPONENT", [0.8, 0, 0.2, 0.5], "headboxShare is 0 or blank."],
  ["DOSE.TARGET", [6.5, 0], "overallRetention is 0 or blank."],
  ["DOSE.PRODUCT", [8, 0], "solids is 0 or blank."],
  ["DOSE.PRODUCT", [8, 0.9, 0], "active is 0 or blank."],
  ["DOSE.CONVERT", [8, "kg/t", "g/t", 1], "moisture is 1."],
  ["DOSE.PUMP", [8, 9.3, 0], "strength is 0 or blank."],
  ["DOSE.PUMP", [8, 9.3, 0.03, 0], "density is 0 or blank."],
  ["CHARGE.LIMIT", [5, 0, 0, 0.2], "consistency is 0 or blank."],
  ["CHARGE.LIMIT", [5, 0, 0.03, 0], "density is 0 or blank."],
  ["EFFLUENT.CONCENTRATION", [10, 0], "flow is 0 or blank."],
  ["EFFLUENT.EQUIVALENTS", [600, 0], "perPerson is 0 or blank."],
  ["EFFLUENT.ALLOWANCE", [3000, 0, 0.8, 340, 1.1, 1], "removal is 1."],
  ["EFFLUENT.TREATMENT", [1000, 600, 0, 0, 0, 0, 1, 0], "aeration is 0 or blank."],
  ["COST.ACTIVEPRICE", [0.5, 0], "solids is 0 or blank."],
  ["COST.PARITY", [0.5, 0, 1], "retention is 0 or blank."],
  ["COST.GRAMMAGE", [3.6, 0, 60, 700], "index is 0 or blank."],
  ["COST.BUDGET", [1000, 8, 0.6, 1], "losses is 1."],
])("%s refuses to divide by nothing: %j", (id, given, what) => {
  expect((excel.one(id, ...given) as HostError).message).toContain(`${what} Give a `);
});
