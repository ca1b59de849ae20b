// The model of DEVELOPERS.md once more, written from that page alone and sharing no code with src: one plain rule (midpoint), short steps,
// everything evaluated at every step. Numbers in comments are sections of that page. All functions read the state of the moment, `y`.
import { type Trip } from "../../src/driving/pattern.ts";
import { type Unit } from "../../src/physics/build.ts";
import { openingFlow, square } from "./opening.ts";
const { PI, abs, atan, cos, exp, log10, max, min, sign, sin, sqrt, tanh } = Math,
  g = 9.80665,
  p0 = 101325,
  R = 8.314462618,
  rpm = PI / 30;
const steel = { k: 46, rho: 7850, c: 480 },
  bulk = 46 * 7850 * 480,
  toSteel = 1 / (1 + sqrt((0.24 * 1125 * 1600) / bulk));
const clamp = (x: number, lo: number, hi: number) => min(hi, max(lo, x)),
  plate = (k: number) => I.end + 5 * k;
/** Where the monotone f is zero between lo and hi (Illinois); the better end if it has one sign. */
function root(f: (x: number) => number, lo: number, hi: number): number {
  let [a, b, fa, fb] = [lo, hi, f(lo), f(hi)];
  if (fa * fb >= 0) return abs(fa) < abs(fb) ? a : b;
  for (let i = 0; i < 200 && fb !== 0 && abs(b - a) > 1e-9 * (abs(a) + abs(b)); i++) {
    const x = (a * fb - b * fa) / (fb - fa),
      fx = f(x);
    [a, fa, b, fb] = fx * fb < 0 ? [b, fb, x, fx] : [a, fa / 2, x, fx];
  }
  return b;
}
/** 2: what stands where in the state; then five numbers of each clutch: plate temperature, wear, char, glaze, slip energy; lock-up last. */
enum I {
  m,
  E,
  conv,
  lines,
  pass,
  flight,
  sx,
  rx,
  sy,
  ry,
  gas,
  coolant,
  v,
  we,
  wt,
  age,
  lost,
  lack,
  ran,
  end,
}
/** Seconds, kelvin, m³ at fill temperature; `fine` scales every step of time; no tick begins after `until`; parked to `parkedUntil`. */
export interface Options {
  opens: number;
  ambient: number;
  fillShort: number;
  fine?: number;
  until?: number;
  parkedUntil?: number;
}
/** Drives the unit over the trips from t = 0. Events: seconds at which their condition began. */
export function independentRun(
  unit: Unit,
  trips: readonly Trip[],
  { opens, ambient, fillShort, fine = 1, until = Infinity, ...end }: Options,
) {
  const { build: b, fluid, leak, driver } = unit,
    { engine, vehicle: veh, holdUp: hu, regulator: reg, shiftControl: control, lockUp } = b;
  const { pan, pickup, stick, sloshDamping: zeta } = b.sump,
    toPan = reg.spill === "pan",
    area = pan.free * pan.length * pan.width,
    idle = engine.idleSpeed;
  const eta = b.gearEfficiency,
    top = idle + 1.2 * (engine.ratedSpeed - idle),
    clutches = [...b.clutches, lockUp.clutch],
    lu = b.clutches.length;
  const faces = clutches.map((k) => k.faces * PI * (k.outer ** 2 - k.inner ** 2)),
    root15 = sqrt(fluid.density15 / 999.0),
    shiftEnergy = faces.map(() => 0);
  let y = Array.from({ length: plate(lu + 1) }, (_, n) =>
      n >= I.end && (n - I.end) % 5 === 0 ? ambient : 0,
    ),
    t = 0;
  // What driver and controller do, changed from tick to tick; `slipping` is the sign of the slip, `slid` a slip since the vehicle kept up.
  let gear = 0,
    neutral = true,
    slipping = 0,
    slipTime = 0,
    slid = false,
    lockOn = false,
    lockSlipTime = 0,
    trim = 0;
  const learned = clutches.map(() => 0); // seconds by which each clutch is filled earlier
  // The clutch that enters (none: -1), the pressure asked for it, when it was due, the engine's speed then, whether its time teaches.
  let entering = -1,
    asked = 0,
    dueAt = 0,
    weDue = 0,
    teaches = false,
    wish = 0,
    theta = 0,
    lateral = 0,
    from = 0,
    slope = 0,
    tickAt = 0,
    near = 0;
  const onSump = leak?.place === "pan" || leak?.place === "pan-seam";
  const mass = veh.mass * veh.rotating,
    open = () => leak !== null && t >= opens - 1e-9,
    schedule = () => from + slope * (t - tickAt);
  // 1 Fluid, how much of it is in the pan and how fast the rest comes back.
  const density = (T: number, a = 0.6278 / fluid.density15) =>
    fluid.density15 * exp(-a * (T - 288.15) * (1 + 0.8 * a * (T - 288.15)));
  const viscosity = (
    T: number,
    l = fluid.viscosity,
    [A, B] = T < l.knee ? [l.coldA, l.coldB] : [l.warmA, l.warmB],
  ) =>
    (10 ** (10 ** (A - B * log10(T))) - 0.7) * 1e-6 * density(T) * (1 - fluid.shearLoss * min(1, y[I.age]));
  const energy = (T: number, s = T - 273.15) => (1685 * s + 1.695 * s * s) / root15;
  const temperature = (q = (1.695 * y[I.m]) / root15, l = (1685 * y[I.m]) / root15 + b.heat.metal) =>
    273.15 + (2 * y[I.E]) / (l + sqrt(l * l + 4 * q * y[I.E]));
  const oil = (T = temperature()) => ({
    T,
    rho: density(T),
    mu: viscosity(T),
    path: viscosity((T + y[I.coolant]) / 2),
    c: (1685 + 3.39 * (T - 273.15)) / root15,
  });
  const depth = (rho: number) =>
    max(0, y[I.m] / rho - y[I.conv] - y[I.lines] - y[I.pass] - y[I.flight]) / area;
  const returning = (mu: number) =>
    y[I.flight] / (hu.hotReturnTime * (mu / hu.hotViscosity) ** hu.returnExponent);
  // 3 Driving: road, converter (its branches meet where the printed polynomials do) and engine.
  const turns = (n = gear) => (abs(b.gears[n].ratio) * b.finalRatio) / veh.tyreRadius;
  const road = (a: number, v = y[I.v]) =>
    mass * a +
    veh.mass * g * (sin(theta) + (v > 0 ? veh.rolling * cos(theta) : 0)) +
    0.5 * veh.airDensity * veh.dragArea * v * v;
  const atTurbine = (F: number, n = turns()) => (F >= 0 ? F / (n * eta) : (F * eta) / n);
  const slow = (r: number) => 3.4325 + 2.221 * r - 4.6041 * r * r,
    coupled = (r: number) => (1 - r) * (25.2441 * r - 6.7643);
  const driven = (r: number) => 5.7656 + 0.3107 * r - 5.4323 * r * r,
    scale = 1e-3 * b.converter.scale;
  const couples = root((r) => coupled(r) - slow(r), 0.8, 0.95),
    evens = root((r) => driven(r) - slow(r), 0.8, 0.95);
  const impeller = (w: number, wt: number) =>
    wt >= w ? 0 : scale * w * w * (wt < couples * w ? slow(wt / w) : coupled(wt / w));
  const turbine = (w: number, wt: number) =>
    wt < evens * w ? scale * w * w * driven(wt / w) : impeller(w, wt);
  const impellerFor = (T: number, wt: number) => root((w) => turbine(w, wt) - T, max(1, wt), 3000);
  const curve = [0.1, 0.21, 0.315, 0.394, 0.484, 0.58, 0.669, 0.761, 0.855, 0.942, 1, 0.956, 0.85];
  const closed = (w: number) => -(engine.drag0 + engine.drag1 * w),
    pumpTorque = (p: number) => (p * b.pump.displacement) / (2 * PI * b.pump.mechanical);
  const full = (
    w: number,
    x = (10 * max(0, w - idle)) / (engine.ratedSpeed - idle),
    i = min(11, Math.floor(x)),
  ): number =>
    x > 12
      ? max(closed(w), ((engine.ratedPower * 0.85) / top) * (12.5 - x) * 2)
      : (engine.ratedPower * (curve[i] * (i + 1 - x) + curve[i + 1] * (x - i))) / max(idle, w);
  const fullThrottle = (wt: number, pump: number) =>
    root((w) => full(w) - pump - impeller(w, wt), max(idle, wt), 2 * top);
  function instant() {
    // 3 and 7: everything at one instant with the engine on
    const o = oil(),
      n = turns(),
      v = y[I.v],
      a = v <= 0 ? max(0, wish) : wish,
      wt = n * v,
      want = atTurbine(road(a)),
      creep = turbine(idle, wt);
    const i = {
      o,
      we: idle,
      wt,
      Tp: 0,
      Tt: 0,
      Tlu: 0,
      Tc: 0,
      slip: 0,
      which: -1,
      acc: a,
      dwe: 0,
      dwt: 0,
      saturated: false,
    };
    if (neutral) return { ...i, wt: idle, acc: 0, sup: supply(o, idle, 0) };
    const pump = pumpTorque(setPoint(o.T, want)),
      reaches = (wheel: number) => min(a, max(v <= 0 ? 0 : -Infinity, (wheel - road(0)) / mass));
    if (slipping !== 0) {
      const we = y[I.we],
        w1 = y[I.wt],
        Tt = turbine(we, w1),
        Tp = impeller(we, w1),
        sup = supply(o, we, Tt),
        weakest = holds(sup.p, w1 - wt);
      const w = max(idle, impellerFor(want, wt)),
        needs = (impeller(w, wt) + pump - closed(w)) / (full(w) - closed(w));
      const pedal =
        want > 0
          ? clamp(needs + driver.pressOn * max(0, schedule() - v), 0, 1) * (slipTime > 1 ? driver.easeOff : 1)
          : 0;
      const Tc = slipping * weakest.torque,
        acc = reaches(Tc > 0 ? Tc * n * eta : (Tc * n) / eta),
        dwt = (Tt - Tc) / control.turbineInertia;
      const dwe = (pedal * full(we) + (1 - pedal) * closed(we) - pumpTorque(sup.p) - Tp) / engine.inertia;
      return { ...i, we, wt: w1, Tt, Tp, Tc, slip: w1 - wt, which: weakest.k, acc, dwe, dwt, sup };
    }
    if (want <= creep)
      return {
        ...i,
        we: max(idle, wt),
        Tt: creep,
        Tp: impeller(idle, wt),
        sup: supply(o, max(idle, wt), creep),
      };
    const rest = lockOn ? want - turbine(wt + lockUp.heldSlip, wt) : 0,
      Tlu = rest > 0 ? min(rest, lockTorque(want, wt)) : 0;
    const carry = (we: number, Tt: number, T: number, saturated = false) =>
      Object.assign(i, {
        we,
        Tt,
        Tp: impeller(we, wt),
        Tlu: T,
        slip: T > 0 || saturated ? we - wt : 0,
        saturated,
      });
    const short = () => i.Tp + i.Tlu + pump > full(i.we);
    carry(
      Tlu > 0 && Tlu === rest ? wt + lockUp.heldSlip : impellerFor(want - Tlu, wt),
      want,
      Tlu,
      Tlu < rest,
    );
    if (rest > 0 && short()) carry(impellerFor(want, wt), want, 0);
    if (short())
      carry(fullThrottle(wt, pump), turbine(fullThrottle(wt, pump), wt), 0).acc = reaches(i.Tt * n * eta);
    return { ...i, sup: supply(o, i.we, i.Tt) };
  }
  // 4 Pan and pickup: the plane under which the mean depth is h (mean of max(0, z + aξ + cη) over the unit square, exact), and the gas drawn.
  const cube = (x: number) => max(0, x) ** 3,
    meanAbove = (z: number, a: number, c: number, s = (a + c) / 2, d = (a - c) / 2) =>
      z >= s ? z : (cube(z + s) - cube(z + d) - cube(z - d) + cube(z - s)) / (6 * a * c);
  function surface(h: number, at: { x: number; y: number }, lid = pan.height): number {
    const A = max(abs(y[I.sx] * pan.length), 1e-6),
      B = max(abs(y[I.sy] * pan.width), 1e-6),
      s = (A + B) / 2;
    const z =
      h >= s && h + s <= lid
        ? h
        : root((x) => meanAbove(x, A, B) - meanAbove(x - lid, A, B) - h, -s, lid + s);
    return z - y[I.sx] * (at.x - pan.length / 2) - y[I.sy] * (at.y - pan.width / 2);
  }
  function drawnGas(h: number, Q: number, d = surface(h, pickup) - pickup.height): number {
    const rim = 1.5 * (Q / (pickup.rim * sqrt(g))) ** (2 / 3),
      onset = max(0.69 * ((Q * Q) / g) ** 0.2, 1.05 * rim);
    if (h <= 0 || d < rim) return h <= 0 ? 1 : 1 - (1 - pickup.weirGas) * (max(0, d) / rim) ** 1.5;
    return pickup.baseGas + max(0, (onset - d) / (onset - rim)) * (pickup.weirGas - pickup.baseGas);
  }
  // 5 Supply: the cooler circuit behind its orifice at line pressure p, or with a given flow; then the balance.
  function circuit(o: ReturnType<typeof oil>, mix: number, p: number, leaks: boolean, given?: number) {
    const r = b.cooler,
      share = clamp((o.T - r.bypassCold) / (r.bypassHot - r.bypassCold), 0, 1),
      onSupply = leak?.place === "supply-line" ? 1 : 0;
    const onOutlet = leak?.place === "shaft-seal" && leak.fedBy === "converter-outlet" ? 1 : 0; // else where lubrication begins, as after the return line
    const gs = 1 / (r.supplyLine * o.path),
      gc = 1 / ((r.cooler + r.returnLine) * o.path),
      gp = (gs * gc) / (gs + gc),
      gl = 1 / (r.lube * o.mu);
    const gb = (1 - share) / (r.bypass * o.mu),
      k = mix * square(r.feedDischarge, (PI / 4) * r.feedOrifice ** 2);
    const net = (
      F: number,
      q: number,
      qs = q * onSupply,
      first = (F - q * onOutlet + (gb * qs) / gc) / (1 + gb / gp),
      lube = (F - q) / gl,
    ) =>
      // F in, leak q
      ({
        outlet: lube + first / gp - qs / gc,
        atLeak: lube + (onSupply * (first - qs)) / gc + (onOutlet * first) / gp,
        lube: F - q,
        cooler: first - qs,
      });
    const alpha = net(1, 0).outlet,
      beta = -net(0, 1).outlet;
    const solve = (q: number) => {
      let F = given ?? (2 * (p + beta * q)) / (alpha + sqrt(alpha * alpha + 4 * k * (p + beta * q))),
        feed = F;
      if (alpha * F - beta * q > r.relief)
        [feed, F] = [given ?? sqrt((p - r.relief) / k), (r.relief + beta * q) / alpha];
      return { ...net(F, q), feed, relief: feed - F, leak: q };
    };
    const flow = (q: number) => leakFlow(solve(q).atLeak, leak?.place === "return-line" ? o.path : o.mu, mix);
    return solve(leaks && !onSump ? root((q) => flow(q) - q, 0, flow(0)) : 0);
  }
  const setPoint = (T: number, Tt: number) =>
    min(
      reg.most,
      trim +
        (reg.base + reg.perTorque * abs(Tt)) * (1 + reg.coldFactor * clamp((reg.coldBelow - T) / 40, 0, 1)),
    );
  function supply(o: ReturnType<typeof oil>, w: number, Tt: number, x = y[I.gas], leaks = open()) {
    const n = b.inlet,
      cc = b.clutchCircuit,
      bore = (PI / 4) * n.bore ** 2,
      orifice = (cc.discharge * PI * cc.orifice ** 2) / 4;
    const inlet = (q: number) => {
      const V = q / bore,
        Re = max(1e-9, (o.rho * V * n.bore) / o.mu),
        rough = 0.3164 / max(4000, Re) ** 0.25;
      const f = Re <= 2300 ? 64 / Re : 64 / 2300 + min(1, (Re - 2300) / 1700) * (rough - 64 / 2300);
      return (
        p0 -
        o.rho * g * n.head -
        ((1 + (f * n.length) / n.bore + n.minorLoss) * o.rho * V * V) / 2 -
        n.filter * o.mu * q
      );
    };
    const turned = (b.pump.displacement * w) / (2 * PI),
      most = inlet(turned) < 3000 ? root((q) => inlet(q) - 3000, 0, turned) : turned;
    const set = setPoint(o.T, Tt),
      slips = (b.pump.slip * b.pump.displacement) / (2 * PI * o.mu),
      balance = (Q: number) => {
        const pin = max(3000, inlet(Q)),
          stays = (p: number) => x * (1 - b.pump.dissolved) * (pin / (p + p0)) ** (1 / b.pump.exponent);
        const rest = (p: number) => 1 - x + stays(p),
          liquid = (p: number) => 1 - stays(p) / rest(p),
          mix = (p: number) => o.rho * max(liquid(p), 1e-3);
        const creeps = (p: number) =>
          min(1, (cc.orifice ** 3 * set) / (24 * o.mu) / max(1e-30, orifice * sqrt((2 * set) / mix(p))));
        const toClutches = (p: number) =>
          orifice * sqrt((2 * max(0, p)) / mix(p)) * creeps(p) + (cc.laminar * p) / o.mu;
        const spare = (p: number) =>
          min((toPan ? most : turned) * rest(p) - slips * p, most * rest(p)) - toClutches(p);
        const wanted = circuit(o, mix(set), set, leaks),
          p = root(spare, 0, set),
          clutch = toClutches(p);
        const now = spare(set) >= wanted.feed ? wanted : circuit(o, mix(p), p, leaks, max(0, spare(p)));
        const drawn = toPan ? most : (clutch + now.feed) / rest(p),
          delivered = clutch + spare(p);
        return {
          ...now,
          p,
          set,
          full: wanted.feed,
          clutch,
          liquid: liquid(p),
          mix: mix(p),
          drawn,
          spare,
          delivered,
        };
      };
    for (
      let k = 0, s = balance((near = toPan ? most : min(near, most)));
      ;
      s = balance((near = s.drawn)), k++
    )
      if (k === 40 || abs(s.drawn - near) <= 1e-7 * near) return s;
  }
  // 6 The leak: what runs through it at overpressure p (opening.ts). Pan and rail leak by the head over them.
  const leakFlow = (p: number, mu: number, rho: number, running = true) =>
    leak && open()
      ? openingFlow(leak.opening, { since: max(0, t - opens), ran: y[I.ran], running }, p, mu, rho)
      : 0;
  // 7 Clutches: torque of one element, what is left of it, what the gear holds at the turbine; 10: damage and its rates.
  const friction = (
    k: number,
    w: number,
    T: number,
    f = clutches[k].friction,
    v = (abs(w) * (clutches[k].outer + clutches[k].inner)) / 2,
  ) =>
    (f.base + f.rise * tanh(v / f.riseSpeed) + f.slope * v) *
    clamp(1 - f.heatLoss * (T - f.reference), 0.3, 1.2);
  const left = (k: number, j = plate(k)) =>
    (1 - b.damage.glazeLoss * y[j + 3]) * (1 - y[j + 2]) * (1 - y[j + 1] / clutches[k].liningThickness);
  const radius = (k: number, { outer: o, inner: i } = clutches[k]) =>
    k === lu ? ((2 / 3) * (o ** 3 - i ** 3)) / (o ** 2 - i ** 2) : (o + i) / 2;
  const capacity = (k: number, p: number, w: number, T: number, lost: number, q = clutches[k]) =>
    lost * friction(k, w, T) * q.faces * radius(k) * max(0, p * q.pistonArea - q.spring);
  const pressed = (k: number, p: number) =>
    k !== entering ? p : y[I.lack] > 0 ? 0 : t < dueAt + 1 ? min(asked, p) : p;
  const holds = (p: number, slip: number) =>
    b.gears[gear].holds
      .map(({ clutch: k, share }) => ({
        k,
        torque: capacity(k, pressed(k, p), slip / share, y[plate(k)], left(k)) / share,
      }))
      .reduce((a, z) => (z.torque < a.torque ? z : a));
  const lockTorque = (
    want: number,
    wt: number,
    s = supply(oil(), wt + lockUp.heldSlip, want),
    { most, back, fedFromOverflow } = lockUp.clutch,
  ) =>
    capacity(
      lu,
      min(most, max(0, s.p - back) * (fedFromOverflow ? min(1, s.feed / s.full) ** 2 : 1)),
      lockUp.heldSlip,
      y[plate(lu)],
      left(lu),
    );
  const peak = max(...curve.map((_, i) => full(idle + (i / 10) * (engine.ratedSpeed - idle)))),
    most = reg.base + reg.perTorque * b.ratedTurbineTorque;
  const rated = clutches.map((_, k) =>
    k === lu
      ? capacity(lu, lockUp.clutch.most, lockUp.heldSlip, 363.15, 1) / peak
      : min(
          ...[...b.gears, b.reverse].flatMap((q) =>
            q.holds
              .filter((e) => e.clutch === k)
              .map(
                (e) =>
                  capacity(k, min(reg.most, most * (q === b.reverse ? reg.reverseFactor : 1)), 0, 363.15, 1) /
                  (e.share * b.ratedTurbineTorque),
              ),
          ),
        ),
  );
  const damage = (k: number) => (1 - left(k)) / (1 - 1 / rated[k]),
    glazing = (T: number) => ((1.07e8 / 3600) * exp(-111000 / (R * T))) / 0.004;
  const charring = (T: number) => b.damage.charFactor * 2.8e19 * exp(-242400 / (R * T));
  // 8 Shifts: what fills an element; then two inertias that it brings together at once, or a slip that goes on.
  const volume = (k: number) => clutches[k].deadVolume + clutches[k].pistonArea * clutches[k].stroke;
  const filling = (
    k: number,
    s: ReturnType<typeof supply>,
    q = clutches[k],
    A = q.fillDischarge * (PI / 4) * q.fillOrifice ** 2,
    flow = (p: number) => A * sqrt((2 * max(0, p - q.spring / q.pistonArea)) / s.mix),
  ) => flow(root((p) => s.spare(p) - flow(p), 0, s.p)) * s.liquid;
  const learn = (time: number, by = control.trimGain * (min(1, time) / control.targetTime - 1)) =>
    ([trim, teaches] = [teaches ? clamp(trim + by, -control.trimLimit, control.trimLimit) : trim, false]);
  const letGo = (we: number, wt: number, way = 1) =>
    ([slipping, slipTime, slid, lockOn, y[I.we], y[I.wt]] = [way, 0, true, false, we, wt]);
  /** Element k with V to fill takes the turbine to wn; without it the slip grows by `drift` [rad/s²]. */
  function enter(
    { clutch: k, share } = b.gears[0].holds[0],
    V: number,
    J: number,
    wn: number,
    drift: number,
    { o, we, wt, Tt, sup } = instant(),
    earlier = 0,
  ) {
    const due = min(20, V / filling(k, supply(o, we, Tt, pickup.baseGas, false))) + earlier,
      flow = filling(k, sup),
      late = min(20, V / flow) - due;
    const q = clutches[k],
      j = plate(k),
      gap = abs(wt - wn),
      torque = share * max(0, J * (gap / control.targetTime + drift)),
      at = gap / 2 / share;
    if (teaches)
      learned[k] = clamp(
        learned[k] + control.fillGain * clamp(late, -control.fillLimit, control.fillLimit),
        0,
        control.fillLimit,
      );
    asked = (torque / (friction(k, at, y[j]) * q.faces * radius(k)) + q.spring) / q.pistonArea + trim;
    const Tc = capacity(k, min(asked, sup.p), at, y[j], left(k)) / share,
      gain = Tc / J - drift,
      time = gap <= 0 ? 0 : gain > 0 ? gap / gain : Infinity;
    if (late >= 0.01 || slipping !== 0 || time > 1) {
      [entering, y[I.lack], dueAt, weDue] = [k, late < 0.01 ? 0 : V - flow * due, t, we];
      return slipping === 0 && letGo(we, wt, sign(wt - wn) || 1);
    }
    const L = q.steelThickness / 2,
      Fo = (steel.k ** 2 / bulk / L ** 2) * time,
      work = (Tc * gap * time) / 2,
      flux = (toSteel * Tc * gap) / faces[k];
    const face =
      y[j] +
      (Fo < 1 / 3 ? 0.53192 * flux * sqrt(time / bulk) : ((flux * L) / steel.k) * (Fo / 2 + 1 / (18 * Fo)));
    [y[j], y[I.E], shiftEnergy[k]] = [
      y[j] + (toSteel * work) / (q.steelMass * steel.c),
      y[I.E] + (1 - toSteel) * work,
      shiftEnergy[k] + work,
    ];
    y[j + 1] = min(q.liningThickness, y[j + 1] + (b.damage.wearPerEnergy * work) / faces[k]);
    [y[j + 2], y[j + 3]] = [
      1 - (1 - y[j + 2]) * exp(-charring(face) * time),
      min(1, y[j + 3] + glazing(face) * time),
    ];
    return learn(time);
  }
  function engage() {
    const Tt = turbine(idle, 0),
      i = instant(),
      most = b.gears[0].holds.reduce((a, z) => (volume(z.clutch) > volume(a.clutch) ? z : a));
    const V = volume(most.clutch) + hu.passages - y[I.pass],
      J = control.turbineInertia;
    [neutral, teaches, y[I.pass]] = [false, false, hu.passages]; // teaches nothing
    enter(most, V, J, 0, Tt / J, { ...i, we: idle, wt: idle, Tt, sup: supply(i.o, idle, Tt) });
  }
  function shift(to: number) {
    const i = instant(),
      old = b.gears[gear].holds,
      enters = b.gears[to].holds.find((e) => !old.some((o) => o.clutch === e.clutch)),
      up = to > gear;
    gear = to;
    const wn = turns() * y[I.v],
      want = max(0, atTurbine(road(y[I.v] > 0 ? wish : max(0, wish)))),
      J2 = mass / turns() ** 2;
    const way = sign(i.wt - wn),
      T = min(want, turbine(fullThrottle(i.wt, pumpTorque(i.sup.p)), i.wt)),
      Je = engine.inertia + control.turbineInertia;
    [slipping, teaches] = [slipping && (way || slipping), enters ? up && T > 0 : teaches];
    if (enters)
      enter(
        enters,
        volume(enters.clutch),
        1 / (1 / Je + 1 / J2),
        wn,
        way * (T / Je + atTurbine(road(0)) / J2),
        i,
        learned[enters.clutch],
      );
  }
  function rates(i = instant()): number[] {
    // 4, 5, 6, 9, 10: rates of change with the engine on, in the order of the state
    const { o, sup } = i,
      h = depth(o.rho),
      lub = b.heat.lubrication,
      liquid = sup.liquid;
    const top = leak?.place === "pan-seam" ? surface(h, leak, 10) : h;
    const onPan = leak && onSump ? leakFlow(o.rho * g * max(0, top - leak.height), o.mu, o.rho) : 0,
      loss = o.rho * (sup.leak * liquid + onPan);
    const tilt = (s: number, r: number, L: number, to: number, w2 = ((g * PI) / L) * tanh((PI * h) / L)) => [
      r,
      w2 * (to - s) - 2 * zeta * sqrt(w2) * r,
    ];
    const soon = (lack: number) => max(0, lack) / 0.02,
      pass = min(sup.delivered * liquid, soon(hu.passages - y[I.pass]));
    const fed = min(sup.feed, sup.delivered - pass / max(1e-9, liquid)) * liquid,
      conv = min(fed, soon(hu.converter - y[I.conv]));
    const lines = min(fed - conv, soon(hu.coolerAndLines - y[I.lines])),
      refill = pass + conv + lines;
    const flight =
      max(0, (sup.clutch + sup.feed - sup.relief - sup.leak) * liquid - refill) - returning(o.mu);
    const c1 = max(1e-9, sup.cooler * liquid * o.rho * o.c),
      c2 = b.heat.coolantFlowCapacity,
      low = min(c1, c2),
      ratio = low / max(c1, c2);
    const x = exp((-b.heat.coolerConductance / low) * (1 - ratio)),
      cooled = ((low * (1 - x)) / (1 - ratio * x)) * (o.T - y[I.coolant]);
    const film =
      lub.airCoefficient +
      (lub.fullCoefficient - lub.airCoefficient) * sqrt(clamp((sup.lube * liquid) / lub.fullFlow, 0, 1));
    let heat =
      i.Tp * i.we -
      (i.Tt - i.Tlu) * i.wt +
      pumpTorque(sup.p) * i.we +
      (1 - eta) * abs(slipping !== 0 ? i.Tc * (i.wt - i.slip) : i.Tt * i.wt);
    heat -= cooled + (b.heat.caseStill + b.heat.casePerSpeed * y[I.v]) * (o.T - ambient) + loss * energy(o.T);
    const plates = clutches.flatMap((k, n) => {
      const j = plate(n),
        q = n === i.which ? abs(i.Tc * i.slip) : n === lu ? i.Tlu * i.slip : 0,
        warm = y[j] - o.T;
      const out = q === 0 && abs(warm) < 0.5 ? 0 : film * k.coolingArea * warm;
      const face = y[j] + ((toSteel * q) / faces[n]) * (k.steelThickness / 6 / steel.k),
        wear = (b.damage.wearPerEnergy * q) / faces[n];
      heat += (1 - toSteel) * q + out;
      return [
        (toSteel * q - out) / (k.steelMass * steel.c),
        y[j + 1] < k.liningThickness ? wear : 0,
        ...burning(j, face),
        q,
      ];
    });
    const fore = (i.acc + g * sin(theta)) / (g * cos(theta)),
      aging = 2 ** ((o.T * 1.8 - 459.67 - 175) / 20) / ((100000 / 30) * 3600);
    return [
      -loss,
      heat,
      conv,
      lines,
      pass,
      flight,
      ...tilt(y[I.sx], y[I.rx], pan.length, fore),
      ...tilt(y[I.sy], y[I.ry], pan.width, lateral / g),
      ((drawnGas(h, sup.drawn) - y[I.gas]) * sup.drawn) / hu.suction,
      (b.heat.coolantWarm - y[I.coolant]) / b.heat.coolantWarmTime,
      i.acc,
      i.dwe,
      i.dwt,
      aging,
      loss,
      entering >= 0 ? -filling(entering, sup) : 0,
      open() ? 1 : 0,
      ...plates,
    ];
  }
  const burning = (j: number, T: number) => [(1 - y[j + 2]) * charring(T), y[j + 3] < 1 ? glazing(T) : 0];
  function parkedRates(): number[] {
    // 6, 9, 10: the same while parked; the plates share the fluid's temperature
    const o = oil(),
      above = leak ? max(0, depth(o.rho) - leak.height) : 0,
      plates = clutches.reduce((sum, k) => sum + k.steelMass * steel.c, 0);
    const inLine =
      leak && !onSump && leak.place !== "shaft-seal" && leak.lineAbove > 0
        ? leak.columnHeight * max(0, 1 - (hu.coolerAndLines - y[I.lines]) / leak.lineAbove)
        : 0;
    const Q = leakFlow(o.rho * g * max(inLine, above), o.mu, o.rho, false),
      all = y[I.m] * o.c + b.heat.metal,
      loss = o.rho * Q;
    return [
      -loss,
      (-b.heat.caseStill * (o.T - ambient) * all) / (all + plates) - loss * energy(o.T),
      -max(0, y[I.conv] - hu.converter * (1 - hu.converterDrains)) / hu.converterDrainTime,
      inLine > above ? -Q : 0,
      -max(0, y[I.pass] - hu.passages * (1 - hu.passagesDrain)) / hu.passagesDrainTime,
      -returning(o.mu),
      0,
      0,
      0,
      0,
      0,
      (ambient - y[I.coolant]) / b.heat.coolantCoolTime,
      0,
      0,
      0,
      0,
      loss,
      0,
      0,
      ...clutches.flatMap((_, n) => [0, 0, ...burning(plate(n), o.T), 0]),
    ];
  }
  function step(end: number, most: number, f: () => number[], k1 = f()) {
    const y0 = y,
      t0 = t,
      h = min(end - t, t < opens - 1e-9 ? opens - t : Infinity, most);
    [y, t] = [k1.map((k, n) => y0[n] + (h / 2) * k), t0 + h / 2];
    [y, t] = [f().map((k, n) => y0[n] + h * k), t0 + h];
    return h;
  }
  const events: Record<string, number | undefined> = {},
    since: Record<string, number | undefined> = {}; // 11
  const sample = () => ({ t, temperature: temperature(), mass: y[I.m], lost: y[I.lost] }),
    samples = [sample()].slice(1);
  function watchAll(i: ReturnType<typeof instant>, behind = schedule() - y[I.v], T = i.o.T, v = y[I.v]) {
    slid = (slid && behind > 0.5) || slipping !== 0;
    const level =
      depth(i.o.rho) < stick.low &&
      v === 0 &&
      T > 348.15 &&
      T < 363.15 &&
      max(abs(theta), abs(y[I.sx])) < 0.01;
    const now: [string, boolean, number][] = [
      ["levelLow", level, 5],
      ["overfull", depth(i.o.rho) > pan.height, 30],
      ["firstGulp", y[I.gas] > 0.1, 0.3],
      ["tooHot", T > 403.15, 10],
      ["coolerHalf", i.sup.feed < 0.5 * i.sup.full && T > 333.15, 3],
      ["lockupSlip", i.saturated && i.slip > 100 * rpm, 3],
      ["pressureLow", i.sup.p < 0.97 * i.sup.set, 0.5],
      ["firstFlare", y[I.lack] > 0 && i.we - max(weDue, turns() * v) > 200 * rpm, 0],
      [
        "firstSlip",
        abs(slipping * i.slip) > 50 * rpm && y[I.lack] <= 0 && (entering < 0 || t >= dueAt + 1),
        1,
      ],
      ["fallsBehind", slid && behind > 3, 5],
      ["noDrive", slid && v < 0.5 && schedule() > 3, 10],
    ];
    clutches.forEach((k, n) =>
      now.push(
        ...[0.1, 0.5, 1].map((D): [string, boolean, number] => [`damage ${D} ${k.name}`, damage(n) >= D, 0]),
      ),
    );
    for (const [name, on, lasting] of now)
      if ((since[name] = on ? (since[name] ?? t) : undefined) !== undefined && t - since[name] >= lasting)
        events[name] ??= since[name];
  }
  function advance(end: number) {
    // The walk: drive, park, trip after trip
    while (t < end - 1e-9) {
      const i = instant(),
        letsGo = !neutral && slipping === 0 && i.Tt > holds(i.sup.p, 0).torque;
      if (letsGo && letGo(i.we, i.wt)) continue;
      if (t >= (samples.at(-1)?.t ?? -1) + 0.1) samples.push(sample());
      watchAll(i);
      const stopsIn = i.acc < 0 && y[I.v] > 0 ? max(1e-9, -y[I.v] / i.acc) : Infinity;
      const calm =
        abs(y[I.gas] - pickup.baseGas) < 1e-6 &&
        y[I.conv] + y[I.lines] + y[I.pass] > hu.converter + hu.coolerAndLines + hu.passages - 1e-9;
      const most =
        slipping !== 0 ? (slipTime < 1 ? 0.0005 : 0.002) : calm ? 0.1 : i.sup.p < i.sup.set ? 0.0025 : 0.01;
      const h = step(end, min(stopsIn, fine * most), rates, rates(i));
      [slipTime, lockSlipTime] = [
        slipTime + h,
        lockSlipTime > 10 || (i.saturated && i.slip > 150 * rpm) ? lockSlipTime + h : 0,
      ];
      [y[I.v], y[I.we]] = [h === stopsIn ? 0 : max(0, y[I.v]), max(idle, y[I.we])];
      const s = y[I.wt] - turns() * y[I.v],
        over = y[I.lack] <= 0 && slipping * s <= 0;
      if (entering >= 0 && (over || t >= dueAt + 1 - 1e-9)) learn(t - dueAt);
      [slipping, entering] = over ? [0, -1] : [y[I.lack] > 0 ? sign(s) || slipping : slipping, entering];
    }
  }
  function park(end: number) {
    for (const n of [I.sx, I.rx, I.sy, I.ry, I.v, I.lack, I.gas]) y[n] = n === I.gas ? pickup.baseGas : 0;
    [entering, gear, neutral, slipping, slid, lockOn, lockSlipTime, wish, theta, lateral, from, slope] = [
      -1,
      0,
      true,
      0,
      false,
      false,
      0,
      0,
      0,
      0,
      0,
      0,
    ];
    const before = y[I.E],
      given = (T: number) =>
        clutches.reduce((sum, k, n) => sum + k.steelMass * steel.c * (y[plate(n)] - T), before);
    y[I.E] = given(
      root(
        (T) => {
          y[I.E] = given(T);
          return temperature() - T;
        },
        200,
        1500,
      ),
    );
    for (const start = t; t < end - 1e-9; samples.push(sample())) {
      step(end, fine * (t - start < 200 ? 0.5 : 10), parkedRates);
      clutches.forEach((_, n) => (y[plate(n)] = temperature()));
    }
  }
  Object.assign(y, {
    [I.m]: density(b.fillTemperature) * (b.fill - fillShort),
    [I.conv]: hu.converter,
    [I.lines]: hu.coolerAndLines,
  });
  [y[I.pass], y[I.coolant], y[I.E]] = [
    hu.passages,
    ambient,
    y[I.m] * energy(ambient) + b.heat.metal * (ambient - 273.15),
  ];
  for (const { startsAt, ticks: q } of trips) {
    park(startsAt);
    theta = atan(q.grade[0]);
    advance(t + 2);
    engage();
    for (let n = 0; n < q.count && t < until; n++) {
      const dt = q.dt[n],
        v = y[I.v],
        plan = b.shiftPlan,
        T = temperature();
      [slope, tickAt, theta, lateral] = [(q.speed[n] - from) / dt, t, atan(q.grade[n]), q.lateral[n]];
      wish = min((q.speed[n] - v) / dt, max(0, slope) + 1);
      const stretch = 1 + (plan.stretch * max(0, wish)) / g;
      if (gear < b.gears.length - 1 && v > plan.up[gear] * stretch) shift(gear + 1);
      else if (gear > 0 && v < plan.down[gear - 1] * stretch) shift(gear - 1);
      const off =
        gear < lockUp.fromGear || T < lockUp.fluidAbove || (T > lockUp.hot && lockUp.whenHot === "releases");
      lockOn =
        !off &&
        slipping === 0 &&
        lockSlipTime <= 10 &&
        (v > lockUp.onAbove || (lockOn && v >= lockUp.offBelow));
      advance(tickAt + dt);
      from = q.speed[n];
      samples.push(sample());
    }
  }
  park(end.parkedUntil ?? t + 1e-6);
  return {
    events,
    samples,
    slipEnergy: clutches.map((_, n) => y[plate(n) + 4]),
    shiftEnergy,
    damage: clutches.map((_, n) => damage(n)),
  };
}
