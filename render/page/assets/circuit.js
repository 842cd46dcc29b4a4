// The view “Circuit”: the drawing with the findings beside it and, below, the circuit of what
// was chosen, from the battery out and back.
import {el, put} from './dom.js';
import {makeSheet} from './sheet.js';
import {makeSeek} from './seek.js';
import {showFindings} from './findings.js';
import {showSteps} from './steps.js';

export const id = 'circuit', title = 'Circuit';
let store, sheet, waiting, findings, steps, taken, asked = 0;

export function mount(root, shared) {
  store = shared;
  sheet = makeSheet({chosen, over, label});
  findings = el('section', {class: 'panel findings', 'aria-label': 'Findings'});
  steps = el('section', {class: 'panel steps', 'aria-label': 'The chosen circuit'});
  waiting = el('p', {class: 'waiting', role: 'status'});
  taken = el('section', {class: 'panel taken', 'aria-label': 'Taken for want of data'});
  const button = (text, word, act) => el('button', {type: 'button', class: 'button sign', 'aria-label': word, onclick: act}, text);
  put(root,
    el('section', {class: 'panel drawing', 'aria-label': 'Drawing'},
      el('div', {class: 'bar controls'}, button('+', 'Zoom in', () => sheet.zoom(1.35)), button('−', 'Zoom out', () => sheet.zoom(1 / 1.35)),
        button('Fit', 'Fit: show the whole drawing', () => sheet.fit()), makeSeek(store, (found) => { chosen(found); sheet.reveal(found); })),
      waiting, sheet.root,
      el('p', {class: 'key'}, el('span', {}, el('i', {class: 'out'}), 'out from battery +'), el('span', {}, el('i', {class: 'back'}), 'back to battery −'))),
    steps, el('div', {class: 'side'}, findings, taken));
  store.on('state', choose);
}

let drawnOf = '';
export async function update(model) {
  put(taken, el('header', {}, el('h2', {}, 'Taken for want of data')),
    el('div', {class: 'body'}, el('ul', {}, model.taken.map((t) => el('li', {}, t))),
      el('p', {}, model.taken.length === 0 ? 'Nothing had to be taken.' : 'Findings name what could not be checked.')));
  const mark = JSON.stringify([model.parts, model.findings]);
  if (model.parts.length > 0 && mark !== drawnOf) {
    put(waiting, drawnOf ? 'The drawing is being made anew …' : 'The drawing is being made …');
    try {
      sheet.show(await store.api.drawing());
      drawnOf = mark;
      put(waiting);
    } catch (e) {
      put(waiting, e.message);
    }
  }
  choose();
}

// label is what a spot is called; '' = it cannot be chosen.
function label(of) {
  const part = store.part(of);
  if (!part) return '';
  const n = store.model.findings.filter((f) => f.part === of || (f.marks || []).includes(of)).length;
  return [part.id, part.name, part.looks, n > 0 && n + (n === 1 ? ' finding' : ' findings')].filter(Boolean).join(', ');
}

function chosen(of, number) {
  store.set({sel: of === store.get('sel') && !number ? '' : of.split(':')[0], finding: number || '', ...(of ? {} : {load: ''})});
}

// passing are the ways that a part or wire is on, that of itself first, then by what they draw.
function passing(of) {
  return store.model.circuits.filter((w) => w.out.includes(of) || w.back.includes(of) || w.out.some((m) => inside(m, of)))
    .sort((a, b) => (b.of === of) - (a.of === of) || b.a - a.a);
}

// inside tells whether a spot stands in a part: a fuse in its block, a relay's coil.
function inside(mark, of) {
  if (mark.split(':')[0] === of) return true;
  const part = store.part(mark);
  return part !== undefined && part.in === of;
}

// marked are the spots of ways, and what of the drawing stays as it is.
function light(list) {
  const out = new Set(list.flatMap((w) => w.out)), back = new Set(list.flatMap((w) => w.back.filter((m) => !out.has(m))));
  const keep = [...out].map((m) => store.part(m)).filter((p) => p && p.in).map((p) => p.in);
  sheet.light([...out], [...back], keep);
}

let preview = 0;
function over(of) {
  clearTimeout(preview);
  preview = setTimeout(() => {
    const list = of ? passing(of) : [];
    if (list.length > 0) light(list);
    else lightChosen();
    for (const row of findings.querySelectorAll('.finding')) row.classList.toggle('lit', of !== '' && row.dataset.parts.split(' ').includes(of));
  }, 90);
}

// way is the circuit that is shown: the one picked among those that pass, else the first.
function way() {
  const of = store.get('sel');
  const list = of ? passing(of) : [];
  return {list, shown: list.find((w) => w.of === store.get('load')) || list[0] || null};
}

// finding is the one that is shown in full.
function finding() { return store.model.findings.find((f) => f.number === Number(store.get('finding'))); }

function lightChosen() {
  const {shown} = way(), about = finding();
  if (!shown && about && about.marks) sheet.light([], [], about.marks);
  else light(shown ? [shown] : []);
  sheet.choose(store.get('sel'));
}

// choose shows what the state says.
async function choose() {
  if (!store.model || (store.get('view') || id) !== id) return;
  showFindings(findings, store.model, store);
  lightChosen();
  const {list, shown} = way();
  const part = store.part(store.get('sel'));
  const turn = ++asked;
  let circuit = null;
  if (shown) {
    try {
      circuit = await store.api.get('/api/circuit', {of: shown.of, in: store.model.situations.some((s) => s.name === store.get('in')) ? store.get('in') : ''});
    } catch (e) {
      store.say(e.message);
    }
  }
  if (turn === asked) showSteps(steps, {part, circuit, others: list, finding: finding()}, store);
}
