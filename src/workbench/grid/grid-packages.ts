/**
 * The grid's packages, bundled by themselves (see build/grid-bundle) and lent to the page under their names:
 * they are many times as large as everything of ours, and never change while the page is worked on.
 */
import * as core from "@univerjs/core";
import * as coreFacade from "@univerjs/core/facade";
import * as dataValidation from "@univerjs/data-validation";
import * as docs from "@univerjs/docs";
import * as docsUi from "@univerjs/docs-ui";
import * as engineFormula from "@univerjs/engine-formula";
import * as engineRender from "@univerjs/engine-render";
import words from "@univerjs/preset-sheets-core/locales/en-US";
import * as sheets from "@univerjs/sheets";
import * as sheetsConditionalFormatting from "@univerjs/sheets-conditional-formatting";
import * as sheetsConditionalFormattingUi from "@univerjs/sheets-conditional-formatting-ui";
import * as sheetsDataValidation from "@univerjs/sheets-data-validation";
import * as sheetsFormula from "@univerjs/sheets-formula";
import * as sheetsFormulaUi from "@univerjs/sheets-formula-ui";
import * as sheetsNumfmt from "@univerjs/sheets-numfmt";
import * as sheetsNumfmtUi from "@univerjs/sheets-numfmt-ui";
import * as sheetsUi from "@univerjs/sheets-ui";
import * as themes from "@univerjs/themes";
import * as ui from "@univerjs/ui";
import "@univerjs/sheets/facade";
import "@univerjs/ui/facade";
import "@univerjs/sheets-ui/facade";
import "@univerjs/engine-formula/facade";
import "@univerjs/sheets-formula/facade";
import "@univerjs/design/lib/index.css";
import "@univerjs/ui/lib/index.css";
import "@univerjs/docs-ui/lib/index.css";
import "@univerjs/sheets-ui/lib/index.css";
import "@univerjs/sheets-formula-ui/lib/index.css";
import "@univerjs/sheets-numfmt-ui/lib/index.css";

Object.assign(window, {
  gridPackages: {
    "@univerjs/core": core,
    "@univerjs/core/facade": coreFacade,
    "@univerjs/data-validation": dataValidation,
    "@univerjs/docs": docs,
    "@univerjs/docs-ui": docsUi,
    "@univerjs/engine-formula": engineFormula,
    "@univerjs/engine-render": engineRender,
    "@univerjs/preset-sheets-core/locales/en-US": words,
    "@univerjs/sheets": sheets,
    "@univerjs/sheets-conditional-formatting": sheetsConditionalFormatting,
    "@univerjs/sheets-conditional-formatting-ui": sheetsConditionalFormattingUi,
    "@univerjs/sheets-data-validation": sheetsDataValidation,
    "@univerjs/sheets-formula": sheetsFormula,
    "@univerjs/sheets-formula-ui": sheetsFormulaUi,
    "@univerjs/sheets-numfmt": sheetsNumfmt,
    "@univerjs/sheets-numfmt-ui": sheetsNumfmtUi,
    "@univerjs/sheets-ui": sheetsUi,
    "@univerjs/themes": themes,
    "@univerjs/ui": ui,
  },
});
