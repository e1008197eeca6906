import { X509Certificate } from "node:crypto";
import { existsSync, readFileSync, rmSync } from "node:fs";
import path from "node:path";
import {
  generateCertificates,
  getHttpsServerOptions,
  verifyCertificates,
} from "office-addin-dev-certs";

/** What a server on this machine speaks HTTPS with. */
export interface Certificates {
  readonly ca: Buffer;
  readonly cert: Buffer;
  readonly key: Buffer;
  /** The authority's file that a person has to trust by hand; undefined where the machine trusts it. */
  readonly untrusted?: string;
}

const DAYS = 30;

/**
 * Certificates for 127.0.0.1 that the machine trusts, installed once where the machine lets us: Windows and
 * the Mac ask the person. Where it cannot be done they are made in a folder of the project.
 */
export async function developmentCertificates(
  folder: string,
  platform = process.platform,
): Promise<Certificates> {
  // On Linux the installation wants the rights of root, and no Excel runs there that would need it.
  if (platform !== "linux" || verifyCertificates()) {
    try {
      return (await getHttpsServerOptions()) as Certificates;
    } catch (problem) {
      console.warn(`${(problem as Error).message}\nCertificates are made in ${folder} instead.`);
    }
  }
  return projectCertificates(folder);
}

/** Certificates in a folder of the project, made anew when there are none or they run out within a day. */
export async function projectCertificates(folder: string): Promise<Certificates> {
  const file = (name: string) => path.join(folder, name);
  const [ca, cert, key] = [file("ca.crt"), file("localhost.crt"), file("localhost.key")];
  if (![ca, cert, key].every(existsSync) || runsOut(cert)) {
    rmSync(folder, { recursive: true, force: true });
    await generateCertificates(ca, cert, key, DAYS, ["127.0.0.1", "localhost"]);
  }
  return {
    ca: readFileSync(ca),
    cert: readFileSync(cert),
    key: readFileSync(key),
    untrusted: ca,
  };
}

function runsOut(cert: string): boolean {
  const tomorrow = Date.now() + 24 * 60 * 60 * 1000;
  return Date.parse(new X509Certificate(readFileSync(cert)).validTo) < tomorrow;
}
