import { balance, closedLoop, mixture } from "./loop";
import { additive, component, firstPass } from "./pass";
import { whiteWater } from "./white-water";

export const retention = {
  "RETENTION.FIRSTPASS": firstPass,
  "RETENTION.COMPONENT": component,
  "RETENTION.ADDITIVE": additive,
  "RETENTION.LOOP": closedLoop,
  "RETENTION.OVERALL": mixture,
  "RETENTION.BALANCE": balance,
  "RETENTION.WHITEWATER": whiteWater,
};
