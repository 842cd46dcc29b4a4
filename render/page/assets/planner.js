// The view “Planner”: what is on by hand, engine speed, air, parking; charging output against demand;
// what may run together and what to switch off first. The server reckons; here it is asked and shown.
import {el, put} from './dom.js';
import {picture} from './planner_picture.js';
import {showBig, showSets, showShed, showLoads, showLoading} from './planner_tables.js';

export const id = 'planner', title = 'Planner';

let root, store, plan;
let state = null;    // what is asked, as render/page/planner.go has it
let answer = null;   // to the last question answered
let parts = {};      // elements that are filled anew
let asking = false, again = false, turns = 0;

export function mount(into, shared) {
  root = into;
  store = shared;
  store.on('state', () => {
    if (root.hidden || !plan || !state || address() === written()) return;
    state = fromAddress();
    fillControls();
    ask();
  });
  matchMedia('print').addEventListener('change', redraw);
}

// redraw fits the picture to another width, or to paper.
function redraw() { if (answer && !root.hidden) drawPicture(); }

export function shown() { if (answer) draw(); }

export async function update(model) {
  const turn = ++turns;
  if (!plan) put(root, el('p', {class: 'none', role: 'status'}, 'The states of the design are being worked out …'));
  try {
    const next = model.planner || await store.api.get('/api/planner');
    if (turn !== turns) return; // the design has changed meanwhile
    plan = next;
  } catch (e) {
    put(root, el('p', {class: 'problem', role: 'alert'}, e.message));
    return;
  }
  if (!plan || plan.starts.length === 0) {
    put(root, el('p', {class: 'none'}, 'The design has no situation to begin with.'));
    return;
  }
  state = fromAddress();
  build();
  fillControls();
  ask();
}

// The state in the address: from, key, rpm, air, parked, full, set. What is as in the start is left out.
const startOf = (id) => plan.starts.find((s) => s.id === id);

// firstStart is a situation with the engine running, the one that asks for most of what is given first.
function firstStart() { return plan.starts.find((s) => s.state.speedPerMin > 0 && !s.ride) || plan.starts[0]; }

function fromAddress() {
  const start = startOf(store.get('from')) || firstStart();
  const asked = {...start.state, set: {}};
  const number = (key, field) => {
    const value = store.get(key);
    if (value !== '' && Number.isFinite(Number(value))) asked[field] = Number(value);
  };
  number('rpm', 'speedPerMin');
  number('air', 'airC');
  number('parked', 'parkedH');
  number('full', 'charge');
  if (store.get('key')) asked.key = store.get('key');
  for (const pair of store.get('set').split('~').filter(Boolean)) {
    const at = pair.lastIndexOf('=');
    const control = plan.controls.find((c) => c.id === pair.slice(0, at));
    if (control && control.words.includes(pair.slice(at + 1))) asked.set[control.id] = pair.slice(at + 1);
  }
  return asked;
}

function values() {
  const start = startOf(state.start).state;
  const other = (field) => state[field] === start[field] ? '' : String(state[field]);
  return {from: state.start, key: other('key'), rpm: other('speedPerMin'), air: other('airC'), parked: other('parkedH'), full: other('charge'),
    set: Object.entries(state.set).map(([id, word]) => id + '=' + word).join('~')};
}

const keys = ['from', 'key', 'rpm', 'air', 'parked', 'full', 'set'];
const address = () => keys.map((k) => store.get(k)).join('\n');
function written() { const v = values(); return keys.map((k) => v[k]).join('\n'); }

// write puts the state into the address when the hand has come to rest: browsers take few changes a second.
let resting;
function write() {
  clearTimeout(resting);
  resting = setTimeout(() => store.set(values()), 250);
}

// ask asks for the state as it is; while an answer is under way only the last state waits.
async function ask() {
  if (asking) { again = true; return; }
  asking = true;
  do {
    again = false;
    try {
      answer = await store.api.send('POST', '/api/outlook', state);
      parts.problem.hidden = true;
    } catch (e) {
      tell(e.message);
      answer = null;
    }
    parts.grid.classList.toggle('unanswered', !answer);
    if (!again && answer) draw();
  } while (again);
  asking = false;
}

// held tells whether there is an answer to the state with some of it changed.
const held = (change) => store.api.holds({...state, ...change});
const canSet = (set) => held({set: {...state.set, ...set}});

// move changes some of the state, where there is an answer to that.
function move(change) {
  if (held(change)) state = {...state, ...change};
  else tell(`This page is one file, which was not asked this beforehand: fusewright serve ${store.model.heading.file} answers it.`);
  if (held({})) changed();
}

