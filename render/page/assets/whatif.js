// The view “What if”: values changed on a copy of the file, with what comes of it, and the lines to
// copy. The file is touched by a press of the button alone, where the server may write.
import {el, over, put, shape} from './dom.js';

export const id = 'whatif', title = 'What if';
export const asks = true;

let root, store;
let offers = [], of = '', writes = false;
let changes = new Map(); // by place in the file: the new value
let outcome = null;
let parts = {};
let asking = false, again = false, loaded = 0;

export function mount(into, shared) {
  root = into;
  store = shared;
  const part = (name, tag = 'div', attributes = {}, ...children) => parts[name] = el(tag, {class: name, ...attributes}, ...children);
  const box = (name, heading, ...children) =>
    el('section', {class: 'panel ' + name, 'aria-labelledby': 'whatif-' + name}, el('div', {class: 'head'}, el('h2', {id: 'whatif-' + name}, heading), ...children));
  put(root,
    part('problem', 'p', {role: 'alert', hidden: true}),
    el('div', {class: 'grid'},
      el('div', {class: 'left'},
        parts.edits = box('edits', 'What if', part('untouched', 'p', {class: 'note'}, 'The file is not touched until you copy the lines.')),
        parts.lines = box('lines', 'Lines to copy', part('copy')),
        parts.alone = box('alone', 'Each by itself')),
      el('div', {class: 'right'},
        parts.before = box('before', 'Before and after', part('sum', 'p', {'aria-live': 'polite'})),
        parts.fates = box('fates', 'Findings after', part('counts', 'p')),
        parts.shop = box('shop', 'What changes on the shopping list'))));
  parts.edits.append(part('list', 'ul'), chooser());
  for (const [name, tag] of [['lines', 'div'], ['alone', 'div'], ['before', 'div'], ['fates', 'ul'], ['shop', 'ul']]) {
    parts[name].append(parts[name + 'In'] = el(tag, {class: 'in'}));
  }
  store.on('state', () => {
    if (!root.hidden && store.get('change') !== written()) { changes = fromAddress(); ask(); }
  });
}

export async function update() {
  const turn = ++loaded;
  if (!store.api.live) {
    put(root, el('p', {class: 'none'}, 'Changes are tried by the program itself: start it with “serve”, and this view answers.'));
    return;
  }
  try {
    const answer = await store.api.get('/api/offers');
    if (turn !== loaded) return;
    ({offers, of, writes} = answer);
  } catch (e) {
    fail(e.message);
    return;
  }
  changes = changes.size > 0 ? changes : fromAddress();
  for (const [at, value] of changes) { // what the file has by now is no change any more
    const offer = find(at);
    if (!offer || offer.now === value) changes.delete(at);
  }
  fillChooser();
  ask();
}

// nameOf is what a value is called: of a load in a situation, that it is on needs no word.
const nameOf = (o) => o.what === 'on' ? o.about : o.about + ', ' + o.what;
const find = (at) => offers.find((o) => o.at === at);

// The changes in the address: place=value, parted by ~.
function fromAddress() {
  const list = store.get('change').split('~').filter((t) => t.includes('='));
  return new Map(list.map((t) => [t.slice(0, t.lastIndexOf('=')), t.slice(t.lastIndexOf('=') + 1)]).filter(([at]) => find(at)));
}

const written = () => [...changes].map(([at, value]) => at + '=' + value).join('~');

function fail(message) {
  parts.problem.hidden = !message;
  put(parts.problem, message || '');
}

const asked = () => ({of, changes: [...changes].map(([at, value]) => ({at, value}))});

async function ask() {
  store.set({change: written()});
  fillEdits();
  if (asking) { again = true; return; }
  asking = true;
  do {
    again = false;
    try {
      outcome = changes.size > 0 ? await store.api.send('POST', '/api/whatif', asked()) : null;
      fail('');
    } catch (e) {
      outcome = null;
      fail(e.message);
    }
    if (!again) draw();
  } while (again);
  asking = false;
}

