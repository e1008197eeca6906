import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import http from "node:http";
import https from "node:https";
import os from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { projectCertificates } from "../../src/commands/certificates";
import { HOST, PortsTaken, servePages } from "../../src/commands/serve-pages";
import { freePort, isFree } from "./ports";

const folder = mkdtempSync(path.join(os.tmpdir(), "pages-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A part of one script; beside it in the folder lies a file that is nobody's business. */
function part() {
  writeFileSync(path.join(folder, "entry.js"), "console.log('served');");
  writeFileSync(path.join(folder, "secret.txt"), "secret");
  const dist = path.join(folder, "dist");
  mkdirSync(dist, { recursive: true });
  rmSync(path.join(dist, "link.txt"), { force: true });
  symlinkSync(path.join(folder, "secret.txt"), path.join(dist, "link.txt"));
  return {
    mode: "production" as const,
    context: folder,
    entry: "./entry.js",
    output: { path: path.join(folder, "dist"), filename: "page.js" },
  };
}

const pagesOn = (...ports: number[]) => ({
  parts: [part()],
  ports,
  index: "page.js",
  headersFor: () => ({}),
});

interface Answer {
  readonly status: number;
  readonly headers: http.IncomingHttpHeaders;
  readonly text: string;
}

function ask(port: number, target: string, options: https.RequestOptions = {}): Promise<Answer> {
  const { request } = options.ca === undefined ? http : https;
  return new Promise((resolve, reject) => {
    const asked = request({ host: HOST, port, path: target, ...options }, (answer) => {
      let text = "";
      answer.on("data", (chunk: Buffer) => {
        text += chunk;
      });
      answer.on("end", () =>
        resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text }),
      );
    });
    asked.on("error", reject);
    asked.end();
  });
}

describe("the server of pages", () => {
  let port: number;
  let served: Awaited<ReturnType<typeof servePages>>;
  beforeAll(async () => {
    port = await freePort();
    const headersFor = (file: string) => ({ "X-File": file });
    served = await servePages({ ...pagesOn(port), headersFor });
  });
  afterAll(() => served.stop());

  test("serves what was built, with the headers of the file", async () => {
    const { status, headers, text } = await ask(port, "/page.js");
    expect(status).toBe(200);
    expect(text).toContain("served");
    expect(headers["x-file"]).toBe("/page.js");
  });

  test("listens on this machine's own address and no other", async () => {
    const others = Object.values(os.networkInterfaces())
      .flatMap((all) => all ?? [])
      .filter(({ internal, family }) => !internal && family === "IPv4");
    for (const { address } of others) {
      await expect(ask(port, "/page.js", { host: address })).rejects.toMatchObject({
        code: "ECONNREFUSED",
      });
    }
  });

  test.each([
    "evil.example",
    "127.0.0.1.evil.example",
    "localhost.evil.example:3443",
    "127.0.0.1@evil.example",
    "[",
  ])("refuses requests in the name of %j", async (host) => {
    expect((await ask(port, "/page.js", { headers: { host } })).status).toBe(403);
  });

  test.each([
    "/../secret.txt",
    "/%2e%2e/secret.txt",
    "/..%2fsecret.txt",
    "/..%5csecret.txt",
    "/..\\secret.txt",
    "//secret.txt",
    "/page.js/../../secret.txt",
    "/%00/../secret.txt",
    "/..%252fsecret.txt",
    "/dist/../../secret.txt",
    "/secret.txt",
    "/entry.js",
    "/link.txt",
    "/%5C%5C127.0.0.1%5Csecret.txt",
    "/file:%2f%2f%2fsecret.txt",
  ])("serves nothing outside the build: %s", async (target) => {
    const { status, text } = await ask(port, target);
    expect(status).toBeGreaterThanOrEqual(400);
    expect(text).not.toBe("secret");
  });

  test.each([
    "/webpack-dev-server",
    "/webpack-dev-server/open-editor?fileName=entry.js",
    "/webpack-dev-server/invalidate",
  ])("does nothing on request: %s", async (target) => {
    expect((await ask(port, target)).status).toBe(404);
  });
});

test("opens no channel of its own that another page of the browser could reach", async () => {
  const port = await freePort();
  const served = await servePages(pagesOn(port));
  for (const target of ["/ws", "/", "/__webpack_hmr", "/sockjs-node"]) {
    const { status } = await ask(port, target, {
      headers: {
        Connection: "Upgrade",
        Upgrade: "websocket",
        Origin: "https://evil.example",
        "Sec-WebSocket-Version": "13",
        "Sec-WebSocket-Key": "dGhlIHNhbXBsZSBub25jZQ==",
      },
    });
    expect(status, target).toBe(target === "/" ? 200 : 404);
  }
  await served.stop();
});

test("servers that start in the same instant take a port each, and none where there is none left", async () => {
  const first = await freePort();
  const pages = pagesOn(first, first + 1, first + 2);
  const all = await Promise.all([servePages(pages), servePages(pages), servePages(pages)]);
  expect(all.map(({ port }) => port).sort()).toEqual(pages.ports);
  for (const port of pages.ports) expect((await ask(port, "/page.js")).status).toBe(200);
  await expect(servePages(pages)).rejects.toThrow(
    new PortsTaken(`Ports ${first} to ${first + 2} are all taken.`),
  );
  await expect(servePages({ ...pages, ports: [first] })).rejects.toThrow(
    new PortsTaken(`Port ${first} is taken.`),
  );
  for (const { stop } of all) await stop();
});

test("a server that was stopped leaves its port free", async () => {
  const port = await freePort();
  const served = await servePages(pagesOn(port));
  expect(await isFree(port)).toBe(false);
  await served.stop();
  expect(await isFree(port)).toBe(true);
});

describe("certificates of the project", () => {
  const place = path.join(folder, "certificates");

  test("carry HTTPS to this machine for whoever trusts their authority, and for nobody else", async () => {
    const { ca, cert, key, untrusted } = await projectCertificates(place);
    expect(untrusted).toBe(path.join(place, "ca.crt"));
    const port = await freePort();
    const served = await servePages({ ...pagesOn(port), certificates: { ca, cert, key } });
    expect((await ask(port, "/page.js", { ca })).status).toBe(200);
    await expect(ask(port, "/page.js", { ca: "" })).rejects.toThrow();
    await served.stop();
  });

  test("are made once and taken again while they last", async () => {
    const first = await projectCertificates(place);
    const again = await projectCertificates(place);
    expect(again.cert.equals(first.cert)).toBe(true);
  });

  test("are made anew when one of them is missing", async () => {
    const first = await projectCertificates(place);
    rmSync(path.join(place, "localhost.key"));
    const again = await projectCertificates(place);
    expect(again.cert.equals(first.cert)).toBe(false);
  });
});
