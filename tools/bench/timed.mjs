/** Milliseconds that a function takes. */
export function timed(task) {
  const start = performance.now();
  task();
  return performance.now() - start;
}

/** The median of several measurements, the first thrown away. */
export function median(times, measure) {
  measure();
  const all = Array.from({ length: times }, measure).sort((a, b) => a - b);
  return all[Math.floor(times / 2)];
}
