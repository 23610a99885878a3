// How a bench answers when the valve is opened: a lag of the first or second order, as control engineering has them.

/**
 * Share of the way that a first-order lag has gone `t` s after its step: 1 - exp(-t/tau); 0 before it.
 * Source: definition of the first-order lag.
 */
export function firstOrder(t: number, timeConstant: number): number {
  return t <= 0 ? 0 : -Math.expm1(-t / timeConstant);
}

/**
 * Share of the way that a second-order lag without zeros has gone `t` s after its step: the solution of
 * y'' + 2 zeta wn y' + wn^2 y = wn^2 from rest; 0 before it.
 * Source: the differential equation, solved for each kind of damping.
 */
export function secondOrder(t: number, naturalFrequency: number, damping: number): number {
  if (t <= 0) return 0;
  const a = damping * naturalFrequency;
  const square = 1 - damping * damping;
  const b = naturalFrequency * Math.sqrt(Math.abs(square));
  // Around critical damping both forms lose their digits; sin(x)/x and sinh(x)/x go to 1 there.
  if (b * t < 1e-4) return 1 - Math.exp(-a * t) * (1 + a * t);
  if (square > 0) return 1 - Math.exp(-a * t) * (Math.cos(b * t) + (a / b) * Math.sin(b * t));
  const slow = Math.exp((b - a) * t);
  const fast = Math.exp(-(a + b) * t);
  return 1 - ((1 + a / b) * slow + (1 - a / b) * fast) / 2;
}
