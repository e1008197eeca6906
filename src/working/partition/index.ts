import { affinity, area } from "./area";
import { equilibrium } from "./equilibrium";
import { ordered } from "./ordered";
import { timed } from "./timed";

export const partition = {
  "PARTITION.AREA": area,
  "PARTITION.AFFINITY": affinity,
  "PARTITION.EQUILIBRIUM": equilibrium,
  "PARTITION.ORDERED": ordered,
  "PARTITION.TIMED": timed,
};
