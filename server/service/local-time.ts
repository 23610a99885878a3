// The time of the machine as a record writes it.

/** `YYYY-MM-DDTHH:MM` and the offset of the machine's zone; the time that the user's own clock shows. */
export function localTime(time: Date): string {
  const two = (value: number) => String(value).padStart(2, "0");
  const date = `${time.getFullYear()}-${two(time.getMonth() + 1)}-${two(time.getDate())}`;
  // The zone's offset is counted in minutes to the west.
  const east = -time.getTimezoneOffset();
  const offset = `${two(Math.floor(Math.abs(east) / 60))}:${two(Math.abs(east) % 60)}`;
  return `${date}T${two(time.getHours())}:${two(time.getMinutes())}${east < 0 ? "-" : "+"}${offset}`;
}
