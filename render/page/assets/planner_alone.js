// The planner without its program: answers from the table that is written into the page (see
// outlook.Table, which says what of it is exact). The answer has the shape that the server gives.

const minus = (text) => text.replace('-', '−');

// three prints three digits, as the program does.
function three(v) {
  if (v === 0) return '0';
  const digits = Math.max(0, 2 - Math.floor(Math.log10(Math.abs(v)) + 1e-9));
  return minus(v.toFixed(Math.min(digits, 6)));
}

function amps(v) {
  const a = Math.abs(v);
  return a >= 0.9995 || a === 0 ? three(v) + ' A' : three(v * 1000).replace(/\.?0+$/, (t) => t.startsWith('.') ? '' : t) + ' mA';
}

function lasting(h) {
  if (h >= 48) return [three(h / 24), 'days'];
  if (h >= 1) return [three(h), 'h'];
  return [three(h * 60), 'min'];
}

// between reads a value off points that ascend, straight from one to the next.
function between(points, x) {
  if (points.length === 0) return null;
  if (x <= points[0][0]) return points[0][1];
  for (let i = 1; i < points.length; i++) {
    const [a, u] = points[i - 1], [b, v] = points[i];
    if (x <= b) return u + (v - u) * (x - a) / (b - a);
  }
  return points[points.length - 1][1];
}

// giving is what the battery gives at an output: straight between the points and on from the last two, until
// it is nothing.
function giving(points, output) {
  const last = points.length - 1;
  if (last < 1) return last < 0 ? 0 : points[0][1];
  if (output <= points[last][0]) return Math.max(between(points, output), 0);
  const [[a, u], [b, v]] = points.slice(-2);
  return b > a ? Math.max(v + (output - b) * (v - u) / (b - a), 0) : Math.max(v, 0);
}

// hoursAt reads hours off a table by current, straight between logarithms: Peukert's law is.
function hoursAt(table, a) {
  const log = table.map(([x, h]) => [Math.log(x), Math.log(h)]);
  const h = between(log, Math.log(a));
  return h === null ? null : Math.exp(h);
}

// outputAt is the charging output at an engine speed.
export function outputAt(plan, rpm) {
  return plan.output.length === 0 || rpm < plan.output[0][0] ? 0 : between(plan.output, rpm);
}

// evenAt is the lowest speed from idle up at which output covers a demand; null = none.
function evenAt(plan, demand) {
  const idle = plan.marks && plan.marks.length > 0 ? plan.marks[0].rpm : 0;
  if (outputAt(plan, idle) >= demand) return idle;
  let before = [idle, outputAt(plan, idle)];
  for (const p of plan.output.filter((q) => q[0] > idle)) {
    if (p[1] >= demand) return before[0] + (p[0] - before[0]) * (demand - before[1]) / (p[1] - before[1]);
    before = p;
  }
  return null;
}

// answer answers a state: its start, key, engine speed, hours parked, and what is set otherwise than there.
export function answer(alone, plan, state) {
  const base = alone.answers[state.start] || Object.values(alone.answers)[0];
  const combos = alone.table.starts.find((s) => s.start === base.state.start);
  const words = {...base.words, ...state.set};
  const same = state.key === base.state.key && state.speedPerMin === base.state.speedPerMin && Object.entries(words).every(([id, w]) => base.words[id] === w);
  if (same) {
    const big = base.big.filter((b) => !b.label.startsWith('After ')).concat(parked(alone, state));
    return {...base, state, big};
  }
  const held = combos.held.filter((id) => words[id] !== base.words[id]);
  const n = number(plan, combos, words);
  const running = state.key === 'on' && state.speedPerMin > 0;
  const demand = (k) => state.key === 'on' && !running ? combos.stoppedA[k] : combos.demandA[k];
  const now = demand(n);
  const reckoned = {state, words, loads: [], fuses: [], wires: [], drawn: [], shed: [], says: [], big: [], partial: alone.inexact,
    outputA: running ? outputAt(plan, state.speedPerMin) : 0, demandA: now, runningA: combos.demandA[n], likelyA: null, vehicleA: combos.vehicleA[n]};
  if (held.length > 0 || now === null || state.key !== base.state.key) {
    return {...reckoned, trouble: held.length > 0 ? 'not reckoned beforehand: ' + held.join(', ') : state.key !== base.state.key
      ? 'the key is not turned on this page: begin with another situation' : 'none for this combination', big: parked(alone, state)};
  }
  reckoned.spareA = reckoned.outputA - now;
  reckoned.spareText = (reckoned.spareA > 0 ? '+' : '') + amps(reckoned.spareA);
  reckoned.demandText = amps(now);
  reckoned.runningText = amps(reckoned.runningA || 0);
  reckoned.evenRpm = state.key === 'on' ? evenAt(plan, combos.demandA[n]) : null;
  const drawn = running ? giving(combos.batteryA[n].running, reckoned.outputA) : combos.batteryA[n].stopped;
  reckoned.shed = shedding(alone, plan, combos, words, running ? reckoned.outputA : null, demand);
  reckoned.kept = base.kept;
  reckoned.says = sentences(plan, state, reckoned, running);
  reckoned.big = bigs(alone, plan, state, reckoned, running, drawn).concat(parked(alone, state));
  reckoned.drawn = plan.controls.filter((c) => words[c.id] !== undefined).map((c) => {
    const off = demand(number(plan, combos, {...words, [c.id]: c.words[0]}));
    const by = off === null ? 0 : now - off;
    return {id: c.id, name: c.title, text: by > 1e-6 ? amps(by) : '', on: by > 1e-6};
  });
  reckoned.drawn.push({name: `the ${plan.noun} itself`, text: amps(reckoned.vehicleA), on: true});
  if (running) reckoned.sets = sets(plan, combos, reckoned, n, words);
  return reckoned;
}

