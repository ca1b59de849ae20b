// The model of DEVELOPERS.md once more, written from that page alone and sharing no code with src: here everything that holds at
// one instant, in model.ts what changes with time. Numbers in comments are sections of that page.
import { type Leak, type Unit } from "../../src/physics/build.ts";

export const g = 9.80665, p0 = 101325, R = 8.314462618;
export const steel = { k: 46, rho: 7850, c: 480 }, lining = { k: 0.24, rho: 1125, c: 1600 };
const effusivity = (m: typeof steel) => Math.sqrt(m.k * m.rho * m.c);
export const toSteel = effusivity(steel) / (effusivity(steel) + effusivity(lining));
export const clamp = (x: number, lo: number, hi: number) => Math.min(hi, Math.max(lo, x));

/** Where the monotone f is zero between lo and hi (Illinois); the better end if it has one sign. */
export function root(f: (x: number) => number, lo: number, hi: number): number {
  let [a, b, fa, fb] = [lo, hi, f(lo), f(hi)];
  if (fa * fb >= 0) return Math.abs(fa) < Math.abs(fb) ? a : b;
  for (let i = 0; i < 200 && Math.abs(b - a) > 1e-10 * (Math.abs(a) + Math.abs(b)); i++) {
    const x = (a * fb - b * fa) / (fb - fa), fx = f(x);
    if (fx === 0) return x;
    if (fx * fb < 0) [a, fa] = [b, fb];
    else fa /= 2;
    [b, fb] = [x, fx];
  }
  return b;
}

// 3: the converter; its branches meet where the differences of the printed polynomials are zero.
const couplingFrom = (29.7874 + Math.sqrt(29.7874 ** 2 - 4 * 20.64 * 10.1968)) / (2 * 20.64);
const equalFrom = (-1.9103 + Math.sqrt(1.9103 ** 2 + 4 * 0.8282 * 2.3331)) / (2 * 0.8282);
export function impeller(c: number, wp: number, wt: number): number {
  if (wt >= wp) return 0;
  if (wt < couplingFrom * wp) return c * 1e-3 * (3.4325 * wp * wp + 2.221 * wp * wt - 4.6041 * wt * wt);
  return c * 1e-3 * (wp - wt) * (25.2441 * wt - 6.7643 * wp);
}
export const turbine = (c: number, wp: number, wt: number) =>
  wt < equalFrom * wp ? c * 1e-3 * (5.7656 * wp * wp + 0.3107 * wp * wt - 5.4323 * wt * wt) : impeller(c, wp, wt);
const powerCurve = [0.1, 0.21, 0.315, 0.394, 0.484, 0.58, 0.669, 0.761, 0.855, 0.942, 1, 0.956, 0.85];

// 4: mean of max(0, z + aξ + bη) over the unit square, exact; from it the height of the plane under which the mean depth is h.
function meanAbove(z: number, a: number, b: number): number {
  const cube = (x: number) => Math.max(0, x) ** 3, s = (a + b) / 2, d = (a - b) / 2;
  return z >= s ? z : (cube(z + s) - cube(z + d) - cube(z - d) + cube(z - s)) / (6 * a * b);
}
export function planeHeight(h: number, a: number, b: number, lid: number): number {
  const A = Math.max(Math.abs(a), 1e-6), B = Math.max(Math.abs(b), 1e-6), s = (A + B) / 2;
  return h >= s && h + s <= lid ? h : root((z) => meanAbove(z, A, B) - meanAbove(z - lid, A, B) - h, -s, lid + s);
}

