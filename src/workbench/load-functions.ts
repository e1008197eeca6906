import type { FunctionsMetadata } from "../build/built-functions";
import { functionsHost, type LoadedFunctions, type Offered } from "../engine/functions";

declare global {
  interface Window {
    dosewright?: Offered;
  }
}

/** The built functions, loaded as a host loads them: the script from its file, what is said of them from theirs. */
export async function loadBuiltFunctions(): Promise<LoadedFunctions> {
  const host = functionsHost();
  Object.assign(window, { CustomFunctions: host.CustomFunctions });
  const [metadata] = await Promise.all([fetchMetadata(), runScript("functions.js")]);
  if (!window.dosewright) throw new Error("The script of the functions did not run.");
  return host.bind(metadata, window.dosewright);
}

async function fetchMetadata(): Promise<FunctionsMetadata> {
  const response = await fetch("functions.json");
  if (!response.ok) throw new Error(`functions.json: ${response.status} ${response.statusText}`);
  return response.json();
}

const runScript = (address: string) =>
  new Promise<void>((resolve, reject) => {
    const script = document.createElement("script");
    script.src = address;
    script.addEventListener("load", () => resolve());
    script.addEventListener("error", () => reject(new Error(`${address} cannot be loaded.`)));
    document.head.append(script);
  });
