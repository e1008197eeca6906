export type Library = typeof import("wasm-xlsxwriter");

let loading: Promise<Library> | undefined;

async function load(): Promise<Library> {
  const library = await import("wasm-xlsxwriter");
  // The package's browser build has to fetch its binary first; the one for Node has it.
  const start = (library as { default?: unknown }).default;
  if (typeof start === "function") await start();
  return library;
}

/** The package that writes new workbooks, loaded when it is first wanted. */
export function xlsxLibrary(): Promise<Library> {
  loading ??= load();
  return loading;
}