// 6: discharge of a passage by its length over its bore (over twice its gap); what the opening is by now: Δp = µaQ + ρbQ².
const discharge = (x: number) => (x <= 0.5 ? 0.61 : x < 2 ? 0.61 + ((x - 0.5) / 1.5) * 0.2 : 0.827 - 0.0085 * Math.min(x, 10));
const square = (C: number, A: number) => 1 / (2 * (C * A) ** 2);
const hole = (d: number, L: number) => ({ a: 24 / d ** 3 + (128 * L) / (Math.PI * d ** 4), b: square(discharge(L / d), (Math.PI / 4) * d * d) });
function passage({ opening: o }: Leak, age: number, p: number, running: boolean): { a: number; b: number } {
  if (o.kind === "hole") return hole(o.diameter, o.wall);
  if (o.kind === "seal") {
    const c = o.clearance + (o.finalClearance - o.clearance) * (1 - Math.exp(-age / o.creepTime)), A = Math.PI * o.diameter * c;
    return { a: (12 * o.length) / (A * c * c * (1 + 1.5 * o.eccentricity ** 2)), b: square(discharge(o.length / (2 * c)), A) };
  }
  if (age >= o.partsAfter) return hole(2 * o.tubeRadius - o.wall, o.wall);
  const e = 1 - o.parisExponent / 2, half = (o.halfLength ** e + (age / o.partsAfter) * (o.partsAt ** e - o.halfLength ** e)) ** (1 / e);
  const lambda = ((12 * (1 - o.poisson ** 2)) ** 0.25 * half) / Math.sqrt(o.tubeRadius * o.wall), w = 2 * half;
  const sigma = (p * o.tubeRadius) / o.wall + (running ? o.bendingStress : 0);
  const gap = o.restGap + (Math.PI / 4) * ((4 * sigma * half) / o.modulus) * (1 + 0.1 * lambda + 0.16 * lambda ** 2);
  return { a: (12 * o.wall) / (w * gap ** 3), b: square(discharge(o.wall / (2 * gap)), w * gap) };
}

// 2: the state, then five numbers of each clutch (plate temperature, wear, char, glaze, slip energy), the lock-up clutch last.
export enum I { m, E, conv, lines, pass, flight, sx, rx, sy, ry, gas, coolant, v, we, wt, age, leakAge, lost, end }
export const plate = (k: number) => I.end + 5 * k;
export type State = Float64Array;
/** What the controller and the driver are doing: changed from tick to tick. `slipping` is the sign of the slip; the schedule is
 * `schedule` + `slope` for each second after `tickAt`. */
export interface Run {
  t: number; gear: number; neutral: boolean; slipping: number; slipTime: number; lockOn: boolean; trim: number; open: boolean;
  wish: number; theta: number; schedule: number; slope: number; tickAt: number;
}