function tell(text) {
  parts.problem.hidden = false;
  put(parts.problem, text);
}

// changed asks again after a hand has moved something.
function changed() {
  fillControls();
  write();
  ask();
}

function build() {
  parts = {};
  const box = (name, heading, ...children) => {
    const h = el('h2', {id: 'planner-' + name}, heading);
    return el('section', {class: 'panel box ' + name, 'aria-labelledby': 'planner-' + name}, h, ...children);
  };
  const part = (name, tag = 'div', attributes = {}) => parts[name] = el(tag, {class: name, ...attributes});
  const select = el('select', {id: 'planner-start', onchange: (e) => begin(e.target.value)},
    group('Situations', plan.starts.filter((s) => !s.ride)), group('Legs of rides', plan.starts.filter((s) => s.ride)));
  parts.start = select;
  put(root,
    part('problem', 'p', {role: 'alert', hidden: true}),
    parts.grid = el('div', {class: plan.controls.length > 9 ? 'grid tall' : 'grid'},
      box('on', 'What is on',
        el('label', {class: 'begin', for: 'planner-start'}, 'Begin with', select),
        part('hands', 'ul'),
        part('rest', 'ul'),
        slider('speed', 'Engine speed', {min: 0, max: plan.mostRpm || 6000, step: 10}, 'speedPerMin', speedText, store.api.speeds),
        el('div', {class: 'marks'}, mark('stopped', 0), plan.marks && plan.marks.map((m) => mark(m.name, m.rpm))),
        store.api.live && slider('full', 'Battery at the start', {min: 0, max: 1, step: 0.01}, 'charge', (v) => v === 1 ? 'full' : Math.round(v * 100) + ' %'),
        store.api.live && slider('air', 'Air, and the battery with it', {min: -30, max: 50, step: 1}, 'airC', (v) => text(v, 0) + ' °C'),
        slider('parked', 'Then parked', {min: 0, max: 24 * 60, step: 12}, 'parkedH', parkedText, store.api.parkedH),
        part('foot', 'p'),
        el('button', {type: 'button', class: 'copy', onclick: copy}, 'Copy a link to this')),
      el('section', {class: 'panel box curve', 'aria-labelledby': 'planner-curve'},
        el('div', {class: 'head'}, el('h2', {id: 'planner-curve'}, 'Charging output against demand'), el('p', {class: 'basis'}, plan.basis)),
        part('chart', 'div', {'aria-hidden': 'true'}), part('says', 'p')),
      el('section', {class: 'panel box answers', 'aria-label': 'Answer'}, part('big')),
      box('together', 'What may run together', part('sets')),
      box('less', 'Switch off first', part('shed')),
      box('volts', 'Volts at each load', part('loads')),
      box('loading', 'How far fuses and wires are loaded', part('fuses'), part('wires'))));
  if (parts.watcher) parts.watcher.disconnect();
  parts.watcher = new ResizeObserver(redraw);
  parts.watcher.observe(parts.chart);
}

function group(label, starts) {
  return starts.length > 0 && el('optgroup', {label}, starts.map((s) => el('option', {value: s.id}, s.title)));
}

function begin(id) {
  state = {...startOf(id).state, parkedH: state.parkedH, set: {}};
  changed();
}

const text = (v, digits) => v.toFixed(digits).replace('-', '−');
const speedText = (v) => v > 0 ? Math.round(v) + ' rpm' : 'stopped';
function parkedText(h) { return h === 0 ? 'not at all' : h < 48 ? text(h, 0) + ' h' : text(h / 24, h % 24 ? 1 : 0) + ' d'; }

// slider is a range with its name and its value in words; of a list of values it has no others.
function slider(name, label, range, field, words, list) {
  const shows = el('output', {for: 'planner-' + name});
  if (list) range = {min: 0, max: list.length - 1, step: 1};
  const input = el('input', {type: 'range', id: 'planner-' + name, ...range, oninput: (e) => {
    const value = list ? list[e.target.value] : Number(e.target.value);
    move(field === 'speedPerMin' && value > 0 ? {[field]: value, key: 'on'} : {[field]: value});
    parts[name].fill();
  }});
  parts[name] = {input, fill: () => {
    const after = list && list.findIndex((v) => v >= state[field]);
    input.value = !list ? state[field] : after < 0 ? list.length - 1 : after;
    input.setAttribute('aria-valuetext', words(state[field]));
    put(shows, words(state[field]));
  }};
  return el('div', {class: 'slider'}, el('label', {for: 'planner-' + name}, label), shows, input);
}

function mark(name, rpm) {
  return el('button', {type: 'button', onclick: () => move(rpm > 0 ? {speedPerMin: rpm, key: 'on'} : {speedPerMin: 0})}, name);
}

