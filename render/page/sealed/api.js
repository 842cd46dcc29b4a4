// What the page asks when it is one file without a server: it answers from what is written into it,
// and keeps readings and ticks in this browser. It stands in place of the module that asks a server.
import * as alone from './planner_alone.js';

const held = JSON.parse(document.getElementById('held').textContent);
const name = 'fusewright bench ' + held.of;

export const live = false;

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
  if (found === undefined) throw new Error('This page is one file and has no server to ask: run fusewright serve with the design.');
  return found;
}

export async function send(method, path, body) {
  if (method === 'PUT' && path === '/api/kept') return answer(keep(body));
  if (path === '/api/outlook') return alone.answer(held.planner, held.model.planner, body);
  throw new Error('This page is one file and has no server to ask: run fusewright serve with the design.');
}

function circuit({of, in: situation}) {
  const found = held.circuits[of + '|' + (situation || held.worst[of])];
  if (!found) throw new Error('This page is one file: it holds each circuit in the situation in which it loses most. Run fusewright serve with the design for the others.');
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
