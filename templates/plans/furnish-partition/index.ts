import type { Plan } from "../../../src/workbook/plan";
import { aboutSheet } from "../parts/about";
import { beakerSheet } from "./beaker";
import { ordersSheet } from "./orders";
import { ownAdditiveSheet } from "./own-additive";
import { timeSheet } from "./time";

const question = "Where does it go, and does the order of addition matter?";

export const furnishPartition: Plan = {
  id: "furnish-partition",
  title: "Furnish and partition",
  question,
  sheets: [
    aboutSheet({
      name: "About the furnish",
      title: "Furnish and partition",
      question,
      answers: [
        ["Best order of addition", "{bestOrder}", "", "@"],
        ["Kept on fibre and fines by it", "{bestShare}", "of the dose", "0.0 %"],
        ["By the worst order", "{worstShare}", "of the dose", "0.0 %"],
        ["Held when it reaches the wire", "{boundByThen}", "of the dose", "0.0 %"],
      ],
      typing: [
        [
          "Orders",
          "The furnish with its constants, the stock line, and where starch, fibre, fines and filler join it in three orders to compare.",
        ],
        ["Beaker", "What a separated beaker test found on each component."],
        ["Time", "How fast each component takes it up, and the time to the wire."],
        [
          "Own additive",
          "Measurements of your own additives: they go before the library's values.",
        ],
      ],
      notCovered:
        "Each component has one kind of site and a constant surface; refining, ageing and recycling change both. Anionic trash, other additives that want the same sites, shear and flocculation are left out. The constants are the furnish's own: none was found published, so calibrate them.",
      cautions: [
        "In the laboratory: cooked starch is hot and scalds; starch and filler are dusts; work with a centrifuge or a muffle furnace needs training.",
        "On the machine: moving a dosing point is a change of the process. Plan it, tell the crew, and try it in steps; chests are confined spaces.",
      ],
    }),
    ordersSheet,
    beakerSheet,
    timeSheet,
    ownAdditiveSheet,
  ],
};
