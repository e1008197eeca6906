import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { manifestFaults } from "../../src/build/manifest/check-manifest";
import { DEVELOPMENT_ORIGIN, fillManifest, readOrigin } from "../../src/build/manifest/manifest";

const folder = path.join(import.meta.dirname, "../../manifest");
const template = readFileSync(path.join(folder, "dosewright.xml"), "utf8");
const origin = "https://example.org/dosewright";
const production = fillManifest(template, { origin, version: "1.2.3" });
const development = fillManifest(template, { origin: DEVELOPMENT_ORIGIN, version: "1.2.3" });

/** The icons as they lie in the project. */
const icons = (url: string) => {
  const name = url.split("/icons/")[1];
  return name === undefined ? undefined : readFileSync(path.join(folder, "icons", name));
};

const between = (text: string, tag: string) => new RegExp(`<${tag}>(.*?)</${tag}>`).exec(text)?.[1];

describe("the manifest", () => {
  test.each([
    ["of production", production],
    ["of development", development],
    [
      "with a namespace of its own",
      fillManifest(template, { origin, version: "1.2.3", namespace: "WETENDDEV" }),
    ],
  ])("%s is sound", (_, xml) => {
    expect(manifestFaults(xml, icons)).toEqual([]);
  });

  test("takes its version from the package", () => {
    expect(between(production, "Version")).toBe("1.2.3.0");
    expect(between(fillManifest(template, { origin, version: "2.0.0-beta.1" }), "Version")).toBe(
      "2.0.0.0",
    );
  });

  test("gives development an id and a name of its own, and keeps the namespace that workbooks hold", () => {
    expect(between(development, "Id")).not.toBe(between(production, "Id"));
    expect(production).toContain('<DisplayName DefaultValue="Dosewright"/>');
    expect(development).toContain('<DisplayName DefaultValue="Dosewright (development)"/>');
    for (const xml of [production, development]) {
      expect(xml).toContain('<bt:String id="Functions.Namespace" DefaultValue="WETEND"/>');
    }
  });

  test("gives a copy with another namespace an id and a name of its own, the same in every build", () => {
    const copy = (namespace: string, at = origin) =>
      fillManifest(template, { origin: at, version: "1.2.3", namespace });
    const ids = [copy("WETENDTEST"), copy("WETENDDEV"), copy("WETENDTEST", DEVELOPMENT_ORIGIN)]
      .concat(production, development)
      .map((xml) => between(xml, "Id"));
    expect(new Set(ids).size).toBe(5);
    // Computed by the module uuid of Python 3: uuid5(UUID(production id), "WETENDTEST").
    expect(ids[0]).toBe("72472ef7-a669-5323-99d2-b9856500be03");
    expect(copy("WETENDTEST")).toContain('<DisplayName DefaultValue="Dosewright (WETENDTEST)"/>');
  });

  test("serves everything from one origin", () => {
    const addresses = [...production.matchAll(/DefaultValue="(https:[^"]*)"/g)].map(
      ([, url]) => url,
    );
    expect(addresses.length).toBeGreaterThan(8);
    for (const url of addresses) expect(url).toMatch(/^https:\/\/example\.org\/dosewright\//);
  });
});

