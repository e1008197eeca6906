import { createServer } from "node:net";
import { HOST } from "../../src/commands/serve-pages";

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

/** The first of three ports in a row that nobody listens to. */
export async function freePort(): Promise<number> {
  for (let port = 34_430; ; port += 3) {
    const free = [await isFree(port), await isFree(port + 1), await isFree(port + 2)];
    if (free.every(Boolean)) return port;
  }
}
