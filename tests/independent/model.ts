// What changes with time, by one rule (midpoint) and short steps, everything evaluated at every step: plain rather than fast.
// With laws.ts it is the model of DEVELOPERS.md once more; numbers in comments are sections of that page.
import { type Unit } from "../../src/physics/build.ts";
import { I, clamp, g, lawsOf, planeHeight, plate, root, steel, toSteel, turbine, type Instant, type Run, type State } from "./laws.ts";

type Column = ArrayLike<number>;
interface Ticks { readonly dt: Column; readonly speed: Column; readonly grade: Column; readonly lateral: Column; readonly count: number }
export interface Drive { readonly trips: readonly { readonly startsAt: number; readonly ticks: Ticks }[] }
/** Seconds, kelvin, m³ at fill temperature; `step` scales every step of time; no tick begins after `until`, then it stands. */
export interface Options { leakOpensAt: number; ambient: number; fillShort?: number; step?: number; until?: number; parkedUntil?: number }
/** The run at a time [s]: kelvin, kg, kg, m³/s, m/s, share, Pa, rad/s at the turbine. */
export interface Sample { t: number; temperature: number; mass: number; lost: number; leak: number; v: number; gas: number; p: number; slip: number }

/** Drives the unit over the trips from t = 0. Events: seconds at which their condition began. */
export function independentRun(unit: Unit, drive: Drive, options: Options) {
  const run: Run = {
    t: 0, gear: 0, neutral: true, slipping: 0, slipTime: 0, lockOn: false, trim: 0, open: options.leakOpensAt <= 0,
    wish: 0, theta: 0, schedule: 0, slope: 0, tickAt: 0,
  };
  const laws = lawsOf(unit, run), { instant, clutches, temperature, turns, mass } = laws;
  const { build: b, leak } = unit, fine = options.step ?? 1, { pan, pickup } = b.sump, hu = b.holdUp, idle = b.engine.idleSpeed;
  const lu = b.clutches.length, area = pan.free * pan.length * pan.width, control = b.shiftControl, rpm = Math.PI / 30;
  const faceArea = clutches.map((k) => k.faces * Math.PI * (k.outer ** 2 - k.inner ** 2));
  const plates = clutches.reduce((sum, k) => sum + k.steelMass * steel.c, 0);
  const y: State = new Float64Array(plate(clutches.length)), samples: Sample[] = [];
  const events: Record<string, number | undefined> = {}, since: Record<string, number | undefined> = {};
  let lateral = 0, barred = false, lockSlipTime = 0, lastLook = -1;

  // 4, 6, 9, 10: rates of change with the engine on.
  function rates(s: State, i: Instant): State {
    const d = new Float64Array(s.length), { o, sup } = i, h = laws.inPan(s, o.rho) / area, sin = Math.sin(run.theta), cos = Math.cos(run.theta);
    const onPan = leak?.place === "pan" ? laws.leakFlow(s, o.rho * g * Math.max(0, h - leak.height), o.mu, o.rho, true) : 0;
    const loss = o.rho * (sup.leak * sup.liquid + onPan);
    const tilts = [[I.sx, I.rx, pan.length, (i.acc + g * sin) / (g * cos)], [I.sy, I.ry, pan.width, lateral / g]] as const;
    for (const [slope, rate, L, target] of tilts) {
      const w = Math.sqrt(((g * Math.PI) / L) * Math.tanh((Math.PI * h) / L));
      d[slope] = s[rate];
      d[rate] = w * w * (target - s[slope]) - 2 * b.sump.sloshDamping * w * s[rate];
    }
    const z = planeHeight(h, s[I.sx] * pan.length, s[I.sy] * pan.width, pan.height);
    const under = z - s[I.sx] * (pickup.x - pan.length / 2) - s[I.sy] * (pickup.y - pan.width / 2) - pickup.height;
    const Q = sup.drawn, rim = 1.5 * (Q / (pickup.rim * Math.sqrt(g))) ** (2 / 3), onset = Math.max(0.69 * (Q * Q / g) ** 0.2, 1.05 * rim);
    let gas = h <= 0 || under <= 0 ? 1 : 1 - (1 - pickup.weirGas) * (under / rim) ** 1.5;
    if (h > 0 && under >= rim) gas = pickup.baseGas + Math.max(0, (onset - under) / (onset - rim)) * (pickup.weirGas - pickup.baseGas);
    d[I.gas] = ((gas - s[I.gas]) * Q) / hu.suction;

    const soon = (lack: number) => Math.max(0, lack) / 0.1, all = (sup.clutch + sup.feed) * sup.liquid;
    d[I.pass] = Math.min(all, soon(hu.passages - s[I.pass]));
    const rest = Math.min(sup.feed * sup.liquid, all - d[I.pass]!);
    d[I.conv] = Math.min(rest, soon(hu.converter - s[I.conv]));
    d[I.lines] = Math.min(rest - d[I.conv]!, soon(hu.coolerAndLines - s[I.lines]));
    const into = (sup.clutch + sup.feed - sup.relief - sup.leak) * sup.liquid - d[I.pass]! - d[I.conv]! - d[I.lines]!;
    d[I.flight] = Math.max(0, into) - s[I.flight] / laws.returnTime(o.mu);
    d[I.coolant] = (b.heat.coolantWarm - s[I.coolant]) / b.heat.coolantWarmTime;
    d[I.age] = 2 ** ((o.T * 1.8 - 459.67 - 175) / 20) / ((100000 / 30) * 3600);
    Object.assign(d, { [I.m]: -loss, [I.lost]: loss, [I.leakAge]: run.open ? 1 : 0, [I.v]: i.acc, [I.we]: i.dwe, [I.wt]: i.dwt });

    const c1 = Math.max(1e-9, sup.cooler * o.rho * o.c), c2 = b.heat.coolantFlowCapacity, low = Math.min(c1, c2), ratio = low / Math.max(c1, c2);
    const x = Math.exp((-b.heat.coolerConductance / low) * (1 - ratio)), effect = (1 - x) / (1 - ratio * x);
    const lub = b.heat.lubrication, film = lub.airCoefficient + (lub.fullCoefficient - lub.airCoefficient) * Math.sqrt(clamp(sup.lube / lub.fullFlow, 0, 1));
    const throughGears = run.slipping ? i.Tc * (i.wt - i.slip) : i.Tt * i.wt;
    let heat = i.Tp * i.we - (i.Tt - i.Tlu) * i.wt + laws.pumpTorque(sup.p) * i.we + (1 - b.gearEfficiency) * Math.abs(throughGears);
    heat -= (b.heat.caseStill + b.heat.casePerSpeed * s[I.v]) * (o.T - options.ambient) + low * effect * (o.T - s[I.coolant]);
    clutches.forEach((k, n) => {
      const j = plate(n), q = n === i.which ? Math.abs(i.Tc * i.slip) : n === lu ? i.Tlu * i.slip : 0, out = film * k.coolingArea * (s[j]! - o.T);
      const face = s[j]! + ((q / faceArea[n]!) * (k.steelThickness / 2)) / (3 * steel.k);
      d[j] = (toSteel * q - out) / (k.steelMass * steel.c);
      d[j + 1] = s[j + 1]! < k.liningThickness ? (b.damage.wearPerEnergy * q) / faceArea[n]! : 0;
      d[j + 2] = (1 - s[j + 2]!) * laws.charring(face);
      d[j + 3] = s[j + 3]! < 1 ? laws.glazing(face) : 0;
      d[j + 4] = q;
      heat += (1 - toSteel) * q + out;
    });
    d[I.E] = heat - loss * laws.energy(o.T - 273.15);
    return d;
  }
  // 6, 9, 10: rates of change while parked.
  function parkedRates(s: State): State {
    const d = new Float64Array(s.length), o = laws.oilOf(s), above = leak ? Math.max(0, laws.inPan(s, o.rho) / area - leak.height) : 0;
    d[I.flight] = -s[I.flight] / laws.returnTime(o.mu);
    d[I.conv] = -Math.max(0, s[I.conv] - hu.converter * (1 - hu.converterDrains)) / hu.converterDrainTime;
    d[I.pass] = -Math.max(0, s[I.pass] - hu.passages * (1 - hu.passagesDrain)) / hu.passagesDrainTime;
    d[I.coolant] = (options.ambient - s[I.coolant]) / b.heat.coolantCoolTime;
    const inLine = leak && leak.lineAbove > 0 ? leak.columnHeight * Math.max(0, 1 - (hu.coolerAndLines - s[I.lines]) / leak.lineAbove) : 0;
    const Q = laws.leakFlow(s, o.rho * g * Math.max(inLine, above), o.mu, o.rho, false), all = s[I.m] * o.c + b.heat.metal;
    d[I.lines] = inLine > above ? -Q : 0;
    [d[I.m], d[I.lost]] = [-o.rho * Q, o.rho * Q];
    d[I.E] = (-b.heat.caseStill * (o.T - options.ambient) * all) / (all + plates) - o.rho * Q * laws.energy(o.T - 273.15);
    clutches.forEach((_, n) => {
      d[plate(n) + 2] = (1 - s[plate(n) + 2]!) * laws.charring(o.T);
      d[plate(n) + 3] = s[plate(n) + 3]! < 1 ? laws.glazing(o.T) : 0;
    });
    return d;
  }

  // 8 Shifts: by how much an element's filling is late; then two inertias that a clutch brings together.
  const volume = (k: number) => clutches[k]!.deadVolume + clutches[k]!.pistonArea * clutches[k]!.stroke;
  function lateBy(k: number, i: Instant, lack: number): number {
    const q = clutches[k]!, s = i.sup, kiss = q.spring / q.pistonArea, A = (q.fillDischarge * Math.PI * q.fillOrifice ** 2) / 4;
    const through = (p: number, mix: number) => A * Math.sqrt((2 * Math.max(0, p - kiss)) / mix), flow = (p: number) => through(p, s.mix);
    const p = s.spare(s.p) >= flow(s.p) ? s.p : s.p > kiss && s.spare(kiss) > 0 ? root((x) => s.spare(x) - flow(x), kiss, s.p) : kiss;
    const sound = 1 - laws.supply(y, i.o, i.we, i.Tt, pickup.baseGas).inLine(s.set);
    const time = Math.min(20, (volume(k) + lack) / Math.max(1e-30, flow(p) * s.liquid));
    return Math.max(0, time - volume(k) / (through(s.set, i.o.rho * sound) * sound));
  }
  interface Closing { k: number; share: number; p: number; turn: number; flare: number; J: number; drift: number }
  /** Closes element k over the slip `turn` + `flare`; drift is what the slip would grow by [rad/s²] without it. Infinite if it cannot. */
  function close({ k, share, p, turn, flare, J, drift }: Closing): number {
    const q = clutches[k]!, j = plate(k), slip = turn + flare, asked = Math.max(0, J * (turn / control.targetTime + drift));
    const perNewton = laws.friction(k, turn / 2 / share, y[j]!) * q.faces * ((q.outer + q.inner) / 2);
    const press = Math.min(p, ((asked * share) / perNewton + q.spring) / q.pistonArea + run.trim);
    const Tc = laws.capacity(k, press, slip / 2 / share, y[j]!, laws.left(y, k)) / share, gain = Tc / J - drift, time = gain > 0 ? slip / gain : Infinity;
    if (time > 2 || slip <= 0) return time;
    const work = (Tc * slip * time) / 2, flux = (2 * work * toSteel) / (faceArea[k]! * time);
    const face = y[j]! + (0.53192 * flux * Math.sqrt((steel.k / (steel.rho * steel.c)) * time)) / steel.k;
    y[j]! += (toSteel * work) / (q.steelMass * steel.c);
    y[I.E] += (1 - toSteel) * work;
    y[j + 1] = Math.min(q.liningThickness, y[j + 1]! + (b.damage.wearPerEnergy * work) / faceArea[k]!);
    y[j + 2] = 1 - (1 - y[j + 2]!) * Math.exp(-laws.charring(face) * time);
    y[j + 3] = Math.min(1, y[j + 3]! + laws.glazing(face) * time);
    return time;
  }
  function letGo(we: number, wt: number) {
    Object.assign(run, { slipping: wt >= turns() * y[I.v] ? 1 : -1, slipTime: 0, lockOn: false });
    [y[I.we], y[I.wt]] = [we, wt];
  }
  function engage() {
    const o = laws.oilOf(y), Tt = turbine(b.converter.scale, idle, 0), sup = laws.supply(y, o, idle, Tt), J = control.turbineInertia;
    const { clutch: k, share } = b.gears[0]!.holds.reduce((a, z) => (volume(z.clutch) > volume(a.clutch) ? z : a));
    run.neutral = false;
    if (close({ k, share, p: sup.p, turn: idle, flare: 0, J, drift: Tt / J }) > 2) letGo(idle, idle);
  }
  function shift(to: number) {
    const i = instant(y), from = run.gear, v = y[I.v], nOld = turns(), nNew = turns(to), Je = b.engine.inertia + control.turbineInertia;
    run.gear = to;
    if (run.slipping) return;
    const { clutch: k, share } = b.gears[to]!.holds.find((e) => !b.gears[from]!.holds.some((o) => o.clutch === e.clutch))!;
    const T = Math.max(0, laws.atTurbine(laws.road(run.wish, v), nNew)), late = lateBy(k, i, 0), load = laws.atTurbine(laws.road(0, v), nNew);
    const flare = clamp((T * late) / Je, 0, Math.max(0, laws.top - i.wt)), J2 = mass / nNew ** 2, J = 1 / (1 / Je + 1 / J2);
    const time = close({ k, share, p: i.sup.p, turn: Math.abs(nOld - nNew) * v, flare, J, drift: T / Je + load / J2 });
    const error = (Math.min(2, time) + late - control.targetTime) / control.targetTime;
    run.trim = clamp(run.trim + control.trimGain * error, -control.trimLimit, control.trimLimit);
    if (time > 2) letGo(Math.max(i.we, i.wt + flare), i.wt + flare);
  }

  // 11 Events, and the walk.
  function watch(name: string, on: boolean, need: number) {
    since[name] = on ? (since[name] ?? run.t) : undefined;
    if (on && run.t - since[name]! >= need) events[name] ??= since[name];
  }
  function look(i?: Instant) {
    lastLook = run.t;
    const more = { leak: i?.sup.leak ?? 0, p: i?.sup.p ?? 0, slip: i?.slip ?? 0 };
    samples.push({ t: run.t, temperature: temperature(y), mass: y[I.m], lost: y[I.lost], v: y[I.v], gas: y[I.gas], ...more });
  }
  function midpoint(h: number, k1: State, f: (s: State) => State) {
    const k2 = f(y.map((q, n) => q + (h / 2) * k1[n]!));
    for (let n = 0; n < y.length; n++) y[n]! += h * k2[n]!;
    run.t += h;
    if (!run.open && run.t >= options.leakOpensAt - 1e-9) run.open = true;
  }
  const toOpening = () => (run.open ? Infinity : options.leakOpensAt - run.t);
  function advance(until: number) {
    while (run.t < until - 1e-9) {
      let i = instant(y);
      if (!run.neutral && !run.slipping && i.Tt > laws.holds(y, i.sup.p, 0).torque) {
        letGo(i.we, i.wt);
        i = instant(y);
      }
      if (run.t >= lastLook + 0.1) look(i);
      const lag = run.schedule + run.slope * (run.t - run.tickAt) - y[I.v], calm = Math.abs(y[I.gas] - pickup.baseGas) < 1e-6;
      watch("firstGulp", y[I.gas] > 0.1, 0.3);
      watch("pressureLow", i.sup.p < 0.97 * i.sup.set, 0.5);
      watch("coolerHalf", i.sup.feed < 0.5 * i.sup.full && i.o.T > 333.15, 3);
      watch("firstSlip", run.slipping !== 0 && Math.abs(i.slip) > 50 * rpm, 1);
      watch("lockupSlip", i.saturated && i.slip > 100 * rpm, 3);
      watch("overTemperature", i.o.T > 403.15, 10);
      watch("fallsBehind", !run.neutral && lag > 3, 5);
      clutches.forEach((k, n) => [0.1, 0.5, 1].forEach((D) => watch(`damage ${D} ${k.name}`, laws.damage(y, n) >= D, 0)));
      let h = Math.min(until - run.t, toOpening(), fine * (run.slipping ? 0.002 : calm ? 0.1 : 0.01));
      const stops = i.acc < 0 && y[I.v] > 0 && y[I.v] + i.acc * h <= 0;
      if (stops) h = Math.max(1e-9, -y[I.v] / i.acc);
      lockSlipTime = i.saturated && i.slip > 150 * rpm ? lockSlipTime + h : 0;
      barred ||= lockSlipTime > 10;
      const middle = run.t + h / 2;
      midpoint(h, rates(y, i), (s) => rates(s, instant(s, middle)));
      y[I.v] = stops ? 0 : Math.max(0, y[I.v]);
      if (!run.slipping) continue;
      run.slipTime += h;
      y[I.we] = Math.max(idle, y[I.we]);
      if (run.slipping * (y[I.wt] - turns() * y[I.v]) <= 0) run.slipping = 0;
    }
  }
  function park(until: number) {
    Object.assign(y, { [I.gas]: pickup.baseGas, [I.sx]: 0, [I.rx]: 0, [I.sy]: 0, [I.ry]: 0, [I.v]: 0, [I.we]: 0, [I.wt]: 0 });
    Object.assign(run, { slipping: 0, gear: 0, lockOn: false, neutral: true, theta: 0, wish: 0, schedule: 0, slope: 0 });
    [lateral, barred, lockSlipTime] = [0, false, 0];
    const inPlates = clutches.reduce((sum, k, n) => sum + k.steelMass * steel.c * y[plate(n)]!, 0), before = y[I.E];
    const share = (T: number) => temperature(Object.assign(y, { [I.E]: before + inPlates - plates * T })) - T;
    share(root(share, 200, 1500));
    for (const from = run.t; run.t < until - 1e-9; look()) {
      midpoint(Math.min(until - run.t, toOpening(), fine * (run.t - from < 200 ? 0.5 : 10)), parkedRates(y), parkedRates);
      clutches.forEach((_, n) => (y[plate(n)] = temperature(y)));
    }
  }

  const full = { [I.conv]: hu.converter, [I.lines]: hu.coolerAndLines, [I.pass]: hu.passages, [I.coolant]: options.ambient };
  Object.assign(y, full, { [I.m]: laws.density(b.fillTemperature) * (b.fill - (options.fillShort ?? 0)) });
  y[I.E] = y[I.m] * laws.energy(options.ambient - 273.15) + b.heat.metal * (options.ambient - 273.15);
  clutches.forEach((_, n) => (y[plate(n)] = options.ambient));
  for (const { startsAt, ticks: q } of drive.trips) {
    park(startsAt);
    advance(run.t + 2);
    engage();
    for (let n = 0; n < q.count && run.t < (options.until ?? Infinity); n++) {
      const dt = q.dt[n]!, slope = (q.speed[n]! - run.schedule) / dt, v = y[I.v], T = temperature(y), l = b.lockUp, plan = b.shiftPlan;
      Object.assign(run, { slope, tickAt: run.t, theta: Math.atan(q.grade[n]!), wish: Math.min((q.speed[n]! - v) / dt, Math.max(0, slope) + 1) });
      lateral = q.lateral[n]!;
      const stretch = 1 + (plan.stretch * Math.max(0, run.wish)) / g;
      if (run.gear < b.gears.length - 1 && v > plan.up[run.gear]! * stretch) shift(run.gear + 1);
      else if (run.gear > 0 && v < plan.down[run.gear - 1]! * stretch) shift(run.gear - 1);
      const off = run.gear < l.fromGear || T < l.fluidAbove || (T > l.hot && l.whenHot === "releases") || run.slipping !== 0 || barred;
      run.lockOn = !off && (v > l.onAbove || (run.lockOn && v >= l.offBelow));
      advance(run.tickAt + dt);
      run.schedule = q.speed[n]!;
      look(instant(y));
    }
  }
  park(options.parkedUntil ?? run.t + 1e-6);
  const slip = clutches.map((k, n) => ({ name: k.name, energy: y[plate(n) + 4]!, damage: laws.damage(y, n) }));
  return { events, samples, slip, slipEnergy: slip.slice(0, lu).reduce((sum, k) => sum + k.energy, 0), lost: y[I.lost], mass: y[I.m], trim: run.trim };
}
