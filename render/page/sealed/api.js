// What the page asks when it is one file without a server: it answers from what is written into it,
// and keeps readings and ticks in this browser. It stands in place of the module that asks a server.
const held = JSON.parse(document.getElementById('held').textContent);
const elsewhere = 'fusewright serve ' + held.model.heading.file;
const name = 'fusewright bench ' + held.of;

export const live = false;
export const speeds = held.planner.speeds;
export const parkedH = held.planner.parkedH;

export async function model() { return held.model; }
export async function drawing() {
  if (!held.drawing) throw new Error('The harness is too large for one sheet: schematic.pdf shows it in parts.');
  return held.drawing;
}
export function follow() { /* nothing changes */ }

export async function get(path, parameters = {}) {
  if (path === '/api/circuit') return circuit(parameters);
  if (path === '/api/bench') return {test: held.bench, kept: answer(kept())};
  const found = held.answers[path];
  if (found === undefined) throw new Error(`This page is one file and has no server to ask: ${elsewhere} answers.`);
  return found;
}

export async function send(method, path, body) {
  if (method === 'PUT' && path === '/api/kept') return answer(keep(body));
  if (path === '/api/outlook') return outlook(body);
  throw new Error(`This page is one file and has no server to ask: ${elsewhere} answers.`);
}

// value reads what stands at a place of the pool; see render/page/planner_alone.go.
function value(at) {
  const {pool} = held.planner, v = pool[at];
  if (!Array.isArray(v)) return v;
  if (!(v[0] < 0)) return v.map(value);
  return Object.fromEntries(pool[-1 - v[0]].map((name, i) => [name, value(v[i + 1])]));
}

// placeOf is the place of the answer to a state; undefined = the program was not asked beforehand.
function placeOf(state) {
  const {moves, words, states} = held.planner;
  const start = held.model.planner.starts.find((s) => s.id === state.start).state;
  const was = value(words[state.start]), now = {...was, ...state.set}, free = moves[state.start] || [];
  if (state.airC !== start.airC || state.charge !== start.charge || Object.keys(now).some((id) => now[id] !== was[id] && !free.includes(id))) return undefined;
  return states[[state.start, state.key === 'on' ? state.speedPerMin : 'off', ...free.map((id) => now[id])].join('\n')];
}

// holds tells whether a state is answered.
export function holds(state) { return placeOf(state) !== undefined && parkedH.includes(state.parkedH); }

function outlook(state) {
  if (!holds(state)) throw new Error(`This page is one file, which was not asked this beforehand: ${elsewhere} answers it.`);
  const answer = value(placeOf(state));
  answer.big.push(value(held.planner.stands[state.airC][parkedH.indexOf(state.parkedH)]));
  return {...answer, state};
}

function circuit({of, in: situation}) {
  const found = held.circuits[of + '|' + (situation || held.worst[of])];
  if (!found) throw new Error('This page is one file: it holds each circuit in the situation in which it loses most. ' + elsewhere + ' shows the others.');
  return found;
}

function kept() {
  try { return {readings: {}, elsewhere: [], cut: {}, ...JSON.parse(localStorage.getItem(name) || '{}')}; } catch { return {readings: {}, elsewhere: [], cut: {}}; }
}

// keep takes changes as the server does: what is not named stays.
function keep(change) {
  const now = kept();
  for (const word of ['meter', 'by', 'date']) if (change[word] !== undefined) now[word] = change[word];
  for (const r of change.readings || []) {
    if (r.of) now.readings[r.in + '|' + r.of] = r.reads;
    else now.elsewhere = [...now.elsewhere.filter((e) => e.check !== r.check || e.in !== r.in), ...(r.reads ? [r] : [])];
  }
  for (const t of change.cut || []) now.cut[t.wire] = t.done ? t.of : '';
  try { localStorage.setItem(name, JSON.stringify(now)); } catch { throw new Error('This browser keeps nothing: write the readings down.'); }
  return now;
}

// answer is what is kept by the numbers of the test.
function answer(now) {
  const readings = {};
  for (const section of held.bench.sections) {
    for (const check of section.checks) {
      const reads = now.readings[section.in + '|' + check.of];
      if (reads) readings[check.number] = reads;
    }
  }
  const ticked = held.bench.cut.filter((w) => now.cut[w.wire]);
  return {file: '', meter: now.meter || '', by: now.by || '', date: now.date || '', readings, elsewhere: now.elsewhere,
    cut: ticked.filter((w) => now.cut[w.wire] === w.of).map((w) => w.wire), changed: ticked.filter((w) => now.cut[w.wire] !== w.of).map((w) => w.wire), stale: []};
}
