import configurations, { workbench } from "../../webpack.config";
import { HOST, PortsTaken, servePages, stopWhenAsked } from "./serve-pages";

/** `npm start`: the workbench, built in memory. Nothing is written, nothing is fetched from elsewhere. */
const PORT = 3000;
const TRIES = 100;

/** What the page may do: load what this server gives, and nothing of anybody else's. */
const HEADERS = {
  "Content-Security-Policy": [
    "default-src 'self'",
    // The writer of .xlsx is compiled to WebAssembly.
    "script-src 'self' 'wasm-unsafe-eval'",
    // The grid and the pane set styles from their scripts.
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self' data:",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join("; "),
  // The grid would read every font of the machine where the browser lets it.
  "Permissions-Policy": "local-fonts=(), camera=(), geolocation=(), microphone=()",
  "Referrer-Policy": "no-referrer",
  "X-Content-Type-Options": "nosniff",
  "Cache-Control": "no-store",
};

try {
  const { port, stop } = await servePages({
    parts: [...configurations().filter(({ name }) => name === "functions"), workbench()],
    ports: Array.from({ length: TRIES }, (_, more) => PORT + more),
    index: "workbench.html",
    headersFor: () => HEADERS,
  });
  stopWhenAsked(stop);
  const taken = port === PORT ? "" : `Port ${PORT} is taken. `;
  console.log(`${taken}Open http://${HOST}:${port} in a browser. Ctrl-C ends it.`);
} catch (problem) {
  if (!(problem instanceof PortsTaken)) throw problem;
  console.error(problem.message);
  process.exitCode = 1;
}
