/** The workbench page: a spreadsheet with our functions in it, the templates, and a person's own workbooks. */
import { plans } from "../../templates/plans";
import { doseAndEffluent } from "../../templates/plans/dose-and-effluent";
import type { FunctionsMetadata } from "../build/built-functions";
import type { CellPlace } from "../engine/cell-place";
import { CallRecord } from "../host/call-record";
import { blankWorkbook } from "./book/blank-workbook";
import { takeLookOfLine } from "./book/look-of-line";
import { offerComments } from "./comments/offer-comment";
import { Desk } from "./desk";
import { dropDown } from "./drop-down";
import { takeDroppedFiles } from "./dropped-files";
import { Choices } from "./entries/choices";
import { enterShares } from "./entries/enter-share";
import { fillDownBesideBlanks } from "./entries/fill-down";
import { fillFromShown } from "./entries/fill-from-shown";
import { pasteSpilled } from "./entries/paste-spilled";
import { keepLookUnderText } from "./entries/paste-text";
import { pasteWords } from "./entries/paste-words";
import { refuseEntries } from "./entries/refuse-entries";
import { tellBreaches } from "./entries/tell-breaches";
import { keepLines } from "./entries/typed-lines";
import { offerFiltering } from "./filtering/offer-filtering";
import { keepToShown } from "./filtering/shown-only";
import { offerFinding } from "./finding/offer-finding";
import { takeRulesAlong } from "./following/cut-rules";
import { offerFormats } from "./formats/offer-formats";
import { editAsWritten } from "./formulas/edited-formulas";
import { followNames } from "./formulas/follow-names";
import { followSheets } from "./formulas/follow-sheets";
import { followSpills } from "./formulas/follow-spills";
import { translateTyped } from "./formulas/typed-formulas";
import { Computed } from "./grid/computed";
import { endEditing, isEditing } from "./grid/editing";
import { completeFreshWords } from "./grid/fresh-completion";
import { describeFunctions, openGrid } from "./grid/grid";
import { takeLookOfLineBefore } from "./grid/look-of-new-lines";
import { makeRoom } from "./grid/make-room";
import { nameControls } from "./grid/name-controls";
import { takeKeys } from "./keys";
import { loadBuiltFunctions } from "./load-functions";
import { OpenAndSave } from "./open-and-save";
import { PanePlace } from "./pane-place";
import { offerSorting } from "./sorting/offer-sorting";
import { circleNotice } from "./status/circle-notice";
import { Status } from "./status/status";
import { sumUp } from "./status/sums";
import { growTables } from "./tables/growing-tables";
import { fillInsertedRows } from "./tables/inserted-rows";
import { showComments } from "./view/comments";
import { fitRows } from "./view/fit-rows";
import { keepTabInView } from "./view/keep-tab-in-view";
import { widenNameBox } from "./view/name-box";
import { scrollPastFrozen } from "./view/scroll-to-cell";
import { showSections } from "./view/sections";
import { formatSpills } from "./view/spilled-formats";
import { followTheme, isDark } from "./view/theme";
import "./page.css";
import "./grid-parts.css";

const byId = <T extends HTMLElement>(id: string) => document.getElementById(id) as T;
const notice = byId("notice");
const picker = byId<HTMLInputElement>("file");

function tell(text: string | undefined): void {
  notice.hidden = text === undefined;
  notice.textContent = text ?? "";
}

