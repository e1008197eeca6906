import { figure } from "../figure";
import { impossible } from "../refusal";

/**
 * Price of a kg of dry active additive from an invoice: (price + freight) per kg as received over the
 * dry active additive in it. Of the product the share `solids` is dry, and of that the share `active`
 * is the additive.
 * Source: mass balance.
 */
export function activePrice(
  price: number,
  solids: number,
  active: number,
  freight: number,
): number {
  const activeShare = solids * active;
  if (!(activeShare > 0)) {
    impossible(
      `The product holds ${figure(activeShare)} of dry active additive. Give solids and active share above 0.`,
    );
  }
  return (price + freight) / activeShare;
}
