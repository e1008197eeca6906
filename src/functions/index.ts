/** The entry of functions.js: each family declares its functions, the build associates them by id. */
import "./budget";
import "./charge";
import "./cost";
import "./dose";
import "./effluent";
import "./library";
import "./mix";
import "./partition";
import "./refining";
import "./retention";
import "./sheet";
import "./strength";
import "./trial";
import "./uncertainty";

export { observe } from "../cells/observer";
