// What the command's exit code says.

export const FINE = 0;
/** Findings at or above `--fail-on`, or a difference. */
export const FOUND = 1;
/** Usage, or input that cannot be read. */
export const UNUSABLE = 2;
/** An error of the program's own. */
export const OUR_FAULT = 3;
