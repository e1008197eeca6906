import { createServer } from "node:net";
import webpack, { type Configuration } from "webpack";
import WebpackDevServer from "webpack-dev-server";

export interface Pages {
  readonly parts: readonly Configuration[];
  readonly port: number;
  /** The page that the bare address shows. */
  readonly index: string;
  /** The headers of a file, by its path. */
  headersFor(path: string): Readonly<Record<string, string>>;
  readonly https?: { readonly ca: Buffer; readonly cert: Buffer; readonly key: Buffer };
}

/** The one address that is listened to: nobody but this machine can ask. */
export const HOST = "127.0.0.1";

/**
 * Builds parts of the project in memory and serves them to this machine alone, until it is stopped. Requests
 * under another host's name are refused, so that no page of the world can reach it through a name of its own.
 */
export async function servePages({ parts, port, index, headersFor, https }: Pages) {
  const quiet = { infrastructureLogging: { level: "error" }, devtool: false } as const;
  const compiler = webpack(parts.map((part) => ({ ...part, ...quiet })));
  if (compiler === null) throw new Error("There is nothing to build.");
  compiler.hooks.done.tap("servePages", (stats) => {
    if (stats.hasErrors()) console.error(stats.toString({ all: false, errors: true }));
  });
  const server = new WebpackDevServer(
    {
      host: HOST,
      port,
      allowedHosts: [HOST, "localhost"],
      headers: ((request: { path: string }) => headersFor(request.path)) as never,
      ...(https === undefined
        ? {}
        : {
            server: { type: "https", options: { ca: https.ca, cert: https.cert, key: https.key } },
          }),
      static: false,
      client: false,
      hot: false,
      liveReload: false,
      webSocketServer: false,
      setupExitSignals: false,
      devMiddleware: { index, stats: "none" },
      // It serves files and does nothing else: no list of them, no editor opened on request.
      setupMiddlewares: (all) => all.filter(({ name }) => !name?.startsWith("webpack-dev-server")),
    },
    compiler,
  );
  await server.start();
  await new Promise<void>((resolve) => server.middleware?.waitUntilValid(() => resolve()));
  return { stop: () => server.stop() };
}

/** Whether nobody listens to a port of this machine. */
export function isFree(port: number): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once("error", (problem: NodeJS.ErrnoException) => {
      if (problem.code === "EADDRINUSE" || problem.code === "EACCES") resolve(false);
      else reject(problem);
    });
    server.listen(port, HOST, () => server.close(() => resolve(true)));
  });
}

/** Stops cleanly when the person or the system asks for it. */
export function stopWhenAsked(stop: () => Promise<void>): void {
  for (const signal of ["SIGINT", "SIGTERM"] as const) {
    process.once(signal, () => void stop().then(() => process.exit(0)));
  }
}
