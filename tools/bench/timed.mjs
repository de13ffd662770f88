/** Milliseconds that a function takes. */
export function timed(task) {
  const start = performance.now();
  task();
  return performance.now() - start;
}

/** The median of several measurements, after `before` that are thrown away: one, or as many as make it warm. */
export function median(times, measure, before = 1) {
  for (let at = 0; at < before; at += 1) measure();
  const all = Array.from({ length: times }, measure).sort((a, b) => a - b);
  return all[Math.floor(times / 2)];
}
