/** Standard acceleration of free fall, m/s² (CGPM 1901). */
export const G = 9.80665;

/** Weight in newtons. */
export const weightN = (massG: number): number => massG * 1e-3 * G;
