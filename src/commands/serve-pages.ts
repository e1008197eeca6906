import http from "node:http";
import https from "node:https";
import webpack, { type Configuration } from "webpack";
import WebpackDevServer from "webpack-dev-server";

export interface Pages {
  readonly parts: readonly Configuration[];
  /** Tried in this order; the first that nobody listens to is taken. */
  readonly ports: readonly number[];
  /** The page that the bare address shows. */
  readonly index: string;
  /** The headers of a file, by its path. */
  headersFor(path: string): Readonly<Record<string, string>>;
  readonly certificates?: { readonly ca: Buffer; readonly cert: Buffer; readonly key: Buffer };
}

/** The one address that is listened to: nobody but this machine can ask. */
export const HOST = "127.0.0.1";

/**
 * Builds parts of the project in memory and serves them to this machine alone, until it is stopped. Requests
 * under another host's name are refused, so that no page of the world can reach it through a name of its own.
 */
export async function servePages({ parts, ports, index, headersFor, certificates }: Pages) {
  const listening = await listen(ports, certificates);
  const quiet = { infrastructureLogging: { level: "error" }, devtool: false } as const;
  const compiler = webpack(parts.map((part) => ({ ...part, ...quiet })));
  if (compiler === null) throw new Error("There is nothing to build.");
  compiler.hooks.done.tap("servePages", (stats) => {
    if (stats.hasErrors()) console.error(stats.toString({ all: false, errors: true }));
  });
  const server = new WebpackDevServer(
    {
      allowedHosts: [HOST, "localhost"],
      headers: ((request: { path: string }) => headersFor(request.path)) as never,
      server: { type: (_, app) => answering(listening.server, app as http.RequestListener) },
      static: false,
      // On this machine packing takes longer than sending.
      compress: false,
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
  return { port: listening.port, stop: () => server.stop() };
}

/** All ports are taken. */
export class PortsTaken extends Error {}

/**
 * A server that has its port. To look for a free port first and listen after a build would leave time for
 * another program to take it.
 */
async function listen(ports: readonly number[], certificates: Pages["certificates"]) {
  const server =
    certificates === undefined ? http.createServer() : https.createServer({ ...certificates });
  for (const port of ports) {
    const has = await new Promise<boolean>((resolve, reject) => {
      const failed = (problem: NodeJS.ErrnoException) =>
        ["EADDRINUSE", "EACCES"].includes(problem.code ?? "") ? resolve(false) : reject(problem);
      server.once("error", failed);
      server.listen(port, HOST, () => {
        server.off("error", failed);
        resolve(true);
      });
    });
    if (has) return { server, port };
  }
  throw new PortsTaken(
    ports.length === 1
      ? `Port ${ports[0]} is taken.`
      : `Ports ${ports[0]} to ${ports.at(-1)} are all taken.`,
  );
}

/** The server lent to those who would make one and listen themselves. */
function answering(server: http.Server, app: http.RequestListener): http.Server {
  server.on("request", app);
  return Object.assign(server, {
    listen(_options: unknown, listens: () => void) {
      listens();
      return server;
    },
  });
}

/** Stops cleanly when the person or the system asks for it. */
export function stopWhenAsked(stop: () => Promise<void>): void {
  for (const signal of ["SIGINT", "SIGTERM"] as const) {
    process.once(signal, () => void stop().then(() => process.exit(0)));
  }
}
