import { readFile } from "node:fs/promises";
import { createServer } from "node:net";
import { strFromU8, unzipSync } from "fflate";
import { beforeAll, describe, expect, test } from "vitest";
import { layOut } from "../../src/workbook/layout/lay-out";
import { doseAndEffluent } from "../../templates/plans/dose-and-effluent";
import { seriousFindings } from "./axe";
import { serveWorkbench } from "./served-workbench";
import { type Look, startWorkbench, type WorkbenchPage } from "./workbench";

const served = serveWorkbench();

describe("the page", () => {
  let workbench: WorkbenchPage;

  beforeAll(async () => {
    workbench = await served.withTemplate("Dose and effluent");
  });

  test("says what it is", async () => {
    expect(await workbench.page.getByRole("heading", { level: 1 }).textContent()).toBe(
      "Dosewright workbench",
    );
    expect(await workbench.page.title()).toBe("Dose and effluent · Dosewright workbench");
  });

  test("opens on a computed workbook: the dose, less what is lost, is what was wanted", async () => {
    const [wanted, dose, retention] = await numbers(workbench, [
      "wanted",
      "dose",
      "overallRetention",
    ]);
    expect(wanted).toBe(6.5);
    expect(dose * retention).toBeCloseTo(wanted, 6);
  });

  test("computes again what depends on an input that is edited", async () => {
    const [before, lostBefore] = await numbers(workbench, ["dose", "lost"]);
    await workbench.type(cellOf("wanted"), "7.5");
    const [dose, retention, lost, production] = await numbers(workbench, [
      "dose",
      "overallRetention",
      "lost",
      "production",
    ]);
    expect(dose).toBeGreaterThan(before);
    expect(dose * retention).toBeCloseTo(7.5, 6);
    expect(lost).toBeGreaterThan(lostBefore);
    expect(lost).toBeCloseTo(dose * (1 - retention) * production, 6);
  });

  test("takes a formula of ours, and shows why another fails", async () => {
    await workbench.type("A60", "=WETEND.DOSE.TARGET(6.5,82%)");
    expect(Number((await workbench.read("A60")).value)).toBeCloseTo(6.5 / 0.82, 9);
    await workbench.type("A61", "=WETEND.DOSE.TARGET(6.5,82)");
    const failed = await workbench.read("A61");
    expect(failed.value).toBe("#VALUE!");
    expect(failed.message).toContain("82");
    expect(failed.message).toContain("fraction");
    const button = workbench.page.getByRole("button", { name: "1 cell fails" });
    await workbench.select("A1");
    await button.click();
    await workbench.page.locator("#status .address", { hasText: /^A61$/ }).waitFor();
    await workbench.type("A61", "gone");
    await button.waitFor({ state: "hidden" });
  });

  test("a native formula says which cell is at fault, and where the error came from", async () => {
    await workbench.type("C61", "=WETEND.DOSE.TARGET(6.5,82)");
    await workbench.type("C62", "=2*C61");
    const [own, read] = [await workbench.read("C61"), await workbench.read("C62")];
    expect(own.message).toContain("82");
    expect(read.message).toBe(`From C61: ${own.message}`);
    await workbench.type("C61", "n/a");
    expect((await workbench.read("C62")).message).toBe('C61 is the text "n/a". Give a number.');
    await workbench.type("C61", "6.5");
    expect((await workbench.read("C62")).message).toBe("");
  });

  test("tells why a formula fails that stands in the way of another one", async () => {
    await workbench.type("D60", "=WETEND.DOSE.TARGET({5;6},0)");
    await workbench.type("D61", "=WETEND.DOSE.TARGET(6.5,82)");
    expect((await workbench.read("D60")).value).toBe("#SPILL!");
    expect((await workbench.read("D61")).message).toContain("82");
    for (const address of ["D60", "D61"]) await workbench.type(address, "gone");
  });

  test("takes what people write and the grid does not understand by itself", async () => {
    await workbench.type("A62", `=SUM(${furnish?.name}[${furnish?.columns[1]}])`);
    expect((await workbench.read("A62")).value).toBe("1");
    await workbench.type("A63", "=--TRUE");
    expect((await workbench.read("A63")).value).toBe("1");
    await workbench.type("A64", "=0.50=1/2");
    expect((await workbench.read("A64")).value).toBe("TRUE");
  });

  test("says which formulas read their own answers", async () => {
    await workbench.type("A70", "=B70+1");
    await workbench.type("B70", "=A70+1");
    const notice = workbench.page.getByRole("alert");
    await notice.waitFor();
    expect(await notice.textContent()).toMatch(/read their own answers.*![AB]70, .*![AB]70\./);
    await workbench.type("B70", "1");
    await notice.waitFor({ state: "hidden" });
    expect((await workbench.read("A70")).value).toBe("2");
  });

  test("offers our functions while a formula is typed, with help on their arguments", async () => {
    await workbench.select("A65");
    await workbench.page.keyboard.type("=WETEND.DOSE.PU");
    await workbench.page.getByText("WETEND.DOSE.PUMP").first().waitFor();
    await workbench.page.keyboard.type("MP(");
    await workbench.page
      .getByText("Dose of dry active additive", { exact: false })
      .first()
      .waitFor();
    await workbench.page.keyboard.press("Escape");
    await workbench.page.keyboard.press("Escape");
  });

  test("saves an .xlsx that it opens again with the same formulas and values", async () => {
    await workbench.type("F60", "=FILTER({1;2},{1;0})");
    const before = await numbers(workbench, ["dose", "lost"]);
    const [download] = await Promise.all([
      workbench.page.waitForEvent("download"),
      workbench.page.getByRole("button", { name: "Save .xlsx" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("dose-and-effluent.xlsx");
    const bytes = await readFile(await download.path());
    const parts = Object.values(unzipSync(bytes)).map((part) => strFromU8(part));
    const sheet = parts.find((part) => part.includes('<c r="F60"'));
    expect(sheet).toMatch(/<c r="F60"[^>]* cm="1"[^>]*><f t="array" ref="F60">/);
    await workbench.openFile("own copy.xlsx", bytes);
    expect(await workbench.page.title()).toBe("own copy.xlsx · Dosewright workbench");
    expect(await numbers(workbench, ["dose", "lost"])).toEqual(before);
    expect((await workbench.read("A62")).value).toBe("1");
  });

  test("says what is wrong with a file that is no workbook, and keeps the one that is open", async () => {
    await workbench.page
      .locator("#file")
      .setInputFiles({ name: "notes.xlsx", mimeType: "", buffer: Buffer.from("no zip archive") });
    const notice = workbench.page.getByRole("alert");
    await notice.waitFor();
    expect(await notice.textContent()).toMatch(/^notes\.xlsx: /);
    expect(await workbench.page.title()).toBe("own copy.xlsx · Dosewright workbench");
  });

  test("says on paper how to print, in place of an empty frame", async () => {
    const { page } = workbench;
    await page.emulateMedia({ media: "print" });
    expect(await page.getByText("The workbench does not print.").isVisible()).toBe(true);
    for (const hidden of ["body > header", "#desk"])
      expect(await page.locator(hidden).isVisible()).toBe(false);
    await page.emulateMedia({ media: null });
    expect(await page.getByText("The workbench does not print.").isVisible()).toBe(false);
  });

  test("asks nothing of any other machine, and logs no error", () => {
    const elsewhere = workbench.requests.filter(
      (url) => !url.startsWith(`${served.address}/`) && !/^(data|blob):/.test(url),
    );
    expect(elsewhere).toEqual([]);
    expect(workbench.errors).toEqual([]);
  });
});

const anew = async (look: Look) => {
  const workbench = await served.withTemplate("Dose and effluent");
  await workbench.look(look);
  return workbench;
};

describe.each([
  ["wide and light", () => anew({})],
  [
    // Opened so, as on a small screen.
    "narrow and dark",
    () => served.open({ viewport: { width: 320, height: 700 }, colorScheme: "dark" }),
  ],
  ["with forced colours", () => anew({ forcedColors: "active" })],
] as const)("%s", (_, open) => {
  test("the page has no serious fault of accessibility and does not scroll sideways", async () => {
    const { page } = await open();
    expect(await seriousFindings(page)).toEqual([]);
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
    ).toBeLessThanOrEqual(0);
  });
});

describe("the server", () => {
  test("answers to no other name", async () => {
    const { host } = new URL(served.address);
    const { request } = await import("node:http");
    const status = await new Promise((resolve, reject) => {
      request(served.address, { headers: { Host: "mill.example" } }, (answer) =>
        resolve(answer.statusCode),
      )
        .on("error", reject)
        .end();
    });
    expect(status).toBe(403);
    expect((await fetch(`http://${host}/`)).status).toBe(200);
  });

  test("takes the next port where its own is taken, says so in its one line, and ends cleanly when the system asks", async () => {
    // Whoever has it now may let it go before the second asks for it.
    const holder = createServer();
    await new Promise<unknown>((resolve) =>
      holder.once("error", resolve).listen(3000, "127.0.0.1", () => resolve(undefined)),
    );
    const second = await startWorkbench();
    expect(second.address).not.toBe(served.address);
    expect(second.printed().trim()).toMatch(
      /^Port 3000 is taken\. Open http:\/\/127\.0\.0\.1:\d+ in a browser\. Ctrl-C ends it\.$/,
    );
    expect(await second.stop("SIGTERM")).toBe(0);
    holder.close();
  });
});

const { definedNames, tables } = layOut(doseAndEffluent);
const furnish = tables.find(({ name }) => name === "furnish");

/** The cell that a name of the first workbook stands for: "'Thirty days'!$B$4" → Thirty days!B4. */
function cellOf(name: string): string {
  const formula = definedNames.find((one) => one.name === name)?.formula;
  if (!formula) throw new Error(`The workbook has no name ${name}.`);
  return formula.replaceAll(/[$']/g, "");
}

async function numbers<const T extends readonly string[]>(
  workbench: WorkbenchPage,
  names: T,
): Promise<{ [K in keyof T]: number }> {
  const values: number[] = [];
  for (const name of names) values.push(Number((await workbench.read(cellOf(name))).value));
  return values as { [K in keyof T]: number };
}
