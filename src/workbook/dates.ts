const MILLISECONDS_PER_DAY = 86_400_000;
/** Serial 0 of the 1900 system, as it holds from 1 March 1900 on (it counts a 29 February 1900 that was none). */
const SERIAL_ZERO = Date.UTC(1899, 11, 30);

/** The serial number by which a cell holds a date: serialDate(2024, 1, 31) is 45322. */
export const serialDate = (year: number, month: number, day: number): number =>
  (Date.UTC(year, month - 1, day) - SERIAL_ZERO) / MILLISECONDS_PER_DAY;

/** Year, month, day, hour, minute and second of a serial number, to the nearest second. */
export function partsOfSerial(serial: number): number[] {
  const seconds = Math.round((serial * MILLISECONDS_PER_DAY) / 1000);
  const date = new Date(SERIAL_ZERO + seconds * 1000);
  return [
    date.getUTCFullYear(),
    date.getUTCMonth() + 1,
    date.getUTCDate(),
    date.getUTCHours(),
    date.getUTCMinutes(),
    date.getUTCSeconds(),
  ];
}
