/**
 * The elements of an add-in-only manifest for a task pane, in the order in which they must stand.
 * Source: [MS-OWEMXML], Office Web Extensibility Manifest Format, and "How to find the proper order of
 * manifest elements" (Office Add-ins documentation). Elements that the store's validation asks for beyond
 * the schema (icons, support address, hosts) count as required here.
 *
 * The key is an element, with as much of its path as tells it from others of its name; "?" may be left out,
 * "+" once or more, "*" any number. An element without a key has no child elements.
 */
export const CHILDREN: Readonly<Record<string, string>> = {
  OfficeApp:
    "Id AlternateId? Version ProviderName DefaultLocale DisplayName Description IconUrl HighResolutionIconUrl SupportUrl AppDomains? Hosts Requirements? DefaultSettings Permissions Dictionary? VersionOverrides ExtendedOverrides?",
  AppDomains: "AppDomain+",
  Hosts: "Host+",
  Requirements: "Sets? Methods?",
  Sets: "Set+",
  Methods: "Method+",
  DefaultSettings: "SourceLocation",
  VersionOverrides:
    "Description? Requirements? Hosts Resources WebApplicationInfo? EquivalentAddins?",
  "VersionOverrides/Hosts/Host": "Runtimes AllFormFactors DesktopFormFactor",
  Runtimes: "Runtime+",
  AllFormFactors: "ExtensionPoint",
  "AllFormFactors/ExtensionPoint": "Script Page Metadata Namespace",
  Script: "SourceLocation",
  Page: "SourceLocation",
  Metadata: "SourceLocation",
  DesktopFormFactor: "GetStarted? FunctionFile? ExtensionPoint+",
  GetStarted: "Title Description LearnMoreUrl",
  "DesktopFormFactor/ExtensionPoint": "OfficeTab* CustomTab*",
  OfficeTab: "Group+",
  CustomTab: "Group+ Label",
  Group: "OverriddenByRibbonApi? Label Icon Control+",
  Icon: "bt:Image+",
  Control: "OverriddenByRibbonApi? Label Supertip Icon Action Enabled?",
  Supertip: "Title Description",
  Action: "TaskpaneId? SourceLocation Title?",
  Resources: "bt:Images bt:Urls bt:ShortStrings bt:LongStrings",
  "bt:Images": "bt:Image+",
  "bt:Urls": "bt:Url+",
  "bt:ShortStrings": "bt:String+",
  "bt:LongStrings": "bt:String+",
};

/** Attributes that an element must have, keyed in the same way. */
export const ATTRIBUTES: Readonly<Record<string, string>> = {
  OfficeApp: "xmlns xmlns:xsi xmlns:bt xsi:type",
  DisplayName: "DefaultValue",
  "OfficeApp/Description": "DefaultValue",
  IconUrl: "DefaultValue",
  HighResolutionIconUrl: "DefaultValue",
  SupportUrl: "DefaultValue",
  "OfficeApp/Hosts/Host": "Name",
  Set: "Name MinVersion",
  "DefaultSettings/SourceLocation": "DefaultValue",
  VersionOverrides: "xmlns xsi:type",
  "VersionOverrides/Hosts/Host": "xsi:type",
  Runtime: "resid lifetime",
  ExtensionPoint: "xsi:type",
  OfficeTab: "id",
  CustomTab: "id",
  Group: "id",
  Control: "xsi:type id",
  Action: "xsi:type",
  "Icon/bt:Image": "size resid",
  "Resources/bt:Images/bt:Image": "id DefaultValue",
  "bt:Url": "id DefaultValue",
  "bt:String": "id DefaultValue",
};

/** Which list of resources an element refers to with its resid. */
export const REFERENCES: Readonly<Record<string, string>> = {
  "Icon/bt:Image": "bt:Images",
  Runtime: "bt:Urls",
  "Script/SourceLocation": "bt:Urls",
  "Page/SourceLocation": "bt:Urls",
  "Metadata/SourceLocation": "bt:Urls",
  "Action/SourceLocation": "bt:Urls",
  FunctionFile: "bt:Urls",
  LearnMoreUrl: "bt:Urls",
  Namespace: "bt:ShortStrings",
  "GetStarted/Title": "bt:ShortStrings",
  "Supertip/Title": "bt:ShortStrings",
  "Action/Title": "bt:ShortStrings",
  Label: "bt:ShortStrings",
  "GetStarted/Description": "bt:LongStrings",
  "Supertip/Description": "bt:LongStrings",
  "VersionOverrides/Description": "bt:LongStrings",
};

/** The longest text of each list of resources, and of the elements that hold their text themselves. */
export const LONGEST: Readonly<Record<string, number>> = {
  "bt:Url": 2048,
  "bt:ShortStrings/bt:String": 125,
  "bt:LongStrings/bt:String": 250,
  DisplayName: 125,
  "OfficeApp/Description": 250,
};

/** What a table says of an element: the key that matches most of its path. */
export function byPath<T>(table: Readonly<Record<string, T>>, path: string): T | undefined {
  for (let rest = path; rest !== ""; rest = rest.slice(rest.indexOf("/") + 1 || rest.length)) {
    if (rest in table) return table[rest];
  }
  return undefined;
}
