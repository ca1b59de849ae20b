// What hands and eyes need to know before any number here is acted upon.

export const cautions = [
  "Hot fluid under pressure burns and can be injected through skin.",
  "Fluid on a hot exhaust can catch fire.",
  "A raised vehicle needs stands.",
  "A stall test lasts at most five seconds and is never made at low pressure.",
  "Used fluid is regulated waste.",
  "A vehicle that is losing fluid is towed with its driven wheels off the ground, not driven in.",
  "The maker's service information and local rules come first.",
  "An estimate is evidence with an interval, not proof of anyone's fault.",
] as const;