/** The laws of one unit at an instant. */
export function lawsOf(unit: Unit, run: Run) {
  const { build: b, fluid, leak, driver } = unit, hu = b.holdUp, veh = b.vehicle, eta = b.gearEfficiency;
  const c = b.converter.scale, idle = b.engine.idleSpeed, top = idle + 1.2 * (b.engine.ratedSpeed - idle), mass = veh.mass * veh.rotating;
  const clutches = [...b.clutches, b.lockUp.clutch], lu = b.clutches.length, root15 = Math.sqrt(fluid.density15 / 999.0);

  // 1 Fluid
  const density = (T: number) => {
    const alpha = 0.6278 / fluid.density15, d = T - 288.15;
    return fluid.density15 * Math.exp(-alpha * d * (1 + 0.8 * alpha * d));
  };
  const viscosity = (T: number, age: number) => {
    const l = fluid.viscosity, [A, B] = T < l.knee ? [l.coldA, l.coldB] : [l.warmA, l.warmB];
    return (10 ** (10 ** (A - B * Math.log10(T))) - 0.7) * 1e-6 * density(T) * (1 - fluid.shearLoss * Math.min(1, age));
  };
  const energy = (s: number) => (1685 * s + 1.695 * s * s) / root15;
  const temperature = (s: State) => {
    const q = (1.695 * s[I.m]) / root15, l = (1685 * s[I.m]) / root15 + b.heat.metal;
    return 273.15 + (2 * s[I.E]) / (l + Math.sqrt(l * l + 4 * q * s[I.E]));
  };
  const oilOf = (s: State) => {
    const T = temperature(s), path = viscosity((T + s[I.coolant]) / 2, s[I.age]);
    return { T, rho: density(T), mu: viscosity(T, s[I.age]), path, c: (1685 + 3.39 * (T - 273.15)) / root15 };
  };
  type Oil = ReturnType<typeof oilOf>;
  const inPan = (s: State, rho: number) => Math.max(0, s[I.m] / rho - s[I.conv] - s[I.lines] - s[I.pass] - s[I.flight]);
  const returnTime = (mu: number) => hu.hotReturnTime * (mu / hu.hotViscosity) ** hu.returnExponent;
  function leakFlow(s: State, p: number, mu: number, rho: number, running: boolean): number {
    if (!leak || !run.open || p <= 0) return 0;
    const o = passage(leak, s[I.leakAge], p, running), l = mu * o.a;
    return (2 * p) / (l + Math.sqrt(l * l + 4 * rho * o.b * p));
  }

  // 5 Supply: the cooler circuit behind its orifice at line pressure p, or with a given flow; then the balance.
  function circuit(s: State, o: Oil, mix: number, p: number, given?: number) {
    const r = b.cooler, share = clamp((o.T - r.bypassCold) / (r.bypassHot - r.bypassCold), 0, 1), onSupply = leak?.place === "supply-line" ? 1 : 0;
    const gs = 1 / (r.supplyLine * o.path), gc = 1 / ((r.cooler + r.returnLine) * o.path), gp = (gs * gc) / (gs + gc), gl = 1 / (r.lube * o.mu);
    const gb = (1 - share) / (r.bypass * o.mu), k = mix * square(r.feedDischarge, (Math.PI / 4) * r.feedOrifice ** 2);
    const net = (F: number, q: number) => { // what flow F into the circuit does while the leak takes q
      const qs = q * onSupply, first = (F + (gb * qs) / gc) / (1 + gb / gp), lube = (F - q) / gl, cooler = first - qs;
      return { outlet: lube + first / gp - qs / gc, atLeak: lube + (onSupply * cooler) / gc, lube: F - q, cooler };
    };
    const alpha = net(1, 0).outlet, beta = -net(0, 1).outlet;
    const solve = (q: number) => {
      let F = given ?? (2 * (p + beta * q)) / (alpha + Math.sqrt(alpha * alpha + 4 * k * (p + beta * q))), feed = F;
      if (alpha * F - beta * q > r.relief) [feed, F] = [given ?? Math.sqrt((p - r.relief) / k), (r.relief + beta * q) / alpha];
      return { ...net(F, q), feed, relief: feed - F, leak: q };
    };
    if (!leak || !run.open || leak.place === "pan") return solve(0);
    const flow = (q: number) => leakFlow(s, solve(q).atLeak, onSupply ? o.mu : o.path, mix, true);
    return solve(root((q) => flow(q) - q, 0, flow(0)));
  }
  const setPoint = (T: number, Tt: number) => {
    const r = b.regulator, cold = 1 + r.coldFactor * clamp((r.coldBelow - T) / 40, 0, 1);
    return Math.min(r.most, (r.base + r.perTorque * Math.abs(Tt)) * cold + run.trim);
  };
  function supply(s: State, o: Oil, w: number, Tt: number, x = s[I.gas]) {
    const n = b.inlet, cc = b.clutchCircuit, bore = (Math.PI / 4) * n.bore ** 2, orifice = (cc.discharge * Math.PI * cc.orifice ** 2) / 4;
    const inlet = (Q: number) => {
      const V = Q / bore, Re = Math.max(1e-9, (o.rho * V * n.bore) / o.mu), rough = 0.3164 / Math.max(4000, Re) ** 0.25;
      const f = Re <= 2300 ? 64 / Re : 64 / 2300 + Math.min(1, (Re - 2300) / 1700) * (rough - 64 / 2300);
      return p0 - o.rho * g * n.head - ((1 + (f * n.length) / n.bore + n.minorLoss) * o.rho * V * V) / 2 - n.filter * o.mu * Q;
    };
    let Q = (b.pump.displacement * w) / (2 * Math.PI);
    if (inlet(Q) < 3000) Q = root((q) => inlet(q) - 3000, 0, Q);
    const pin = inlet(Q), left = (p: number) => (1 - b.pump.dissolved) * (pin / (p + p0)) ** (1 / b.pump.exponent);
    const rest = (p: number) => 1 - x + x * left(p), inLine = (p: number) => (x * left(p)) / rest(p);
    const mix = (p: number) => o.rho * Math.max(1 - inLine(p), 1e-3);
    const delivered = (p: number) => Q * rest(p) - (b.pump.slip * b.pump.displacement * p) / (2 * Math.PI * o.mu);
    const toClutches = (p: number) => orifice * Math.sqrt((2 * Math.max(0, p)) / mix(p)) + (cc.laminar * p) / o.mu;
    const set = setPoint(o.T, Tt), full = circuit(s, o, mix(set), set), spare = delivered(set) - toClutches(set);
    const p = spare >= 0 ? set : root((q) => delivered(q) - toClutches(q), 0, set), clutch = toClutches(p);
    const now = spare >= full.feed ? full : circuit(s, o, mix(p), p, Math.max(0, spare));
    const drawn = b.regulator.spill === "inlet" ? (clutch + now.feed) / rest(p) : Q;
    return { ...now, p, set, full: full.feed, clutch, liquid: 1 - inLine(p), mix: mix(p), drawn, spare: (q: number) => delivered(q) - toClutches(q), inLine };
  }

  // 7 Clutches: torque of one element, what is left of it, what a gear holds at the turbine; 10: damage.
  const friction = (k: number, w: number, T: number) => {
    const f = clutches[k]!.friction, v = (Math.abs(w) * (clutches[k]!.outer + clutches[k]!.inner)) / 2;
    return (f.base + f.rise * Math.tanh(v / f.riseSpeed) + f.slope * v) * clamp(1 - f.heatLoss * (T - f.reference), 0.3, 1.2);
  };
  const left = (s: State, k: number) =>
    (1 - b.damage.glazeLoss * s[plate(k) + 3]!) * (1 - s[plate(k) + 2]!) * (1 - s[plate(k) + 1]! / clutches[k]!.liningThickness);
  const capacity = (k: number, p: number, w: number, T: number, lost: number) => {
    const q = clutches[k]!, r = k === lu ? ((2 / 3) * (q.outer ** 3 - q.inner ** 3)) / (q.outer ** 2 - q.inner ** 2) : (q.outer + q.inner) / 2;
    return lost * friction(k, w, T) * q.faces * r * Math.max(0, p * q.pistonArea - q.spring);
  };
  const holds = (s: State, p: number, slip: number) => b.gears[run.gear]!.holds
    .map(({ clutch: k, share }) => ({ k, torque: capacity(k, p, slip / share, s[plate(k)]!, left(s, k)) / share }))
    .reduce((a, z) => (z.torque < a.torque ? z : a));
  const rated = clutches.map((_, k) => {
    const peak = Math.max(...Array.from({ length: 1201 }, (_, i) => fullTorque(idle + (i / 1200) * (top - idle))));
    if (k === lu) return capacity(lu, b.lockUp.clutch.most, b.lockUp.heldSlip, 363.15, 1) / peak;
    const r = b.regulator, Tt = b.ratedTurbineTorque, set = (back: number) => Math.min(r.most, (r.base + r.perTorque * Tt) * back);
    return Math.min(...[...b.gears, b.reverse].flatMap((q) => q.holds.filter((e) => e.clutch === k)
      .map((e) => capacity(k, set(q === b.reverse ? r.reverseFactor : 1), 0, 363.15, 1) / (e.share * Tt))));
  });
  const damage = (s: State, k: number) => (1 - left(s, k)) / (1 - 1 / rated[k]!);
  const glazing = (T: number) => ((1.07e8 / 3600) * Math.exp(-111000 / (R * T))) / 0.004;
  const charring = (T: number) => b.damage.charFactor * 2.8e19 * Math.exp(-242400 / (R * T));

  // 3 Driving
  function fullTorque(w: number): number {
    const e = b.engine, x = Math.max(0, (w - idle) / (e.ratedSpeed - idle)), i = Math.min(11, Math.floor(x * 10)), f = x * 10 - i;
    if (x > 1.2) return Math.max(closed(w), ((e.ratedPower * 0.85) / top) * (1.25 - x) * 20);
    return (e.ratedPower * (powerCurve[i]! * (1 - f) + powerCurve[i + 1]! * f)) / Math.max(idle, w);
  }
  function closed(w: number): number { return -(b.engine.drag0 + b.engine.drag1 * w); }
  const pumpTorque = (p: number) => (p * b.pump.displacement) / (2 * Math.PI * b.pump.mechanical);
  const turns = (n = run.gear) => (Math.abs(b.gears[n]!.ratio) * b.finalRatio) / veh.tyreRadius;
  const road = (a: number, v: number) => mass * a + veh.mass * g * (Math.sin(run.theta) + (v > 0 ? veh.rolling * Math.cos(run.theta) : 0)) +
    0.5 * veh.airDensity * veh.dragArea * v * v;
  const atTurbine = (F: number, n: number) => (F >= 0 ? F / (n * eta) : (F * eta) / n);
  const impellerFor = (T: number, wt: number) => root((w) => turbine(c, w, wt) - T, Math.max(1, wt), 3000);

  /** Everything at one instant with the engine on. */
  function instant(s: State, at = run.t) {
    const o = oilOf(s), n = turns(), v = s[I.v], a = v <= 0 ? Math.max(0, run.wish) : run.wish, wt = n * v, want = atTurbine(road(a, v), n);
    const i = { o, we: idle, wt, Tp: 0, Tt: 0, Tlu: 0, Tc: 0, slip: 0, which: -1, acc: a, dwe: 0, dwt: 0, saturated: false };
    if (run.neutral) return { ...i, wt: idle, acc: 0, sup: supply(s, o, idle, 0) };
    const pump = pumpTorque(setPoint(o.T, want)), creep = turbine(c, idle, wt);
    const reaches = (wheel: number) => Math.min(a, Math.max(v <= 0 ? 0 : -Infinity, (wheel - road(0, v)) / mass));
    if (run.slipping) {
      [i.we, i.wt] = [s[I.we], s[I.wt]];
      [i.Tt, i.Tp, i.slip] = [turbine(c, i.we, i.wt), impeller(c, i.we, i.wt), i.wt - wt];
      const sup = supply(s, o, i.we, i.Tt), weakest = holds(s, sup.p, i.slip), lag = Math.max(0, run.schedule + run.slope * (at - run.tickAt) - v);
      const w = want > 0 ? Math.max(idle, impellerFor(want, wt)) : idle, low = closed(w), needs = (impeller(c, w, wt) + pump - low) / (fullTorque(w) - low);
      const pedal = want > 0 ? clamp(needs + driver.pressOn * lag, 0, 1) * (run.slipTime > 1 ? driver.easeOff : 1) : 0;
      [i.which, i.Tc] = [weakest.k, run.slipping * weakest.torque];
      i.acc = reaches(i.Tc > 0 ? i.Tc * n * eta : (i.Tc * n) / eta);
      i.dwe = (pedal * fullTorque(i.we) + (1 - pedal) * closed(i.we) - pumpTorque(sup.p) - i.Tp) / b.engine.inertia;
      i.dwt = (i.Tt - i.Tc) / b.shiftControl.turbineInertia;
      return { ...i, sup };
    }
    if (want <= creep) Object.assign(i, { we: Math.max(idle, wt), Tt: creep, Tp: impeller(c, idle, wt) });
    else {
      if (run.lockOn) {
        const w = wt + b.lockUp.heldSlip, held = supply(s, o, w, want), lc = b.lockUp.clutch;
        const dp = Math.min(lc.most, Math.max(0, held.p - lc.back) * (lc.fedFromOverflow ? Math.min(1, (held.feed / held.full) ** 2) : 1));
        i.Tlu = Math.min(want, capacity(lu, dp, b.lockUp.heldSlip, s[plate(lu)]!, left(s, lu)));
        i.saturated = i.Tlu < want;
        i.we = i.saturated ? impellerFor(want - i.Tlu, wt) : w;
      } else i.we = impellerFor(want, wt);
      [i.Tp, i.Tt, i.slip] = [run.lockOn && !i.saturated ? 0 : impeller(c, i.we, wt), want, run.lockOn ? i.we - wt : 0];
      if (i.Tp + i.Tlu + pump > fullTorque(i.we)) {
        const we = root((w) => fullTorque(w) - pump - impeller(c, w, wt), Math.max(idle, wt), 2 * top), Tt = turbine(c, we, wt);
        Object.assign(i, { we, Tt, Tp: impeller(c, we, wt), Tlu: 0, slip: 0, saturated: false, acc: reaches(Tt * n * eta) });
      }
    }
    return { ...i, sup: supply(s, o, i.we, i.Tt) };
  }
  return {
    density, energy, temperature, oilOf, inPan, returnTime, leakFlow, supply, friction, left, capacity, holds, damage, glazing, charring,
    pumpTorque, turns, road, atTurbine, instant, clutches, top, mass,
  };
}
export type Laws = ReturnType<typeof lawsOf>;
export type Instant = ReturnType<Laws["instant"]>;
