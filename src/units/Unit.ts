/** Every unit that numbers are computed, stored and shown in. Imperial is only a way of showing: see `print.ts`. */
export type Unit =
  | 'mm' | 'm' | 'mm²' | 'px' | 'deg' | 'deg/s' | 'rad/s' | 'dpt' | 's' | 'ms' | 'min' | 'h' | 'frames' | 'm/s' | 'Hz' | 'MHz' | 'Gb/s' | 'bit' | 'dB' | 'dB/100 m' | 'dBm' | 'dBi'
  | 'V' | 'A' | 'Ah' | 'W' | 'Wh' | 'ohm' | '°C' | 'g' | 'kg·m²' | 'N' | 'N·m' | 'N·mm' | 'N/mm' | 'GPa' | 'MPa' | 'rpm' | 'cd/m²' | 'lx' | 'arcmin' | 'teeth'
  | 'kg/m³' | 'N·m/rad' | 'mm⁴' | 'T' | 'f' | 'module mm' | 'ratio' | 'share' | 'count';
