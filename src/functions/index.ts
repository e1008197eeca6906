/** The entry of functions.js: each family declares its functions, the build associates them by id. */
import "./dose";

export { observe } from "../cells/observer";
