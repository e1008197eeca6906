/** What computed a workbook: it stands in the workbook through LIBRARY.VERSION. */
export const VERSION = "Dosewright 0.1.0";