// number is the place of a combination in the table.
function number(plan, combos, words) {
  let n = 0, by = 1;
  for (const id of combos.controls) {
    const list = plan.controls.find((c) => c.id === id).words;
    n += by * Math.max(0, list.indexOf(words[id]));
    by *= list.length;
  }
  return n;
}

function sentences(plan, state, a, running) {
  const says = [running ? `At ${Math.round(state.speedPerMin)} rpm the charging system gives ${amps(a.outputA)} and ${amps(a.demandA)} is drawn.`
    : `With the engine stopped ${amps(a.demandA)} is drawn from the battery.`];
  if (state.key === 'on') {
    says.push(a.evenRpm === null ? 'No speed covers the demand.' : plan.marks && a.evenRpm <= plan.marks[0].rpm ? 'Output meets demand from idle on.'
      : `Output meets demand from ${Math.round(a.evenRpm)} rpm.`);
  }
  return says;
}

function bigs(alone, plan, state, a, running, drawn) {
  const split = (text) => { const [value, unit] = text.split(' '); return {value, unit}; };
  const list = [];
  if (running) list.push({label: a.spareA < 0 ? 'Short' : 'To spare', ...split(amps(a.spareA)), tone: a.spareA < 0 ? 'short' : 'spare'});
  else list.push({label: 'Out of the battery', ...split(amps(Math.max(drawn, 0)))});
  if (drawn > 1e-6 && alone.table.hours.length > 0) {
    const [value, unit] = lasting(hoursAt(alone.table.hours, drawn));
    list.push({label: 'A full battery covers it for', value, unit, note: `then it may not start: ${Math.round(alone.reserve * 100)} % is kept for that at 25 °C`});
  }
  if (running && a.spareA < 0) {
    const names = [];
    let even = '';
    for (const s of a.shed.filter((x) => !x.off)) {
      names.push(s.name);
      if (!s.short) { even = names.join(' and ') + ' off'; break; }
    }
    const above = a.evenRpm === null ? 'no speed covers it' : `keep above ${Math.round(a.evenRpm)} rpm`;
    list.push(even ? {label: 'To come even', value: even, note: a.evenRpm === null ? above : 'or ' + above} : {label: 'To come even', value: above, note: 'what may be switched off is not enough'});
  }
  for (const m of state.key === 'on' && plan.marks ? plan.marks : []) {
    if (m.rpm === state.speedPerMin) continue;
    const spare = outputAt(plan, m.rpm) - a.runningA;
    list.push({label: `The same at ${m.name}, ${m.rpm} rpm`, value: (spare > 0 ? '+' : '') + amps(spare), tone: spare < 0 ? 'short' : 'spare'});
  }
  return list;
}

function parked(alone, state) {
  const days = state.parkedH / 24;
  const label = `After ${state.parkedH < 48 ? state.parkedH + ' h' : Number(days.toFixed(1)) + ' days'} ${alone.parked}`;
  const charge = between(alone.table.stand, state.parkedH);
  if (charge === null) return [{label, value: 'not known', note: 'the design gives no capacity'}];
  const left = `${(charge * 100).toFixed(charge > 0.1 ? 0 : 1)} % left`;
  return [{label, value: charge >= alone.reserve ? 'starts, ' + left : 'may not start, ' + left, tone: charge >= alone.reserve ? '' : 'short',
    note: `everything off, ${alone.drain} drawn: starts for ${alone.days} from full`}];
}

function shedding(alone, plan, combos, words, output, demand) {
  let at = {...words};
  const steps = [], off = [];
  for (const step of alone.order) {
    const [[id, word]] = Object.entries(step.set);
    if (at[id] === word) { off.push({name: step.name, off: true}); continue; }
    const before = demand(number(plan, combos, at));
    at = {...at, [id]: word};
    const after = demand(number(plan, combos, at));
    if (after === null) break;
    const left = output === null ? after : output - after;
    steps.push({name: step.name, gains: amps(before - after), left: amps(left), short: output !== null && left < 0, set: step.set});
  }
  return [...steps, ...off];
}

// sets are the largest combinations that the output carries: what is on in one is not all on in another.
function sets(plan, combos, a, n, words) {
  const controls = combos.controls.map((id) => plan.controls.find((c) => c.id === id));
  const decode = (k) => controls.map((c) => { const i = k % c.words.length; k = Math.floor(k / c.words.length); return c.words[i]; });
  const carried = combos.demandA.map((d, k) => ({d, k, words: decode(k)})).filter((x) => x.d !== null && x.d <= a.outputA + 1e-9)
    .map((x) => ({...x, has: x.words.map((w, i) => w !== controls[i].words[0])}));
  const within = (x, y) => x !== y && x.has.every((on, i) => !on || y.has[i]) && y.has.some((on, i) => on && !x.has[i]);
  const largest = carried.filter((x) => !carried.some((y) => within(x, y)));
  const least = combos.demandA[number(plan, combos, Object.fromEntries(controls.map((c) => [c.id, c.words[0]])))];
  const row = (d, has, set) => ({has, draws: amps(d - least), spare: amps(a.outputA - d), short: d > a.outputA, set});
  return {capacity: amps(a.outputA - least), complete: largest.length <= 24, columns: controls.map((c) => ({name: c.title, a: ''})),
    rows: largest.slice(0, 24).map((x) => row(x.d, x.has, Object.fromEntries(controls.map((c, i) => [c.id, x.words[i]])))),
    now: row(combos.demandA[n], controls.map((c) => words[c.id] !== c.words[0]))};
}
