/** The pane as a page of its own: no sheet, no Excel, nothing asked of any other machine. */
void import("./show-pane").then(({ showPane }) => showPane(undefined));

export {};