function change(at, value) {
  if (value === find(at).now) changes.delete(at);
  else changes.set(at, value);
  ask();
}

// The chooser adds a value to the list: first what it is about, then which of its values.
function chooser() {
  parts.about = el('input', {id: 'whatif-about', list: 'whatif-abouts', autocomplete: 'off', placeholder: 'lamp, W4, F3 …', oninput: fillChooser});
  parts.abouts = el('datalist', {id: 'whatif-abouts'});
  parts.found = el('ul', {class: 'found'});
  return el('div', {class: 'chooser'}, el('label', {for: 'whatif-about'}, 'Change another value: name or label'), parts.about, parts.abouts, parts.found);
}

const mostFound = 8;

function fillChooser() {
  put(parts.abouts, [...new Set(offers.flatMap((o) => [o.about, ...o.refs]))].map((text) => el('option', {value: text})));
  const word = parts.about.value.trim().toLowerCase();
  const chosen = store.get('sel');
  const found = store.model.findings.filter((f) => !f.accepted && f.part).map((f) => f.part); // the worst first
  const about = (o) => word ? o.about.toLowerCase().includes(word) || o.refs.some((r) => r.toLowerCase() === word)
    : chosen ? o.refs.includes(chosen) : o.refs.some((r) => found.includes(r));
  const hits = offers.filter((o) => !changes.has(o.at) && about(o));
  if (!word && !chosen) hits.sort((a, b) => Math.min(...a.refs.map((r) => found.indexOf(r)).filter((i) => i >= 0)) - Math.min(...b.refs.map((r) => found.indexOf(r)).filter((i) => i >= 0)));
  put(parts.found, !word && !chosen && hits.length > 0 && el('li', {class: 'note'}, 'Found fault with:'), hits.slice(0, mostFound).map((o) => el('li', {}, el('button', {type: 'button', onclick: () => add(o)},
    el('span', {}, nameOf(o)), ' ', el('b', {}, o.now)))),
  hits.length > mostFound && el('li', {class: 'note'}, `${hits.length - mostFound} more: type more of the name.`),
  word && hits.length === 0 && el('li', {class: 'note'}, 'Nothing of that name can be changed here.'));
}

// add puts a value on the list with the next choice.
function add(offer) {
  const at = offer.choices.indexOf(offer.now);
  const next = offer.choices[at + 1] !== undefined ? offer.choices[at + 1] : offer.choices[at - 1];
  if (next === undefined) return;
  parts.about.value = '';
  change(offer.at, next);
  fillChooser();
  const row = [...parts.list.children].find((li) => li.dataset.at === offer.at);
  if (row) row.querySelector('select, input').focus();
}

function fillEdits() {
  const focus = document.activeElement && document.activeElement.dataset ? document.activeElement.dataset.focus : null;
  put(parts.list, [...changes].map(([at, value]) => edit(find(at), value)),
    changes.size > 0 && el('li', {class: 'all'}, el('button', {type: 'button', onclick: () => { changes.clear(); ask(); fillChooser(); }}, 'Clear all')));
  if (focus) {
    const same = parts.list.querySelector(`[data-focus="${CSS.escape(focus)}"]`);
    if (same) same.focus();
  }
}

