// The view “Why”: a figure with what it is worked out from, to the leaves.
import {el, pic, put} from './dom.js';

export const id = 'why', title = 'Why';
export const asks = true; // its trees are long
let store, field, names, answer, tree, aside, asked = null;

// The marks by how sure a value is; see harness/derivation.
const signs = {'two sources': '●●', 'one source': '●', 'your design': '▪', computed: '=', 'from memory or without a source': '?'};
const unsure = 'from memory or without a source';
const meanings = [['●●', 'two sources agree'], ['●', 'one source'], ['▪', 'written in your design'], ['=', 'computed from the lines below it'],
  ['?', 'from memory or without a source: check before relying on it']];

export function mount(root, shared) {
  store = shared;
  field = el('input', {id: 'ask', list: 'asks', autocomplete: 'off', spellcheck: 'false', onchange: () => store.set({of: field.value.trim()})});
  names = el('datalist', {id: 'asks'});
  answer = el('div', {class: 'answer', 'aria-live': 'polite'});
  tree = el('div', {class: 'tree'});
  aside = el('aside', {class: 'beside', 'aria-label': 'What the figure rests on'});
  put(root, el('div', {class: 'panel'},
    el('form', {class: 'ask', onsubmit: (e) => { e.preventDefault(); store.set({of: field.value.trim()}); }},
      el('label', {for: 'ask'}, 'Why'), field, names, el('p', {class: 'where'})), answer, tree), aside);
  store.on('state', () => { if (store.get('view') === id) ask(); });
}

export async function update() {
  asked = null;
  try {
    const list = await store.api.get('/api/names');
    put(names, list.map((name) => el('option', {value: name})));
    if (!store.get('of') && list.length > 0) { ask(list[0]); return; }
  } catch { /* what is asked says it */ }
  ask();
}

async function ask(otherwise) {
  const of = store.get('of') || otherwise || field.value;
  if (!of || of === asked) return;
  asked = of;
  field.value = of;
  let found;
  try {
    found = await store.api.get('/api/why', {of});
  } catch (e) {
    if (asked !== of) return;
    field.form.querySelector('.where').textContent = '';
    put(answer, el('p', {class: 'none'}, e.message), (e.near || []).length > 0 && el('ul', {class: 'lines', 'aria-label': 'Nearest names'}, e.near.map((n) => el('li', {}, link(n)))));
    put(tree);
    put(aside);
    return;
  }
  if (asked === of) show(found);
}

function show(found) {
  const where = [found.situation && 'in ' + found.situation, found.state].filter(Boolean).join(' · ');
  field.form.querySelector('.where').textContent = [where, found.file && found.line && found.file.split(/[\\/]/).pop() + ':' + found.line].filter(Boolean).join(' · ');
  const key = [found.figure.value, found.limit && found.limit.value];
  const guessed = (found.rests_on || []).filter((r) => r.on === 'from memory' || r.on === 'without a source').reduce((sum, r) => sum + r.share, 0);
  put(answer, found.answer.map((text) => el('p', {}, strong(text, key))),
    guessed > 0 && el('p', {class: 'unsure'}, '? ' + Math.max(1, Math.round(100 * guessed)) + ' % of it rests on values from memory or without a source. What you measure and write into the design takes their place.'));
  put(tree, el('h2', {class: 'unseen'}, 'How it is worked out'), step(found.figure, true, true),
    [found.limit, ...(found.also || [])].filter(Boolean).map((s) => step(s, false, true)));
  put(aside, rests(found), parts(found.figure), unsures(found), notes(found), marks());
}

// strong sets the figures of an answer in bold.
function strong(text, figures) {
  const at = figures.filter(Boolean).map((f) => [text.indexOf(f), f]).filter(([i]) => i >= 0).sort((a, b) => a[0] - b[0]);
  const out = [];
  let from = 0;
  for (const [i, f] of at) {
    if (i < from) continue;
    out.push(text.slice(from, i), el('b', {}, f));
    from = i + f.length;
  }
  return [...out, text.slice(from)];
}

// step is one value with those it comes from, made when they are first looked at. Opened are
// the first lines and, from each, the way along what weighs most.
function step(s, opened, top) {
  const from = s.from || [];
  const words = [el('span', {class: 'label'}, s.label), el('span', {class: 'formula'}, s.formula || ''), el('span', {class: 'value'}, s.value), source(s, from.length > 0)];
  if (from.length === 0 || s.above) return el('div', {class: 'leaf'}, words);
  const below = el('div', {class: 'below'});
  const make = () => {
    if (below.childNodes.length > 0) return;
    const most = from.reduce((a, b) => (Math.abs(b.number) > Math.abs(a.number) && b.unit === a.unit ? b : a));
    put(below, from.map((f) => step(f, opened && !f.above && (top || f === most) && f.unit === s.unit, false)));
  };
  if (opened) make();
  return el('details', {open: opened, ontoggle: make}, el('summary', {}, words), below);
}

