// What every link shares about the place where the car stands.

/** Standard acceleration of free fall [m/s²] (CGPM 1901, resolution 2). */
export const gravity = 9.80665;

/** Standard atmosphere [Pa] (CGPM 1954, resolution 4). Add it to a gauge pressure to get an absolute one. */
export const atmosphere = 101_325;

/** Density of the air under the car [kg/m³]: dry air at 20 °C and one standard atmosphere (ISO 2533). */
export const airDensity = 1.204;
