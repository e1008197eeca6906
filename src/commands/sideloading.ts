import { DEVELOPMENT_ID } from "../build/manifest/manifest";

export interface Sideloading {
  readonly origin: string;
  /** Where the manifest lies on this machine. */
  readonly manifest: string;
  /** The authority's file that the machine does not trust yet. */
  readonly untrusted: string | undefined;
}

/** How a person brings the served add-in into an Excel on this machine. */
export function sideloading({ origin, manifest, untrusted }: Sideloading): string {
  const developer = "HKCU\\Software\\Microsoft\\Office\\16.0\\WEF\\Developer";
  const trust =
    untrusted === undefined
      ? ""
      : `
Trust   This machine does not trust the certificate yet. Add this authority to the trusted roots of your
        account (Windows: certutil -user -addstore Root FILE; Mac: open it in Keychain Access):
        ${untrusted}
`;
  return `
Dosewright is served at ${origin}. Ctrl-C ends it.
Manifest: ${manifest}
${trust}
Windows Close Excel, then run:
        reg add ${developer} /v ${DEVELOPMENT_ID} /t REG_SZ /d "${manifest}" /f
        Open Excel; the button Dosewright is on the Home tab. To remove it:
        reg delete ${developer} /v ${DEVELOPMENT_ID} /f
Mac     Close Excel, then run:
        mkdir -p ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef
        cp "${manifest}" ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef/dosewright.xml
        Open Excel; find it under Home > Add-ins. To remove it, delete that copy.
Web     Open ${origin}/taskpane.html once in the same browser and accept its certificate.
        Then in a workbook: Home > Add-ins > More Add-ins > My Add-ins > Upload My Add-in, and choose the manifest.

Try it: type =WETEND.DOSE.PUMP(8, 9.3, 0.03, 1.01) into a cell. The answer is 2455.4.
`;
}
