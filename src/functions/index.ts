/** The entry of functions.js: each file declares functions of one family, the build associates them by id. */
import "./budget";
import "./charge";
import "./cost";
import "./design";
import "./dose";
import "./effluent";
import "./laboratory";
import "./library";
import "./mix";
import "./partition";
import "./refining";
import "./retention";
import "./sheet";
import "./strength";
import "./treatment";
import "./trial";
import "./uncertainty";

export { observe } from "../cells/observer";
