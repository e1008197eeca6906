import { createServer } from "node:http";
import type { AddressInfo } from "node:net";

export interface Served {
  readonly origin: string;
  close(): Promise<void>;
}

const TYPES: Readonly<Record<string, string>> = {
  js: "text/javascript",
  json: "application/json",
  html: "text/html",
  css: "text/css",
  png: "image/png",
};

/** Serves files from memory to this machine, at a port that is free, each with the headers that it asks for. */
export async function serveFiles(
  files: Readonly<Record<string, string | Buffer>>,
  headersFor: (path: string) => Readonly<Record<string, string>> = () => ({}),
): Promise<Served> {
  const server = createServer(({ url = "/" }, answer) => {
    const name = new URL(url, "http://memory").pathname.slice(1) || "index.html";
    const text = files[name];
    answer.writeHead(text === undefined ? 404 : 200, {
      ...headersFor(`/${name}`),
      "Content-Type": TYPES[name.split(".").at(-1) as string] ?? "text/plain",
    });
    answer.end(text);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  return {
    origin: `http://127.0.0.1:${port}`,
    close: () => new Promise((resolve) => server.close(() => resolve())),
  };
}