describe("a broken copy is found out", () => {
  const replace = (from: string | RegExp, to: string) => () => {
    const broken = production.replace(from, to);
    expect(broken).not.toBe(production);
    return broken;
  };
  /** The pattern of a whole element. */
  const whole = (tag: string) => `<${tag}(?: [^>]*)?(?:/>|>[\\s\\S]*?</${tag}>)`;
  const without = (tag: string) => replace(new RegExp(`\\s*${whole(tag)}`), "");
  const swapped = (first: string, second: string) =>
    replace(new RegExp(`(${whole(first)})(\\s*)(${whole(second)})`), "$3$2$1");

  test.each<[string, () => string, RegExp]>([
    ["an element that is not closed", replace("</Permissions>", ""), /not well-formed/],
    ["another root", replace(/OfficeApp/g, "MailApp"), /the root is MailApp/],
    ["another kind of app", replace("TaskPaneApp", "ContentApp"), /no TaskPaneApp/],
    ["version before id", swapped("Id", "Version"), /OfficeApp lacks Id there/],
    [
      "permissions before settings",
      swapped("DefaultSettings", "Permissions"),
      /lacks DefaultSettings there/,
    ],
    ["requirements before hosts", swapped("Hosts", "Requirements"), /OfficeApp lacks Hosts there/],
    ["metadata before page", swapped("Page", "Metadata"), /ExtensionPoint lacks Page there/],
    ["icon before tip", swapped("Supertip", "Icon"), /Control lacks Supertip there/],
    ["urls before images", swapped("bt:Images", "bt:Urls"), /Resources lacks bt:Images there/],
    ["no support address", without("SupportUrl"), /lacks SupportUrl/],
    ["no icon of high resolution", without("HighResolutionIconUrl"), /lacks HighResolutionIconUrl/],
    ["no runtime", without("Runtimes"), /lacks Runtimes/],
    ["no namespace", without("Namespace"), /lacks Namespace/],
    ["no button", without("Control"), /Group lacks Control/],
    [
      "an element that nobody knows",
      replace("<Hosts>", "<Hoists/><Hosts>"),
      /Hoists is out of place|lacks Hosts there/,
    ],
    [
      "an element inside a leaf",
      replace("ReadWriteDocument", "ReadWriteDocument<Extra/>"),
      /Extra is out of place/,
    ],
    ["an id that is no GUID", replace(/<Id>.*<\/Id>/, "<Id>dosewright</Id>"), /Id is no GUID/],
    [
      "a version that is none",
      replace(/<Version>.*<\/Version>/, "<Version>1.2.x</Version>"),
      /Version/,
    ],
    ["fewer permissions", replace("ReadWriteDocument", "ReadDocument"), /Permissions/],
    [
      "no requirement of a shared runtime",
      replace('Name="SharedRuntime"', 'Name="ExcelApi"'),
      /SharedRuntime/,
    ],
    ["a lifetime that is short", replace('lifetime="long"', 'lifetime="short"'), /not long-lived/],
    [
      "a page of its own for the functions",
      replace(
        /<Page>\s*<SourceLocation resid="Page.Url"\/>/,
        '<Page><SourceLocation resid="Help.Url"/>',
      ),
      /not the page of the runtime/,
    ],
    [
      "a pane of its own",
      replace(/taskpane\.html"\/>\s*<\/DefaultSettings>/, 'pane.html"/></DefaultSettings>'),
      /default page/,
    ],
    [
      "a pane with an id",
      replace(
        '<Action xsi:type="ShowTaskpane">',
        '<Action xsi:type="ShowTaskpane"><TaskpaneId>P</TaskpaneId>',
      ),
      /takes no TaskpaneId/,
    ],
    [
      "a resource that is not there",
      replace('resid="ShowPane.Label"', 'resid="ShowPane.Labels"'),
      /no resource is named ShowPane.Labels/,
    ],
    [
      "a resource that nobody uses",
      replace('resid="ShowPane.Label"', 'resid="Group.Label"'),
      /ShowPane.Label is not used/,
    ],
    [
      "a resource of the wrong kind",
      replace('resid="ShowPane.Label"', 'resid="ShowPane.Description"'),
      /not among the bt:ShortStrings/,
    ],
    [
      "a resource defined twice",
      replace(' id="Icon.32"', ' id="Icon.16"'),
      /Icon.16 is defined twice/,
    ],
    [
      "a name of a resource that is too long",
      replace(/GetStarted\.Description/g, `GetStarted.${"D".repeat(30)}`),
      /too long/,
    ],
    [
      "a label without resid",
      replace('<Label resid="Group.Label"/>', "<Label/>"),
      /Label has no resid/,
    ],
    [
      "a control without id",
      replace(' id="Dosewright.ShowPane"', ""),
      /Control lacks the attribute id/,
    ],
    [
      "two controls of one id",
      replace('id="Dosewright.ShowPane"', 'id="Dosewright.Group"'),
      /has the id of another/,
    ],
    [
      "a plain http address",
      replace('https://example.org/dosewright/functions.js"', 'http://example.org/functions.js"'),
      /no https address/,
    ],
    [
      "a relative address",
      replace('"https://example.org/dosewright/help/index.html"', '"/help/index.html"'),
      /no https address/,
    ],
    [
      "a placeholder that was not filled",
      replace(/example\.org\/dosewright\/functions\.js/, "example.org/{place}/functions.js"),
      /holds a placeholder/,
    ],
    [
      "a namespace in small letters",
      replace('DefaultValue="WETEND"', 'DefaultValue="wetend"'),
      /namespace/,
    ],
    ["a text that is too long", replace("Look up an additive", "x".repeat(251)), /at most 250/],
    [
      "a missing size of the icon",
      replace(/\s*<bt:Image size="80" resid="Icon.80"\/>/, ""),
      /lacks the size 80/,
    ],
    [
      "an icon that is smaller than said",
      replace(/(HighResolutionIconUrl .*)-64\.png/, "$1-32.png"),
      /is 32 × 32, not 64 × 64/,
    ],
    [
      "a ribbon icon of another size",
      replace(
        'id="Icon.80" DefaultValue="https://example.org/dosewright/icons/dosewright-80.png"',
        'id="Icon.80" DefaultValue="https://example.org/dosewright/icons/dosewright-64.png"',
      ),
      /is 64 × 64, not 80 × 80/,
    ],
    ["an icon that is no PNG", replace("dosewright-64.png", "dosewright.svg"), /is no PNG/],
    [
      "an icon that is not served",
      replace("/icons/dosewright-64.png", "/dosewright-64.png"),
      /no file at/,
    ],
  ])("%s", (_, broken, fault) => {
    expect(manifestFaults(broken(), icons).join("\n")).toMatch(fault);
  });
});

describe("the origin of a build", () => {
  test("loses the slash at its end", () => {
    expect(readOrigin("https://example.org/dosewright/")).toBe(origin);
  });
  test.each([
    "http://example.org",
    "example.org",
    "https://example.org/?x=1",
    "https://me@example.org",
    "",
  ])("%j is refused with what to give", (given) => {
    expect(() => readOrigin(given)).toThrow(/Give an https address/);
  });
});
