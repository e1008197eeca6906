/** As many significant digits as a spreadsheet keeps of a number when it makes text of it. */
const DIGITS = 15;

/** A number that would be longer than this is written with an exponent. From memory: no standard says. */
const LONGEST = 21;

/** A number as "&" and the functions of text see it: 1/3 is 0.333333333333333, 1e21 is 1E+21. */
export function textOfNumber(value: number): string {
  if (value === 0) return "0";
  const [mantissa = "", power = "0"] = Math.abs(value)
    .toExponential(DIGITS - 1)
    .split("e");
  const exponent = Number(power);
  const digits = mantissa.replace(".", "").replace(/0+$/, "");
  const sign = value < 0 ? "-" : "";
  const plain = plainly(digits, exponent);
  if (plain.length <= LONGEST) return sign + plain;
  const [first, rest] = [digits.slice(0, 1), digits.slice(1)];
  const size = String(Math.abs(exponent)).padStart(2, "0");
  return `${sign}${first}${rest && `.${rest}`}E${exponent < 0 ? "-" : "+"}${size}`;
}

function plainly(digits: string, exponent: number): string {
  if (exponent < 0) return `0.${"0".repeat(-exponent - 1)}${digits}`;
  const whole = digits.slice(0, exponent + 1).padEnd(exponent + 1, "0");
  const rest = digits.slice(exponent + 1);
  return rest ? `${whole}.${rest}` : whole;
}
