// What the road and the driver ask of the unit at one instant.

/** `speed` [m/s] and `wish` [m/s²] are the vehicle's own, `grade` is rise over run, `lateral` [m/s²] pushes the fluid to the right wall when positive. */
export interface Road {
  speed: number;
  wish: number;
  grade: number;
  lateral: number;
  ambient: number;
}
