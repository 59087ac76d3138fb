/**
 * Chance that a standard normal exceeds z. Hart's rational form as given by G. West, "Better approximations
 * to cumulative normal functions", Wilmott 2005 (coefficients from memory, checked against a library).
 * @example
 * normalTail(1.5) // => 0.0668072
 */
export function normalTail(z: number): number {
  const x = z < 0 ? -z : z;
  let tail = 0;
  if (x < 37) {
    const bell = Math.exp(-0.5 * x * x);
    if (x < 7.07106781186547) {
      let top = 3.52624965998911e-2 * x + 0.700383064443688;
      top = top * x + 6.37396220353165;
      top = top * x + 33.912866078383;
      top = top * x + 112.079291497871;
      top = top * x + 221.213596169931;
      top = top * x + 220.206867912376;
      let bottom = 8.83883476483184e-2 * x + 1.75566716318264;
      bottom = bottom * x + 16.064177579207;
      bottom = bottom * x + 86.7807322029461;
      bottom = bottom * x + 296.564248779674;
      bottom = bottom * x + 637.333633378831;
      bottom = bottom * x + 793.826512519948;
      bottom = bottom * x + 440.413735824752;
      tail = (bell * top) / bottom;
    } else {
      const fraction = x + 1 / (x + 2 / (x + 3 / (x + 4 / (x + 0.65))));
      tail = bell / fraction / 2.506628274631;
    }
  }
  return z < 0 ? 1 - tail : tail;
}
