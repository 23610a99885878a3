// The line that screen readers read out when the picture has changed; not at every keystroke.

const LEAST_PAUSE = 2000;

/** Says the latest of what it is told, and waits between two sayings. */
export function saying(live: HTMLElement): (words: string) => void {
  let next = "";
  let last = Number.NEGATIVE_INFINITY;
  let isWaiting = false;
  const say = (): void => {
    isWaiting = false;
    last = performance.now();
    if (live.textContent !== next) live.textContent = next;
  };
  return (words) => {
    next = words;
    if (isWaiting) return;
    isWaiting = true;
    setTimeout(say, Math.max(0, last + LEAST_PAUSE - performance.now()));
  };
}