async function copy() {
  store.set(values());
  try {
    await navigator.clipboard.writeText(location.href);
    store.say('The link is copied.');
  } catch {
    store.say('The link is in the address line.');
  }
}

// wordOf is what a control is set to: as asked, else as the last answer has it.
const wordOf = (control) => state.set[control.id] || (answer && answer.state.start === state.start && answer.words[control.id]) || '';

function fillControls() {
  parts.start.value = state.start;
  for (const name of ['speed', 'full', 'air', 'parked']) if (parts[name]) parts[name].fill();
}

// switchTo sets controls.
function switchTo(set) { move({set: {...state.set, ...set}}); }

// printed is what a hand is set to, on paper.
const printed = (word) => el('span', {class: 'printed', 'aria-hidden': 'true'}, word);

function hand(control, drawn) {
  const word = wordOf(control);
  const name = [control.title, control.ref && el('span', {class: 'ref'}, ' ' + control.ref)];
  const row = drawn.find((d) => d.id === control.id);
  const amps = el('span', {class: 'amps'}, row && row.text !== '0 A' ? row.text : '');
  const label = 'planner-hand-' + plan.controls.indexOf(control);
  const what = el('span', {class: 'what', id: label}, el('span', {}, name), control.note && el('small', {}, control.note));
  if (control.words.length === 2 && control.words[0] === 'off' && control.words[1] === 'on') {
    const other = {[control.id]: word === 'on' ? 'off' : 'on'};
    return el('li', {}, what, amps, el('button', {type: 'button', class: 'toggle', role: 'switch', 'aria-checked': String(word === 'on'), 'aria-labelledby': label,
      disabled: !canSet(other), onclick: () => switchTo(other)}, el('span', {})), printed(word));
  }
  const choose = el('select', {'aria-labelledby': label, onchange: (e) => switchTo({[control.id]: e.target.value})},
    control.words.map((w) => el('option', {value: w, disabled: !canSet({[control.id]: w})}, w)));
  choose.value = word;
  return el('li', {}, what, amps, choose);
}

function key() {
  const label = 'planner-hand-key', other = {key: state.key === 'on' ? 'off' : 'on', speedPerMin: 0};
  return el('li', {}, el('span', {class: 'what', id: label}, 'Ignition key'), el('span', {class: 'amps'}),
    el('button', {type: 'button', class: 'toggle', role: 'switch', 'aria-checked': String(state.key === 'on'), 'aria-labelledby': label,
      disabled: !held(other), onclick: () => move(other)}, el('span', {})), printed(state.key));
}

// refill replaces a list and leaves the focus where it was.
function refill(list, items) {
  const at = [...list.querySelectorAll('button, select')].indexOf(document.activeElement);
  put(list, items);
  if (at >= 0) list.querySelectorAll('button, select')[at].focus();
}

// why leads from what is above its limit to what that limit is made of.
function why(over, of) {
  return over && store.api.live && [' ', el('button', {type: 'button', class: 'link', 'aria-label': 'Why: ' + of, onclick: () => store.set({view: 'why', of})}, 'why')];
}

function drawPicture() { picture(parts.chart, plan, state, answer); }

function draw() {
  refill(parts.hands, [key(), ...plan.controls.map((c) => hand(c, answer.drawn))]);
  put(parts.rest, answer.drawn.filter((d) => !d.id).map((d) =>
    el('li', {}, el('span', {class: 'what'}, d.name), el('span', {class: 'amps'}, d.text), el('span', {}))));
  if (answer.trouble) {
    put(parts.says, 'There is no operating point: ' + answer.trouble + '.');
  } else {
    put(parts.says, answer.says.join(' '));
  }
  put(parts.foot, 'Wires are reckoned at the temperatures of their places. ', !store.api.live && `This page is one file: it holds the program’s answers at the speeds that the slider stops at, and for the switches that can be moved. For all else: fusewright serve ${store.model.heading.file}`);
  drawPicture();
  showBig(parts.big, answer);
  showSets(parts.sets, answer, speedText(state.speedPerMin), switchTo, canSet);
  showShed(parts.shed, answer, switchTo, canSet);
  showLoads(parts.loads, answer, why);
  showLoading(parts.fuses, 'fuse', answer.fuses, answer.moreFuses, why);
  showLoading(parts.wires, 'wire', answer.wires, answer.moreWires, why);
  const [first, second] = answer.big;
  if (first) store.say([first, second].filter(Boolean).map((b) => b.label + ' ' + b.value + ' ' + (b.unit || '')).join(', '));
}
