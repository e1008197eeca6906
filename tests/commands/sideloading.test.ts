import { describe, expect, test } from "vitest";
import { sideloading } from "../../src/commands/sideloading";

const choices = {
  origin: "https://127.0.0.1:3443",
  manifest: "C:\\mill\\dist\\development.xml",
  untrusted: undefined,
};

describe("the words on side-loading", () => {
  test("name the address, the manifest and a way for each platform", () => {
    const words = sideloading(choices);
    for (const part of [choices.origin, choices.manifest, "Windows", "Mac ", "Web ", "Ctrl-C"]) {
      expect(words).toContain(part);
    }
  });
  test("stay short enough to read at a glance, in lines that fit", () => {
    expect(sideloading({ ...choices, untrusted: "ca.crt" }).split("\n").length).toBeLessThan(26);
  });
  test("speak of trust only where the machine does not trust yet", () => {
    expect(sideloading(choices)).not.toContain("trust");
    expect(sideloading({ ...choices, untrusted: "/p/ca.crt" })).toContain("/p/ca.crt");
  });
});
