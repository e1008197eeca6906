import type { Configuration } from "webpack";

declare const configurations: (env?: { readonly origin?: string }) => Configuration[];
export default configurations;
