// The model of DEVELOPERS.md once more, written from that page alone and sharing no code with src: one plain rule (midpoint), short steps,
// everything evaluated at every step. Numbers in comments are sections of that page. All functions read the state of the moment, `y`.
import { type Trip } from "../../src/driving/pattern.ts";
import { type Unit } from "../../src/physics/build.ts";
const { PI, abs, atan, cos, exp, log10, max, min, sign, sin, sqrt, tanh } = Math, g = 9.80665, p0 = 101325, R = 8.314462618, rpm = PI / 30;
const steel = { k: 46, rho: 7850, c: 480 }, bulk = 46 * 7850 * 480, toSteel = 1 / (1 + sqrt((0.24 * 1125 * 1600) / bulk));
const clamp = (x: number, lo: number, hi: number) => min(hi, max(lo, x)), plate = (k: number) => I.end + 5 * k;
/** Where the monotone f is zero between lo and hi (Illinois); the better end if it has one sign. */
function root(f: (x: number) => number, lo: number, hi: number): number {
  let [a, b, fa, fb] = [lo, hi, f(lo), f(hi)];
  if (fa * fb >= 0) return abs(fa) < abs(fb) ? a : b;
  for (let i = 0; i < 200 && fb !== 0 && abs(b - a) > 1e-10 * (abs(a) + abs(b)); i++) {
    const x = (a * fb - b * fa) / (fb - fa), fx = f(x);
    [a, fa, b, fb] = fx * fb < 0 ? [b, fb, x, fx] : [a, fa / 2, x, fx];
  }
  return b;
}
/** 2: what stands where in the state; then five numbers of each clutch: plate temperature, wear, char, glaze, slip energy; lock-up last. */
enum I { m, E, conv, lines, pass, flight, sx, rx, sy, ry, gas, coolant, v, we, wt, age, lost, end }
/** Seconds, kelvin, m³ at fill temperature; `fine` scales every step of time; no tick begins after `until`; parked to `parkedUntil`. */
export interface Options { opens: number; ambient: number; fillShort: number; fine?: number; until?: number; parkedUntil?: number }