function source(s, folded) {
  const place = s.line ? 'line ' + s.line : '';
  let text = [place, s.source].filter(Boolean).join(', ') || s.mark;
  if (s.above) text = 'see above';
  else if (s.mark === 'computed' && s.weakest === unsure && folded) text += ', ? in it';
  return el('span', {class: 'source' + (s.mark === unsure ? ' unsure' : '')}, el('i', {'aria-hidden': 'true'}, signs[s.mark] || ''), el('span', {}, text));
}

const kinds = ['published', 'your design', 'computed', 'from memory', 'without a source'];

// rests is how much of the figure rests on what, as a bar and in words.
function rests(found) {
  const list = (found.rests_on || []).filter((r) => r.share > 0);
  if (list.length === 0) return null;
  let x = 0;
  const bar = pic('svg', {class: 'bar', viewBox: '0 0 100 8', preserveAspectRatio: 'none', 'aria-hidden': 'true'},
    pic('defs', {}, hatch('dense', 2), hatch('thin', 4)), list.map((r) => {
      const piece = pic('rect', {x, y: 0, width: 100 * r.share, height: 8, class: kind(r)});
      x += 100 * r.share;
      return piece;
    }));
  return el('section', {class: 'panel'}, el('h2', {}, 'What the ' + found.figure.value + ' rests on'), bar,
    el('ul', {class: 'rests'}, list.map((r) => el('li', {}, pic('svg', {class: 'chip', viewBox: '0 0 20 8', 'aria-hidden': 'true'}, pic('rect', {width: 20, height: 8, class: kind(r)})),
      el('span', {}, r.on), el('b', {}, r.value), el('span', {class: 'share'}, Math.round(100 * r.share) + ' %')))));
}

function kind(r) { return 'k' + Math.max(0, kinds.indexOf(r.on)); }

function hatch(name, gap) {
  return pic('pattern', {id: 'why-' + name, width: gap, height: gap, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)'},
    pic('rect', {width: gap, height: gap, class: 'ground'}), pic('rect', {width: 1, height: gap, class: 'stroke'}));
}

// parts are the largest summands of a sum, taken apart as far as they are sums themselves.
function parts(figure) {
  const list = [];
  const gather = (s) => {
    const same = (s.from || []).filter((f) => f.unit === figure.unit && !f.above);
    if (same.length > 1 && same.length === (s.from || []).length) same.forEach(gather);
    else list.push(s);
  };
  gather(figure);
  if (list.length < 3) return null;
  list.sort((a, b) => Math.abs(b.number) - Math.abs(a.number));
  const share = (n) => Math.round((100 * n) / figure.number) + ' %';
  return el('section', {class: 'panel'}, el('h2', {}, 'Largest parts'), el('table', {}, el('tbody', {}, list.slice(0, 8).map((s) =>
    el('tr', {}, el('th', {scope: 'row'}, s.label), el('td', {}, s.value), el('td', {class: 'share'}, share(s.number)))))));
}

function unsures(found) {
  const list = [...new Set(found.unsure || [])];
  return list.length > 0 && el('section', {class: 'panel'}, el('details', {}, el('summary', {}, 'From memory, or without a source: ' + list.length), el('ul', {class: 'lines'}, list.map((l) => el('li', {}, l)))));
}

function link(of) { return el('button', {type: 'button', class: 'link', onclick: () => store.set({of})}, of); }

function notes(found) {
  const next = (found.next || []).map((line) => {
    const of = /^why "(.*)"$/.exec(line);
    return el('li', {}, of ? link(of[1]) : el('code', {}, 'fusewright ' + line)); // the page explains no rule: that is for the terminal
  });
  if (!next.length && !(found.notes || []).length) return null;
  return el('section', {class: 'panel'}, (found.notes || []).map((n) => el('p', {}, n)), next.length > 0 && [el('h2', {}, 'Ask next'), el('ul', {class: 'lines'}, next)]);
}

function marks() {
  return el('section', {class: 'panel'}, el('h2', {}, 'Marks'), el('dl', {class: 'marks'}, meanings.map(([sign, text]) => [el('dt', {}, sign), el('dd', {}, text)]).flat()));
}
