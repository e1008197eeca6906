import { describe, expect, test } from "vitest";
import {
  contentSecurityPolicy,
  headerList,
  headerRules,
  headersFor,
} from "../../src/build/headers";

const policy = (office?: "own" | "official") =>
  new Map(
    contentSecurityPolicy(office)
      .split("; ")
      .map((part) => [part.split(" ")[0], part.split(" ").slice(1)]),
  );

describe("the content security policy", () => {
  test("loads scripts, data and styles from the folder itself and from nowhere else", () => {
    expect(policy().get("default-src")).toEqual(["'none'"]);
    expect(policy().get("script-src")).toEqual(["'self'"]);
    expect(policy().get("connect-src")).toEqual(["'self'"]);
    expect(policy().get("style-src")).toEqual(["'self'", "'unsafe-inline'"]);
  });
  test("never lets a script be made from text", () => {
    for (const office of ["own", "official"] as const) {
      expect(policy(office).get("script-src")?.join(" ")).not.toMatch(/unsafe|data:|\*/);
    }
  });
  test("adds the vendor's address for its library where a build takes it from there", () => {
    expect(policy("official").get("script-src")).toEqual([
      "'self'",
      "https://appsforoffice.microsoft.com",
    ]);
  });
});

describe("the headers of a file", () => {
  test.each([
    ["/assets/pane.0123456789ab.js", "public, max-age=31536000, immutable"],
    ["/office/office.js", "public, max-age=86400"],
    ["/functions.js", "no-cache"],
    ["/functions.json", "no-cache"],
    ["/taskpane.html", "no-cache"],
    ["/help/dose.pump.html", "no-cache"],
    ["/manifest.xml", "no-cache"],
  ])("%s is kept as %s", (path, cache) => {
    expect(headersFor(path)["Cache-Control"]).toBe(cache);
  });
  test("only the functions may be read from another origin", () => {
    for (const { files, headers } of headerRules()) {
      expect("Access-Control-Allow-Origin" in headers, files).toBe(files === "/functions.*");
    }
  });
  test("every file has the policy, no guessing of types and no referrer", () => {
    for (const path of ["/assets/a.js", "/office/a.js", "/functions.js", "/taskpane.html"]) {
      expect(headersFor(path)).toMatchObject({
        "Content-Security-Policy": contentSecurityPolicy(),
        "X-Content-Type-Options": "nosniff",
        "Referrer-Policy": "no-referrer",
      });
    }
  });
  test("the list for the web server says all of it", () => {
    for (const { files, headers } of headerRules("official")) {
      expect(headerList("official")).toContain(files);
      for (const [name, value] of Object.entries(headers)) {
        expect(headerList("official")).toContain(`  ${name}: ${value}`);
      }
    }
  });
});
