import type { Configuration } from "webpack";

/** What `npm run build -- --env name=value` may say. */
export interface BuildChoices {
  readonly origin?: string;
  readonly office?: "own" | "official";
  readonly namespace?: string;
}

declare const configurations: (env?: BuildChoices) => Configuration[];
export default configurations;
export declare const workbench: () => Configuration;
