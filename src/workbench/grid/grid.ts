/** The grid: its packages put together, with our functions in them before the first workbook is made. */
import {
  type Injector,
  IUniverInstanceService,
  LocaleType,
  LogLevel,
  type Nullable,
  Univer,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import { UniverDataValidationPlugin } from "@univerjs/data-validation";
import { UniverDocsPlugin } from "@univerjs/docs";
import { UniverDocsUIPlugin } from "@univerjs/docs-ui";
import * as formula from "@univerjs/engine-formula";
import { UniverRenderEnginePlugin } from "@univerjs/engine-render";
import { UniverSheetsPlugin } from "@univerjs/sheets";
import { UniverSheetsConditionalFormattingPlugin } from "@univerjs/sheets-conditional-formatting";
import { UniverSheetsConditionalFormattingUIPlugin } from "@univerjs/sheets-conditional-formatting-ui";
import { UniverSheetsDataValidationPlugin } from "@univerjs/sheets-data-validation";
import {
  CalculationMode,
  IDescriptionService,
  UniverSheetsFormulaPlugin,
} from "@univerjs/sheets-formula";
import { UniverSheetsFormulaUIPlugin } from "@univerjs/sheets-formula-ui";
import { UniverSheetsNumfmtPlugin } from "@univerjs/sheets-numfmt";
import { UniverSheetsNumfmtUIPlugin } from "@univerjs/sheets-numfmt-ui";
import { UniverSheetsUIPlugin } from "@univerjs/sheets-ui";
import { UniverUIPlugin } from "@univerjs/ui";
import { followErrors } from "../../engine/error-origins";
import { executorsOf } from "../../engine/executor";
import { Failures } from "../../engine/failures";
import type { LoadedFunctions } from "../../engine/functions";
import { mend } from "../../engine/mends/mend";
import { followListsByCell } from "../entries/lists-by-cell";
import { leaveRulesToCuts } from "../following/cut-rules";
import { moveRulesWithTheirCells } from "../following/grid-formulas";
import { leaveKeysToBar } from "../typing/bar-focus";
import { tellOtherEditor } from "../typing/both-editors";
import { writeOneReference } from "../typing/one-reference";
import { typeQuickly } from "../typing/quick-typing";
import { fitNumbers } from "../view/fit-numbers";
import { descriptionsOf, findByAnyWord } from "./describe";
import { gridTheme } from "./grid-theme";
import { ownWords } from "./own-words";
import { measureRowsToEnd } from "./row-heights";

export interface Grid {
  readonly univer: Univer;
  readonly api: FUniver;
  readonly injector: Injector;
  readonly failures: Failures;
}

/** What its menus offer and no file of ours holds: colours of tabs, protection that protects nothing. */
const unsaved = [
  "sheet.contextMenu.permission",
  "sheet.command.set-tab-color",
  "sheet.command.add-range-protection-from-sheet-bar",
  "sheet.command.delete-worksheet-protection-from-sheet-bar",
  "sheet.command.change-sheet-protection-from-sheet-bar",
  "sheet.command.view-sheet-permission-from-sheet-bar",
];

export function openGrid(container: HTMLElement, loaded: LoadedFunctions, dark: boolean): Grid {
  const univer = new Univer({
    theme: gridTheme,
    darkMode: dark,
    logLevel: LogLevel.ERROR,
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: ownWords() },
  });
  univer.registerPlugin(UniverDocsPlugin);
  univer.registerPlugin(UniverRenderEnginePlugin);
  univer.registerPlugin(UniverUIPlugin, {
    container,
    header: true,
    toolbar: false,
    disableAutoFocus: true,
  });
  univer.registerPlugin(UniverDocsUIPlugin);
  univer.registerPlugin(formula.UniverFormulaEnginePlugin);
  univer.registerPlugin(UniverSheetsPlugin);
  univer.registerPlugin(UniverSheetsUIPlugin, {
    footer: { menus: false, zoomSlider: false },
    menu: Object.fromEntries(unsaved.map((id) => [id, { hidden: true }])),
  });
  univer.registerPlugin(UniverSheetsNumfmtPlugin);
  univer.registerPlugin(UniverSheetsNumfmtUIPlugin);
  univer.registerPlugin(UniverSheetsFormulaPlugin, {
    initialFormulaComputing: CalculationMode.FORCED,
  });
  univer.registerPlugin(UniverSheetsFormulaUIPlugin);
  univer.registerPlugin(UniverSheetsConditionalFormattingPlugin);
  // It paints what the other one computes; its panel has no button here.
  univer.registerPlugin(UniverSheetsConditionalFormattingUIPlugin);
  univer.registerPlugin(UniverDataValidationPlugin);
  univer.registerPlugin(UniverSheetsDataValidationPlugin);

  const injector = univer.__getInjector();
  mend(injector, formula);
  fitNumbers();
  measureRowsToEnd();
  typeQuickly();
  writeOneReference();
  tellOtherEditor();
  leaveKeysToBar(injector);
  moveRulesWithTheirCells();
  leaveRulesToCuts();
  followListsByCell();
  const failures = new Failures();
  const context = {
    formula,
    failures,
    sheetName: (sheetId: string) =>
      workbookOf({ injector })?.getSheetBySheetId(sheetId)?.getName() ?? "",
  };
  followErrors(injector, context);
  injector.get(formula.IFunctionService).registerExecutors(...executorsOf(loaded, context));
  return { univer, api: FUniver.newAPI(univer), injector, failures };
}

/** Completion and argument help; the grid wants them after its first workbook. */
export function describeFunctions({ injector }: Grid, loaded: LoadedFunctions): void {
  const service = injector.get(IDescriptionService);
  service.registerDescriptions(descriptionsOf(loaded));
  findByAnyWord(service);
}

export const workbookOf = ({ injector }: Pick<Grid, "injector">): Nullable<Workbook> =>
  injector
    .get(IUniverInstanceService)
    .getCurrentUnitOfType<Workbook>(UniverInstanceType.UNIVER_SHEET);