function edit(offer, value) {
  const at = offer.choices.indexOf(value);
  const name = nameOf(offer);
  const where = offer.given ? 'line ' + offer.line : 'not in the file yet, line ' + offer.line;
  const step = (by, sign, says) => {
    const to = at < 0 ? undefined : offer.choices[at + by];
    return el('button', {type: 'button', disabled: to === undefined, 'aria-label': `${says}: ${name}`, 'data-focus': offer.at + sign, onclick: () => change(offer.at, to)}, sign);
  };
  const field = offer.free
    ? el('input', {value, 'aria-label': name, size: 8, 'data-focus': offer.at, onchange: (e) => e.target.value.trim() && change(offer.at, e.target.value.trim())})
    : el('select', {'aria-label': name, 'data-focus': offer.at, onchange: (e) => change(offer.at, e.target.value)}, offer.choices.map((c) => el('option', {value: c, selected: c === value}, c)));
  return el('li', {'data-at': offer.at},
    el('span', {class: 'about'}, el('span', {}, [offer.refs.length > 0 && el('b', {}, offer.refs.slice(0, 3).join(', ') + ' '), name]), el('small', {}, where)),
    el('del', {}, offer.now), el('span', {class: 'to', 'aria-hidden': 'true'}, '→'),
    el('span', {class: 'stepper'}, step(-1, '−', 'less'), field, step(1, '+', 'more')),
    el('button', {type: 'button', class: 'drop', 'aria-label': 'Leave ' + name + ' as it is', onclick: () => change(offer.at, offer.now)}, '×'));
}

function draw() {
  for (const name of ['lines', 'alone', 'before', 'fates', 'shop']) parts[name].hidden = !outcome;
  if (!outcome) return;
  parts.alone.hidden = outcome.alone.length === 0;
  parts.shop.hidden = outcome.shopping.length === 0;
  drawLines();
  drawBefore();
  drawFates();
  put(parts.shopIn, outcome.shopping.map((s) => el('li', {class: s.now ? '' : 'gone'},
    el('span', {class: 'sign', 'aria-hidden': 'true'}, !s.was ? '+' : !s.now ? '−' : '·'), el('span', {class: 'unseen'}, !s.was ? 'new: ' : !s.now ? 'no more: ' : 'changed: '),
    el('span', {}, s.item), el('span', {class: 'r'}, s.was && s.now ? `${s.was} → ${s.now}` : s.now || s.was))));
  const names = [...changes].map(([at, value]) => { const o = find(at); return `${nameOf(o)}: ${value}`; });
  put(parts.aloneIn, el('ul', {}, outcome.alone.map((a, i) => el('li', {}, el('span', {}, names[i]),
    el('span', {class: 'copper'}, a.copper ? a.copper + ' copper' : ''),
    el('span', {class: 'r'}, a.trouble || [a.mends.length > 0 ? 'mends ' + a.mends.join(', ') : 'mends none', a.new > 0 && `, ${a.new} new`])))));
}

function drawLines() {
  const count = outcome.lines.filter((l) => l.put).length;
  const says = count === 1 ? 'Copy 1 line' : `Copy ${count} lines`;
  put(parts.copy, el('button', {type: 'button', onclick: copy}, says),
    writes && el('button', {type: 'button', class: 'write', onclick: write}, 'Put into the file'));
  const other = new Map(pairs().flatMap(([a, b]) => [[a, b], [b, a]]));
  put(parts.linesIn, el('div', {class: 'code', tabindex: 0, role: 'group', 'aria-label': 'Lines that change'}, outcome.lines.map((l) => el('div', {class: l.put ? 'put' : 'gone'},
    el('span', {class: 'n'}, String(l.number)), el('span', {class: 'sign'}, el('span', {'aria-hidden': 'true'}, l.put ? '+' : '−'), el('span', {class: 'unseen'}, l.put ? 'becomes' : 'was')),
    el('code', {}, marked(l.text, other.has(l) ? other.get(l).text : ''))))));
}

// pairs are lines gone with those put in their place.
function pairs() {
  const gone = outcome.lines.filter((l) => !l.put), list = [];
  for (const l of outcome.lines.filter((l) => l.put)) {
    const was = gone.find((g) => g.number === l.number && !list.some(([a]) => a === g));
    if (was) list.push([was, l]);
  }
  return list;
}

