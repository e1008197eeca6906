import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import http from "node:http";
import https from "node:https";
import os from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { projectCertificates } from "../../src/commands/certificates";
import { HOST, isFree, servePages } from "../../src/commands/serve-pages";

const folder = mkdtempSync(path.join(os.tmpdir(), "pages-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A part of one script; beside it in the folder lies a file that is nobody's business. */
function part() {
  writeFileSync(path.join(folder, "entry.js"), "console.log('served');");
  writeFileSync(path.join(folder, "secret.txt"), "secret");
  return {
    mode: "production" as const,
    context: folder,
    entry: "./entry.js",
    output: { path: path.join(folder, "dist"), filename: "page.js" },
  };
}

async function freePort(): Promise<number> {
  for (let port = 34_430; ; port += 1) if (await isFree(port)) return port;
}

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
    served = await servePages({ parts: [part()], port, index: "page.js", headersFor });
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

  test.each(["evil.example", "127.0.0.1.evil.example", "localhost.evil.example:3443"])(
    "refuses requests in the name of %s",
    async (host) => {
      expect((await ask(port, "/page.js", { headers: { host } })).status).toBe(403);
    },
  );

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

test("a server that was stopped leaves its port free", async () => {
  const port = await freePort();
  const served = await servePages({
    parts: [part()],
    port,
    index: "page.js",
    headersFor: () => ({}),
  });
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
    const served = await servePages({
      parts: [part()],
      port,
      index: "page.js",
      headersFor: () => ({}),
      https: { ca, cert, key },
    });
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