/** Drives the unit over the trips from t = 0. Events: seconds at which their condition began. */
export function independentRun(unit: Unit, trips: readonly Trip[], { opens, ambient, fillShort, fine = 1, until = Infinity, ...end }: Options) {
  const { build: b, fluid, leak, driver } = unit, { engine, vehicle: veh, holdUp: hu, regulator: reg, shiftControl: control, lockUp } = b;
  const { pan, pickup, stick, sloshDamping: zeta } = b.sump, area = pan.free * pan.length * pan.width, idle = engine.idleSpeed;
  const eta = b.gearEfficiency, top = idle + 1.2 * (engine.ratedSpeed - idle), clutches = [...b.clutches, lockUp.clutch], lu = b.clutches.length;
  const faces = clutches.map((k) => k.faces * PI * (k.outer ** 2 - k.inner ** 2)), root15 = sqrt(fluid.density15 / 999.0);
  let y = Array.from({ length: plate(lu + 1) }, (_, n) => (n >= I.end && (n - I.end) % 5 === 0 ? ambient : 0)), t = 0;
  // What driver and controller do, changed from tick to tick; `slipping` is the sign of the slip, `slid` a slip since the vehicle kept up.
  let gear = 0, neutral = true, slipping = 0, slipTime = 0, slid = false, lockOn = false, lockSlipTime = 0, trim = 0;
  let wish = 0, theta = 0, lateral = 0, from = 0, slope = 0, tickAt = 0;
  const mass = veh.mass * veh.rotating, open = () => leak !== null && t >= opens - 1e-9, schedule = () => from + slope * (t - tickAt);
  // 1 Fluid, how much of it is in the pan and how fast the rest comes back.
  const density = (T: number, a = 0.6278 / fluid.density15) => fluid.density15 * exp(-a * (T - 288.15) * (1 + 0.8 * a * (T - 288.15)));
  const viscosity = (T: number, l = fluid.viscosity, [A, B] = T < l.knee ? [l.coldA, l.coldB] : [l.warmA, l.warmB]) =>
    (10 ** (10 ** (A - B * log10(T))) - 0.7) * 1e-6 * density(T) * (1 - fluid.shearLoss * min(1, y[I.age]));
  const energy = (T: number, s = T - 273.15) => (1685 * s + 1.695 * s * s) / root15;
  const temperature = (q = (1.695 * y[I.m]) / root15, l = (1685 * y[I.m]) / root15 + b.heat.metal) =>
    273.15 + (2 * y[I.E]) / (l + sqrt(l * l + 4 * q * y[I.E]));
  const oil = (T = temperature()) =>
    ({ T, rho: density(T), mu: viscosity(T), path: viscosity((T + y[I.coolant]) / 2), c: (1685 + 3.39 * (T - 273.15)) / root15 });
  const depth = (rho: number) => max(0, y[I.m] / rho - y[I.conv] - y[I.lines] - y[I.pass] - y[I.flight]) / area;
  const returning = (mu: number) => y[I.flight] / (hu.hotReturnTime * (mu / hu.hotViscosity) ** hu.returnExponent);
  // 3 Driving: road, converter (its branches meet where the printed polynomials do) and engine.
  const turns = (n = gear) => (abs(b.gears[n].ratio) * b.finalRatio) / veh.tyreRadius;
  const road = (a: number, v = y[I.v]) =>
    mass * a + veh.mass * g * (sin(theta) + (v > 0 ? veh.rolling * cos(theta) : 0)) + 0.5 * veh.airDensity * veh.dragArea * v * v;
  const atTurbine = (F: number, n = turns()) => (F >= 0 ? F / (n * eta) : (F * eta) / n);
  const slow = (r: number) => 3.4325 + 2.221 * r - 4.6041 * r * r, coupled = (r: number) => (1 - r) * (25.2441 * r - 6.7643);
  const driven = (r: number) => 5.7656 + 0.3107 * r - 5.4323 * r * r, scale = 1e-3 * b.converter.scale;
  const couples = root((r) => coupled(r) - slow(r), 0.8, 0.95), evens = root((r) => driven(r) - slow(r), 0.8, 0.95);
  const impeller = (w: number, wt: number) => (wt >= w ? 0 : scale * w * w * (wt < couples * w ? slow(wt / w) : coupled(wt / w)));
  const turbine = (w: number, wt: number) => (wt < evens * w ? scale * w * w * driven(wt / w) : impeller(w, wt));
  const impellerFor = (T: number, wt: number) => root((w) => turbine(w, wt) - T, max(1, wt), 3000);
  const curve = [0.1, 0.21, 0.315, 0.394, 0.484, 0.58, 0.669, 0.761, 0.855, 0.942, 1, 0.956, 0.85];
  const closed = (w: number) => -(engine.drag0 + engine.drag1 * w);
  const full = (w: number, x = (10 * max(0, w - idle)) / (engine.ratedSpeed - idle), i = min(11, Math.floor(x))): number =>
    x > 12 ? max(closed(w), ((engine.ratedPower * 0.85) / top) * (12.5 - x) * 2)
      : (engine.ratedPower * (curve[i] * (i + 1 - x) + curve[i + 1] * (x - i))) / max(idle, w);
  const pumpTorque = (p: number) => (p * b.pump.displacement) / (2 * PI * b.pump.mechanical);
  const fullThrottle = (wt: number, pump: number) => root((w) => full(w) - pump - impeller(w, wt), max(idle, wt), 2 * top);
  // 3 and 7: everything at one instant with the engine on.
  function instant() {
    const o = oil(), n = turns(), v = y[I.v], a = v <= 0 ? max(0, wish) : wish, wt = n * v, want = atTurbine(road(a)), creep = turbine(idle, wt);
    const i = { o, we: idle, wt, Tp: 0, Tt: 0, Tlu: 0, Tc: 0, slip: 0, which: -1, acc: a, dwe: 0, dwt: 0, saturated: false };
    if (neutral) return { ...i, wt: idle, acc: 0, sup: supply(o, idle, 0) };
    const pump = pumpTorque(setPoint(o.T, want)), reaches = (wheel: number) => min(a, max(v <= 0 ? 0 : -Infinity, (wheel - road(0)) / mass));
    if (slipping !== 0) {
      const we = y[I.we], w1 = y[I.wt], Tt = turbine(we, w1), Tp = impeller(we, w1), sup = supply(o, we, Tt), weakest = holds(sup.p, w1 - wt);
      const w = max(idle, impellerFor(want, wt)), needs = (impeller(w, wt) + pump - closed(w)) / (full(w) - closed(w));
      const pedal = want > 0 ? clamp(needs + driver.pressOn * max(0, schedule() - v), 0, 1) * (slipTime > 1 ? driver.easeOff : 1) : 0;
      const Tc = slipping * weakest.torque, acc = reaches(Tc > 0 ? Tc * n * eta : (Tc * n) / eta), dwt = (Tt - Tc) / control.turbineInertia;
      const dwe = (pedal * full(we) + (1 - pedal) * closed(we) - pumpTorque(sup.p) - Tp) / engine.inertia;
      return { ...i, we, wt: w1, Tt, Tp, Tc, slip: w1 - wt, which: weakest.k, acc, dwe, dwt, sup };
    }
    if (want <= creep) Object.assign(i, { we: max(idle, wt), Tt: creep, Tp: impeller(idle, wt) });
    else {
      const Tlu = lockOn ? lockTorque(want, wt) : 0, held = lockOn && Tlu >= want, we = held ? wt + lockUp.heldSlip : impellerFor(want - Tlu, wt);
      Object.assign(i, { we, Tt: want, Tp: held ? 0 : impeller(we, wt), Tlu, slip: lockOn ? we - wt : 0, saturated: lockOn && !held });
      const w = i.Tp + Tlu + pump > full(we) ? fullThrottle(wt, pump) : 0, most = turbine(w, wt);
      if (w > 0) Object.assign(i, { we: w, Tt: most, Tp: impeller(w, wt), Tlu: 0, slip: 0, saturated: false, acc: reaches(most * n * eta) });
    }
    return { ...i, sup: supply(o, i.we, i.Tt) };
  }
  // 4 Pan and pickup: the plane under which the mean depth is h (mean of max(0, z + aξ + cη) over the unit square, exact), and the gas drawn.
  const cube = (x: number) => max(0, x) ** 3, meanAbove = (z: number, a: number, c: number, s = (a + c) / 2, d = (a - c) / 2) =>
    (z >= s ? z : (cube(z + s) - cube(z + d) - cube(z - d) + cube(z - s)) / (6 * a * c));
  function drawnGas(h: number, Q: number): number {
    const A = max(abs(y[I.sx] * pan.length), 1e-6), B = max(abs(y[I.sy] * pan.width), 1e-6), s = (A + B) / 2, lid = pan.height;
    const z = h >= s && h + s <= lid ? h : root((x) => meanAbove(x, A, B) - meanAbove(x - lid, A, B) - h, -s, lid + s);
    const d = z - y[I.sx] * (pickup.x - pan.length / 2) - y[I.sy] * (pickup.y - pan.width / 2) - pickup.height;
    const rim = 1.5 * (Q / (pickup.rim * sqrt(g))) ** (2 / 3), onset = max(0.69 * ((Q * Q) / g) ** 0.2, 1.05 * rim);
    if (h <= 0 || d < rim) return h <= 0 ? 1 : 1 - (1 - pickup.weirGas) * (max(0, d) / rim) ** 1.5;
    return pickup.baseGas + max(0, (onset - d) / (onset - rim)) * (pickup.weirGas - pickup.baseGas);
  }
  // 5 Supply: the cooler circuit behind its orifice at line pressure p, or with a given flow; then the balance.
  function circuit(o: ReturnType<typeof oil>, mix: number, p: number, given?: number) {
    const r = b.cooler, share = clamp((o.T - r.bypassCold) / (r.bypassHot - r.bypassCold), 0, 1), onSupply = leak?.place === "supply-line" ? 1 : 0;
    const gs = 1 / (r.supplyLine * o.path), gc = 1 / ((r.cooler + r.returnLine) * o.path), gp = (gs * gc) / (gs + gc), gl = 1 / (r.lube * o.mu);
    const gb = (1 - share) / (r.bypass * o.mu), k = mix * square(r.feedDischarge, (PI / 4) * r.feedOrifice ** 2);
    const net = (F: number, q: number, qs = q * onSupply, first = (F + (gb * qs) / gc) / (1 + gb / gp), lube = (F - q) / gl) => // F in, leak q
      ({ outlet: lube + first / gp - qs / gc, atLeak: lube + (onSupply * (first - qs)) / gc, lube: F - q, cooler: first - qs });
    const alpha = net(1, 0).outlet, beta = -net(0, 1).outlet;
    const solve = (q: number) => {
      let F = given ?? (2 * (p + beta * q)) / (alpha + sqrt(alpha * alpha + 4 * k * (p + beta * q))), feed = F;
      if (alpha * F - beta * q > r.relief) [feed, F] = [given ?? sqrt((p - r.relief) / k), (r.relief + beta * q) / alpha];
      return { ...net(F, q), feed, relief: feed - F, leak: q };
    };
    const flow = (q: number) => leakFlow(solve(q).atLeak, onSupply ? o.mu : o.path, mix);
    return solve(open() && leak?.place !== "pan" ? root((q) => flow(q) - q, 0, flow(0)) : 0);
  }
  const setPoint = (T: number, Tt: number) => min(reg.most, trim +
    (reg.base + reg.perTorque * abs(Tt)) * (1 + reg.coldFactor * clamp((reg.coldBelow - T) / 40, 0, 1)));
  function supply(o: ReturnType<typeof oil>, w: number, Tt: number, x = y[I.gas]) {
    const n = b.inlet, cc = b.clutchCircuit, bore = (PI / 4) * n.bore ** 2, orifice = (cc.discharge * PI * cc.orifice ** 2) / 4;
    const inlet = (q: number) => {
      const V = q / bore, Re = max(1e-9, (o.rho * V * n.bore) / o.mu), rough = 0.3164 / max(4000, Re) ** 0.25;
      const f = Re <= 2300 ? 64 / Re : 64 / 2300 + min(1, (Re - 2300) / 1700) * (rough - 64 / 2300);
      return p0 - o.rho * g * n.head - ((1 + (f * n.length) / n.bore + n.minorLoss) * o.rho * V * V) / 2 - n.filter * o.mu * q;
    };
    const turned = (b.pump.displacement * w) / (2 * PI), Q = inlet(turned) < 3000 ? root((q) => inlet(q) - 3000, 0, turned) : turned;
    const pin = inlet(Q), stays = (p: number) => x * (1 - b.pump.dissolved) * (pin / (p + p0)) ** (1 / b.pump.exponent);
    const rest = (p: number) => 1 - x + stays(p), liquid = (p: number) => 1 - stays(p) / rest(p), mix = (p: number) => o.rho * max(liquid(p), 1e-3);
    const toClutches = (p: number) => orifice * sqrt((2 * max(0, p)) / mix(p)) + (cc.laminar * p) / o.mu;
    const spare = (p: number) => Q * rest(p) - (b.pump.slip * b.pump.displacement * p) / (2 * PI * o.mu) - toClutches(p);
    const set = setPoint(o.T, Tt), most = circuit(o, mix(set), set), p = root(spare, 0, set), clutch = toClutches(p);
    const now = spare(set) >= most.feed ? most : circuit(o, mix(p), p, max(0, spare(p)));
    const drawn = reg.spill === "inlet" ? (clutch + now.feed) / rest(p) : Q, delivered = clutch + spare(p);
    return { ...now, p, set, full: most.feed, clutch, liquid: liquid(p), mix: mix(p), drawn, spare, delivered };
  }
  // 6 The leak, as far as it is compared: a hole. Discharge by length over bore; Δp = µaQ + ρbQ².
  const discharge = (x: number) => (x <= 0.5 ? 0.61 : x < 2 ? 0.61 + ((x - 0.5) / 1.5) * 0.2 : 0.827 - 0.0085 * min(x, 10));
  const square = (C: number, A: number) => 1 / (2 * (C * A) ** 2);
  function leakFlow(p: number, mu: number, rho: number): number {
    if (leak?.opening.kind !== "hole" || !open() || p <= 0) return 0;
    const { diameter: d, wall: L } = leak.opening, l = mu * (24 / d ** 3 + (128 * L) / (PI * d ** 4));
    return (2 * p) / (l + sqrt(l * l + 4 * rho * square(discharge(L / d), (PI / 4) * d * d) * p));
  }
  // 7 Clutches: torque of one element, what is left of it, what the gear holds at the turbine; 10: damage and its rates.
  const friction = (k: number, w: number, T: number, f = clutches[k].friction, v = (abs(w) * (clutches[k].outer + clutches[k].inner)) / 2) =>
    (f.base + f.rise * tanh(v / f.riseSpeed) + f.slope * v) * clamp(1 - f.heatLoss * (T - f.reference), 0.3, 1.2);
  const left = (k: number, j = plate(k)) => (1 - b.damage.glazeLoss * y[j + 3]) * (1 - y[j + 2]) * (1 - y[j + 1] / clutches[k].liningThickness);
  const radius = (k: number, { outer: o, inner: i } = clutches[k]) => (k === lu ? ((2 / 3) * (o ** 3 - i ** 3)) / (o ** 2 - i ** 2) : (o + i) / 2);
  const capacity = (k: number, p: number, w: number, T: number, lost: number, q = clutches[k]) =>
    lost * friction(k, w, T) * q.faces * radius(k) * max(0, p * q.pistonArea - q.spring);
  const holds = (p: number, slip: number) => b.gears[gear].holds.map(({ clutch: k, share }) =>
    ({ k, torque: capacity(k, p, slip / share, y[plate(k)], left(k)) / share })).reduce((a, z) => (z.torque < a.torque ? z : a));
  const lockTorque = (want: number, wt: number, s = supply(oil(), wt + lockUp.heldSlip, want), { most, back, fedFromOverflow } = lockUp.clutch) =>
    min(want, capacity(lu, min(most, max(0, s.p - back) * (fedFromOverflow ? min(1, s.feed / s.full) ** 2 : 1)), lockUp.heldSlip, y[plate(lu)], left(lu)));
  const peak = max(...curve.map((_, i) => full(idle + (i / 10) * (engine.ratedSpeed - idle)))), most = reg.base + reg.perTorque * b.ratedTurbineTorque;
  const rated = clutches.map((_, k) => (k === lu ? capacity(lu, lockUp.clutch.most, lockUp.heldSlip, 363.15, 1) / peak
    : min(...[...b.gears, b.reverse].flatMap((q) => q.holds.filter((e) => e.clutch === k).map((e) =>
      capacity(k, min(reg.most, most * (q === b.reverse ? reg.reverseFactor : 1)), 0, 363.15, 1) / (e.share * b.ratedTurbineTorque))))));
  const damage = (k: number) => (1 - left(k)) / (1 - 1 / rated[k]);
  const glazing = (T: number) => ((1.07e8 / 3600) * exp(-111000 / (R * T))) / 0.004;
  const charring = (T: number) => b.damage.charFactor * 2.8e19 * exp(-242400 / (R * T));
  // 8 Shifts: how long an element fills; then two inertias that it brings together.
  const volume = (k: number) => clutches[k].deadVolume + clutches[k].pistonArea * clutches[k].stroke;
  const fillTime = (k: number, s: ReturnType<typeof supply>, q = clutches[k], A = q.fillDischarge * (PI / 4) * q.fillOrifice ** 2,
    flow = (p: number) => A * sqrt((2 * max(0, p - q.spring / q.pistonArea)) / s.mix)) =>
    min(20, volume(k) / (flow(root((p) => s.spare(p) - flow(p), 0, s.p)) * s.liquid));
  /** Time in which element k closes the slip `gap` [rad/s], set for the slip `asked`; the slips grow by their drifts without it [rad/s²]. */
  function close(k: number, share: number, p: number, J: number, [asked, askedDrift]: number[], [gap, drift]: number[]): number {
    const q = clutches[k], j = plate(k), torque = share * max(0, J * (asked / control.targetTime + askedDrift));
    const press = min(p, (torque / (friction(k, asked / 2 / share, y[j]) * q.faces * radius(k)) + q.spring) / q.pistonArea + trim);
    const Tc = capacity(k, press, gap / 2 / share, y[j], left(k)) / share, gain = Tc / J - drift, time = gain > 0 ? gap / gain : Infinity;
    if (gap <= 0 || time > 1) return gap <= 0 ? 0 : time;
    const work = (Tc * gap * time) / 2, flux = (2 * work * toSteel) / (faces[k] * time), face = y[j] + 0.53192 * flux * sqrt(time / bulk);
    [y[j], y[I.E]] = [y[j] + (toSteel * work) / (q.steelMass * steel.c), y[I.E] + (1 - toSteel) * work];
    y[j + 1] = min(q.liningThickness, y[j + 1] + (b.damage.wearPerEnergy * work) / faces[k]);
    [y[j + 2], y[j + 3]] = [1 - (1 - y[j + 2]) * exp(-charring(face) * time), min(1, y[j + 3] + glazing(face) * time)];
    return time;
  }
  const letGo = (we: number, wt: number, way = 1) => ([slipping, slipTime, slid, lockOn, y[I.we], y[I.wt]] = [way, 0, true, false, we, wt]);
  function engage() {
    const creep = turbine(idle, 0), J = control.turbineInertia, slip = [idle, creep / J];
    const { clutch: k, share } = b.gears[0].holds.reduce((a, z) => (volume(z.clutch) > volume(a.clutch) ? z : a));
    [neutral, y[I.pass]] = [false, hu.passages];
    if (close(k, share, supply(oil(), idle, creep).p, J, slip, slip) > 1) letGo(idle, idle);
  }
  function shift(to: number) {
    const i = instant(), old = b.gears[gear].holds, enters = b.gears[to].holds.find((e) => !old.some((o) => o.clutch === e.clutch)), up = to > gear;
    gear = to;
    if (slipping !== 0 || !enters) return;
    const { clutch: k, share } = enters, wn = turns() * y[I.v], want = max(0, atTurbine(road(wish))), load = atTurbine(road(0));
    const T = min(want, turbine(fullThrottle(i.wt, pumpTorque(setPoint(i.o.T, want))), i.wt)), Je = engine.inertia + control.turbineInertia;
    const late = max(0, fillTime(k, i.sup) - fillTime(k, supply(i.o, i.we, i.Tt, pickup.baseGas))), J2 = mass / turns() ** 2;
    const w1 = min(i.wt + (T * late) / Je, max(i.wt, top)), drift = T / Je + load / J2, slip = (w: number) => [abs(w - wn), sign(w - wn) * drift];
    watch("firstFlare", w1 - max(i.wt, wn) > 200 * rpm, 0);
    const time = close(k, share, i.sup.p, 1 / (1 / Je + 1 / J2), slip(i.wt), slip(w1));
    if (up && T > 0) trim = clamp(trim + control.trimGain * (min(1, time + late) / control.targetTime - 1), -control.trimLimit, control.trimLimit);
    if (time > 1) letGo(max(i.we, w1), w1, sign(w1 - wn));
  }
  // 4, 5, 6, 9, 10: rates of change with the engine on, in the order of the state.
  function rates(i = instant()): number[] {
    const { o, sup } = i, h = depth(o.rho), lub = b.heat.lubrication, liquid = sup.liquid;
    const onPan = leak?.place === "pan" ? leakFlow(o.rho * g * max(0, h - leak.height), o.mu, o.rho) : 0, loss = o.rho * (sup.leak * liquid + onPan);
    const tilt = (s: number, r: number, L: number, to: number, w2 = ((g * PI) / L) * tanh((PI * h) / L)) => [r, w2 * (to - s) - 2 * zeta * sqrt(w2) * r];
    const soon = (lack: number) => max(0, lack) / 0.02, pass = min(sup.delivered * liquid, soon(hu.passages - y[I.pass]));
    const conv = min(sup.feed * liquid, soon(hu.converter - y[I.conv])), lines = min(sup.feed * liquid - conv, soon(hu.coolerAndLines - y[I.lines]));
    const flight = max(0, (sup.clutch + sup.feed - sup.relief - sup.leak) * liquid - pass - conv - lines) - returning(o.mu);
    const c1 = max(1e-9, sup.cooler * o.rho * o.c), c2 = b.heat.coolantFlowCapacity, low = min(c1, c2), ratio = low / max(c1, c2);
    const x = exp((-b.heat.coolerConductance / low) * (1 - ratio)), cooled = ((low * (1 - x)) / (1 - ratio * x)) * (o.T - y[I.coolant]);
    const film = lub.airCoefficient + (lub.fullCoefficient - lub.airCoefficient) * sqrt(clamp(sup.lube / lub.fullFlow, 0, 1));
    let heat = i.Tp * i.we - (i.Tt - i.Tlu) * i.wt + pumpTorque(sup.p) * i.we + (1 - eta) * abs(slipping !== 0 ? i.Tc * (i.wt - i.slip) : i.Tt * i.wt);
    heat -= cooled + (b.heat.caseStill + b.heat.casePerSpeed * y[I.v]) * (o.T - ambient) + loss * energy(o.T);
    const plates = clutches.flatMap((k, n) => {
      const j = plate(n), q = n === i.which ? abs(i.Tc * i.slip) : n === lu ? i.Tlu * i.slip : 0, out = film * k.coolingArea * (y[j] - o.T);
      const face = y[j] + ((q / faces[n]) * (k.steelThickness / 2)) / (3 * steel.k), wear = (b.damage.wearPerEnergy * q) / faces[n];
      heat += (1 - toSteel) * q + out;
      return [(toSteel * q - out) / (k.steelMass * steel.c), y[j + 1] < k.liningThickness ? wear : 0, ...burning(j, face), q];
    });
    const fore = (i.acc + g * sin(theta)) / (g * cos(theta)), aging = 2 ** ((o.T * 1.8 - 459.67 - 175) / 20) / ((100000 / 30) * 3600);
    return [-loss, heat, conv, lines, pass, flight, ...tilt(y[I.sx], y[I.rx], pan.length, fore), ...tilt(y[I.sy], y[I.ry], pan.width, lateral / g),
      ((drawnGas(h, sup.drawn) - y[I.gas]) * sup.drawn) / hu.suction, (b.heat.coolantWarm - y[I.coolant]) / b.heat.coolantWarmTime,
      i.acc, i.dwe, i.dwt, aging, loss, ...plates];
  }
  const burning = (j: number, T: number) => [(1 - y[j + 2]) * charring(T), y[j + 3] < 1 ? glazing(T) : 0];
  // 6, 9, 10: the same while parked; the plates share the fluid's temperature.
  function parkedRates(): number[] {
    const o = oil(), above = leak ? max(0, depth(o.rho) - leak.height) : 0, plates = clutches.reduce((sum, k) => sum + k.steelMass * steel.c, 0);
    const inLine = leak && leak.lineAbove > 0 ? leak.columnHeight * max(0, 1 - (hu.coolerAndLines - y[I.lines]) / leak.lineAbove) : 0;
    const Q = leakFlow(o.rho * g * max(inLine, above), o.mu, o.rho), all = y[I.m] * o.c + b.heat.metal, loss = o.rho * Q;
    return [-loss, (-b.heat.caseStill * (o.T - ambient) * all) / (all + plates) - loss * energy(o.T),
      -max(0, y[I.conv] - hu.converter * (1 - hu.converterDrains)) / hu.converterDrainTime, inLine > above ? -Q : 0,
      -max(0, y[I.pass] - hu.passages * (1 - hu.passagesDrain)) / hu.passagesDrainTime, -returning(o.mu), 0, 0, 0, 0, 0,
      (ambient - y[I.coolant]) / b.heat.coolantCoolTime, 0, 0, 0, 0, loss, ...clutches.flatMap((_, n) => [0, 0, ...burning(plate(n), o.T), 0])];
  }
  function step(end: number, most: number, f: () => number[], k1 = f()) {
    const y0 = y, t0 = t, h = min(end - t, t < opens - 1e-9 ? opens - t : Infinity, most);
    [y, t] = [k1.map((k, n) => y0[n] + (h / 2) * k), t0 + h / 2];
    [y, t] = [f().map((k, n) => y0[n] + h * k), t0 + h];
    return h;
  }
  // 11 Events.
  const events: Record<string, number | undefined> = {}, since: Record<string, number | undefined> = {};
  const sample = () => ({ t, temperature: temperature(), mass: y[I.m], lost: y[I.lost] }), samples = [sample()].slice(1);
  function watch(name: string, on: boolean, lasting: number) {
    since[name] = on ? (since[name] ?? t) : undefined;
    if (on && t - since[name]! >= lasting) events[name] ??= since[name];
  }
  function watchAll(i: ReturnType<typeof instant>, behind = schedule() - y[I.v], T = i.o.T) {
    slid = (slid && behind > 0.5) || slipping !== 0;
    const level = depth(i.o.rho) < stick.low && y[I.v] === 0 && T > 338.15 && T < 368.15 && max(abs(theta), abs(y[I.sx])) < 0.01;
    const now: [string, boolean, number][] = [
      ["levelLow", level, 5], ["firstGulp", y[I.gas] > 0.1, 0.3], ["coolerHalf", i.sup.feed < 0.5 * i.sup.full && T > 333.15, 3],
      ["lockupSlip", i.saturated && i.slip > 100 * rpm, 3], ["pressureLow", i.sup.p < 0.97 * i.sup.set, 0.5], ["tooHot", T > 403.15, 10],
      ["firstSlip", abs(slipping * i.slip) > 50 * rpm, 1], ["fallsBehind", slid && behind > 3, 5], ["noDrive", slid && y[I.v] < 0.5 && schedule() > 3, 10]];
    now.forEach((event) => watch(...event));
    clutches.forEach((k, n) => [0.1, 0.5, 1].forEach((D) => watch(`damage ${D} ${k.name}`, damage(n) >= D, 0)));
  }
  // The walk: drive, park, trip after trip.
  function advance(end: number) {
    while (t < end - 1e-9) {
      const i = instant(), letsGo = !neutral && slipping === 0 && i.Tt > holds(i.sup.p, 0).torque;
      if (letsGo && letGo(i.we, i.wt)) continue;
      if (t >= (samples.at(-1)?.t ?? -1) + 0.1) samples.push(sample());
      watchAll(i);
      const stopsIn = i.acc < 0 && y[I.v] > 0 ? max(1e-9, -y[I.v] / i.acc) : Infinity;
      const calm = abs(y[I.gas] - pickup.baseGas) < 1e-6 && y[I.conv] + y[I.lines] + y[I.pass] > hu.converter + hu.coolerAndLines + hu.passages - 1e-9;
      const h = step(end, min(stopsIn, fine * (slipping !== 0 ? (slipTime < 1 ? 0.0005 : 0.002) : calm ? 0.1 : 0.005)), rates, rates(i));
      [slipTime, lockSlipTime] = [slipTime + h, lockSlipTime > 10 || (i.saturated && i.slip > 150 * rpm) ? lockSlipTime + h : 0];
      [y[I.v], y[I.we]] = [h === stopsIn ? 0 : max(0, y[I.v]), max(idle, y[I.we])];
      if (slipping * (y[I.wt] - turns() * y[I.v]) <= 0) slipping = 0;
    }
  }
  function park(end: number) {
    for (const n of [I.sx, I.rx, I.sy, I.ry, I.v, I.gas]) y[n] = n === I.gas ? pickup.baseGas : 0;
    [gear, neutral, slipping, slid, lockOn, lockSlipTime, wish, theta, lateral, from, slope] = [0, true, 0, false, false, 0, 0, 0, 0, 0, 0];
    const before = y[I.E], given = (T: number) => clutches.reduce((sum, k, n) => sum + k.steelMass * steel.c * (y[plate(n)] - T), before);
    y[I.E] = given(root((T) => { y[I.E] = given(T); return temperature() - T; }, 200, 1500));
    for (const start = t; t < end - 1e-9; samples.push(sample())) {
      step(end, fine * (t - start < 200 ? 0.5 : 10), parkedRates);
      clutches.forEach((_, n) => (y[plate(n)] = temperature()));
    }
  }
  Object.assign(y, { [I.m]: density(b.fillTemperature) * (b.fill - fillShort), [I.conv]: hu.converter, [I.lines]: hu.coolerAndLines });
  [y[I.pass], y[I.coolant], y[I.E]] = [hu.passages, ambient, y[I.m] * energy(ambient) + b.heat.metal * (ambient - 273.15)];
  for (const { startsAt, ticks: q } of trips) {
    park(startsAt);
    advance(t + 2);
    engage();
    for (let n = 0; n < q.count && t < until; n++) {
      const dt = q.dt[n], v = y[I.v], plan = b.shiftPlan, T = temperature();
      [slope, tickAt, theta, lateral] = [(q.speed[n] - from) / dt, t, atan(q.grade[n]), q.lateral[n]];
      wish = min((q.speed[n] - v) / dt, max(0, slope) + 1);
      const stretch = 1 + (plan.stretch * max(0, wish)) / g;
      if (gear < b.gears.length - 1 && v > plan.up[gear] * stretch) shift(gear + 1);
      else if (gear > 0 && v < plan.down[gear - 1] * stretch) shift(gear - 1);
      const off = gear < lockUp.fromGear || T < lockUp.fluidAbove || (T > lockUp.hot && lockUp.whenHot === "releases");
      lockOn = !off && slipping === 0 && lockSlipTime <= 10 && (v > lockUp.onAbove || (lockOn && v >= lockUp.offBelow));
      advance(tickAt + dt);
      from = q.speed[n];
      samples.push(sample());
    }
  }
  park(end.parkedUntil ?? t + 1e-6);
  return { events, samples, slipEnergy: clutches.map((_, n) => y[plate(n) + 4]), damage: clutches.map((_, n) => damage(n)) };
}