// marked is a line with what differs from another one set off: between what both begin and end with.
function marked(text, other) {
  if (!other) return [text];
  let head = 0;
  while (head < Math.min(text.length, other.length) && text[head] === other[head]) head++;
  let tail = 0;
  while (tail < Math.min(text.length, other.length) - head && text[text.length - 1 - tail] === other[other.length - 1 - tail]) tail++;
  while (head > 0 && /[\w.]/.test(text[head - 1])) head--;
  while (tail > 0 && /[\w.²]/.test(text[text.length - tail])) tail--;
  const middle = text.slice(head, text.length - tail);
  return [text.slice(0, head), middle && el('mark', {}, middle), text.slice(text.length - tail)];
}

async function copy() {
  const text = outcome.lines.filter((l) => l.put).map((l) => l.text).join('\n') + '\n';
  try {
    await navigator.clipboard.writeText(text);
    store.say('Copied.');
  } catch {
    getSelection().selectAllChildren(parts.linesIn);
    store.say('The lines are selected: copy them with the keyboard.');
  }
}

async function write() {
  try {
    await store.api.send('POST', '/api/write', asked());
    changes.clear();
    store.set({change: ''});
    store.say('Written into the file.');
  } catch (e) {
    fail(e.message);
  }
}

function drawBefore() {
  const dangers = outcome.findings.filter((f) => f.became === 'new' && f.severity === 'danger' && !f.accepted).length;
  const says = [outcome.mended > 0 && el('b', {class: 'good'}, `${outcome.mended} mended`), outcome.mended > 0 && ', ',
    outcome.new > 0 ? el('b', {class: dangers > 0 ? 'bad' : ''}, `${outcome.new} new` + (dangers === 0 ? '' : dangers === outcome.new ? ', danger' : `, ${dangers} of them danger`)) : outcome.mended > 0 ? 'none new' : 'No finding comes or goes'];
  put(parts.sum, says);
  put(parts.beforeIn, el('table', {}, el('thead', {}, el('tr', {}, el('td', {}), ['before', 'after', 'change'].map((h) => el('th', {scope: 'col', class: 'r'}, h)))),
    el('tbody', {}, outcome.figures.map((f) => el('tr', {}, el('th', {scope: 'row'}, first(f.about + (f.what ? ': ' + f.what : '')), f.note && el('small', {}, f.note)),
      el('td', {class: 'r'}, f.was), el('td', {class: f.better > 0 ? 'r after good' : 'r after'}, over(f.over), f.now), el('td', {class: 'r note'}, f.change))))));
}

const first = (text) => text.charAt(0).toUpperCase() + text.slice(1);

function drawFates() {
  const count = (severity) => {
    const was = outcome.was[severity], now = outcome.now[severity];
    return (was > 0 || now > 0) && el('span', {class: 'count'}, shape(severity), el('span', {class: 'unseen'}, severity), was === now ? String(now) : `${was} → ${now}`);
  };
  put(parts.counts, count('danger'), count('fault'), count('advice'));
  const order = ['new', 'worse', 'mended', 'eased', 'as before'];
  const list = [...outcome.findings].filter((f) => !f.accepted).sort((a, b) => order.indexOf(a.became) - order.indexOf(b.became));
  put(parts.fatesIn, list.length === 0 && el('li', {class: 'all'}, 'Nothing is found before or after.'), list.map((f) => {
    const mended = f.became === 'mended';
    const says = (f.number && mended ? f.number + ' ' : '') + f.says;
    return el('li', {class: f.became.replace(' ', '-')}, shape(mended ? 'mended' : f.severity, mended || !f.number ? undefined : f.number),
      el('span', {class: 'unseen'}, f.severity), mended ? el('del', {}, says) : el('span', {}, says, f.value && [' ', el('b', {}, f.value)], f.limit && el('span', {class: 'note'}, ' ' + f.limit)),
      el('span', {class: 'fate'}, f.became + (f.was && f.was !== f.severity ? ', was ' + f.was : '')));
  }));
}
