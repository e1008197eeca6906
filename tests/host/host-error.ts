/** An error as the host's class makes it. */
export class HostError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}

export const ERROR_CODES = {
  invalidValue: "#VALUE!",
  notAvailable: "#N/A",
  divisionByZero: "#DIV/0!",
  invalidNumber: "#NUM!",
  nullReference: "#NULL!",
  invalidName: "#NAME?",
  invalidReference: "#REF!",
};