async function start(): Promise<void> {
  const loaded = await loadBuiltFunctions();
  const record = new CallRecord();
  loaded.observe(record.remember);
  const metadata: FunctionsMetadata = { functions: loaded.functions.map((one) => one.metadata) };
  const grid = openGrid(byId("grid"), loaded, isDark());
  // Before the grid's parts, made with the first workbook, see what was typed.
  translateTyped(grid);
  followNames(grid);
  growTables(grid);
  fillInsertedRows(grid);
  makeRoom(grid);
  takeLookOfLineBefore(grid);
  scrollPastFrozen(grid);
  fillDownBesideBlanks(grid);
  fillFromShown();
  const desk = new Desk(grid);
  const computed = new Computed();

  const begun = () => {
    computed.begin();
    delete document.documentElement.dataset.computed;
  };

  const finish = async () => {
    await endEditing(grid);
    await computed.settled();
  };
  const work = new OpenAndSave(desk, metadata, finish, tell, () => {
    record.forgetAll();
    begun();
  });

  const pane = new PanePlace(byId("pane"), byId<HTMLButtonElement>("pane-shown"), async () => {
    const { showPane } = await import("./show-pane");
    const showGrid = () => pane.showGrid();
    const saveValuesCopy = () => work.saveValuesCopy();
    await showPane(byId("pane"), { grid, desk, computed, record, saveValuesCopy, showGrid });
  });

  dropDown(byId("templates"), () =>
    [blankWorkbook, ...plans].map((plan) => ({
      label: plan.title,
      more: plan.question,
      choose: () => work.openTemplate(plan),
    })),
  );
  byId("open").addEventListener("click", () => picker.click());
  const save = () => void work.save().catch(broken);
  byId("save").addEventListener("click", save);
  picker.addEventListener("change", () => {
    const [file] = picker.files ?? [];
    picker.value = "";
    if (file) void work.openFile(file).catch(broken);
  });
  takeDroppedFiles((file) => void work.openFile(file).catch(broken));
  addEventListener("beforeunload", (event) => desk.changed && event.preventDefault());

  work.openTemplate(doseAndEffluent);
  let chartsShown = false;
  async function showChartsOnce(): Promise<void> {
    if (chartsShown) return;
    chartsShown = true;
    const { showCharts } = await import("./charts");
    showCharts(grid, desk, computed);
  }

  // The grid makes its parts with the first workbook; it computes when this turn of the page has ended.
  const commentAt = (place: CellPlace) => desk.beside.comments.at(place);
  const status = new Status(grid, byId("status"), byId<HTMLButtonElement>("failing"), commentAt);
  showComments(grid, commentAt);
  formatSpills(grid);
  showSections(grid);
  new Choices(grid, () => status.tell(undefined));
  editAsWritten(grid);
  fitRows(grid, computed);
  keepLookUnderText(grid);
  takeRulesAlong(grid);
  takeLookOfLine(grid);
  keepLines(grid);
  enterShares(grid);
  refuseEntries(grid, computed, (said) => status.tell(said));
  tellBreaches(grid, computed, (said) => status.tell(said));
  pasteSpilled(grid);
  pasteWords(grid);
  let circleTold = false;
  const settled = async (circular: boolean) => {
    status.show();
    status.countFailures();
    computed.tell();
    document.documentElement.dataset.computed = desk.lying?.fileName ?? "";
    if (circular || circleTold) tell(circular ? await circleNotice(grid) : undefined);
    circleTold = circular;
    // Once the numbers are on the screen.
    requestAnimationFrame(() => {
      pane.ready();
      void showChartsOnce().catch(broken);
    });
  };
  followSpills(grid, { begun, settled });
  followSheets(grid);
  sumUp(grid);
  const openFind = offerFinding(grid, byId("find"));
  const find = async () => {
    if (isEditing(grid)) await endEditing(grid);
    openFind();
  };
  takeKeys(grid, { s: save, f: () => void find() });
  offerSorting(grid, desk, byId("sort"), tell);
  offerFiltering(grid, desk, computed, byId("filter"), byId("shown-rows"));
  keepToShown(grid, (text) => status.tellHere(text));
  offerFormats(grid, byId("format"));
  offerComments(grid, desk.beside.comments, byId("comment"));
  nameControls(document.body);
  widenNameBox(grid, byId("grid"), (said) => status.tell(said));
  keepTabInView(byId("grid"));
  followTheme(grid);
  describeFunctions(grid, loaded);
  completeFreshWords(grid);
}

function broken(problem: unknown): void {
  tell(`Something is broken: ${problem instanceof Error ? problem.message : problem}`);
  console.error(problem);
}

start().catch(broken);
