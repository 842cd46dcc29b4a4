// The findings by what they follow from, the worst first, with what was tried against each.
import {el, put, shape} from './dom.js';
import {list} from './strip.js';

// From so many causes on they are folded, the first one open.
const folds = 10;
const unfolded = new Map(); // by the causes' titles, as the reader left them

// showFindings fills a panel; chosen is the number of the finding that is shown in full.
export function showFindings(root, model, store) {
  const many = model.causes.length >= folds;
  put(root,
    el('header', {}, el('h2', {}, 'Causes and what follows from them'),
      el('span', {class: 'grey small'}, model.tried ? 'worst first' : 'trying remedies')),
    model.causes.length === 0 && el('p', {class: 'end'}, 'Nothing was found.'),
    model.causes.map((cause, i) => one(cause, i, many, model, store)),
    mended(model), together(model), accepted(model, store));
}

function one(cause, i, many, model, store) {
  const rows = grouped(cause, model);
  const chosen = Number(store.get('finding')), key = cause.title + cause.of;
  const open = !many || (unfolded.get(key) ?? (i === 0 || rows.some((r) => r[0].number === chosen)));
  const title = el('h3', {},
    many && el('span', {class: 'letter'}, letter(i)),
    el('span', {class: 'title'}, cause.title, el('small', {}, sentence(cause.of) + (cause.title === cause.rule ? '' : ' · ' + cause.rule))),
    rows.some((r) => r.some((f) => f.new)) && el('span', {class: 'new'}, 'new'),
    el('span', {class: 'place grey'}, 'line ' + cause.line));
  const body = el('div', {id: 'cause-' + i, hidden: !open},
    rows.map((r) => finding(r, cause, model, store)),
    remedies(cause).map(tried));
  if (!many) return el('section', {class: 'cause'}, title, body);
  const toggle = el('button', {type: 'button', class: 'fold', 'aria-expanded': String(open), 'aria-controls': 'cause-' + i,
    onclick: () => {
      body.hidden = !body.hidden;
      unfolded.set(key, !body.hidden);
      toggle.setAttribute('aria-expanded', String(!body.hidden));
    }}, title, summary(rows, cause, model));
  return el('section', {class: 'cause'}, toggle, body);
}

const letter = (i) => (i < 26 ? '' : letter(Math.floor(i / 26) - 1)) + String.fromCharCode(65 + i % 26);
const sentence = (text) => text.charAt(0).toUpperCase() + text.slice(1);

// grouped are the findings of a cause; those of one number are one.
function grouped(cause, model) {
  const rows = new Map();
  for (const i of cause.findings) {
    const f = model.findings[i];
    rows.set(f.number, [...(rows.get(f.number) || []), f]);
  }
  return [...rows.values()];
}

// summary is the folded line: counts, and the best that was tried.
function summary(rows, cause, model) {
  const count = (severity) => {
    const n = rows.filter((r) => r[0].severity === severity).length;
    return n > 0 && el('span', {}, shape(severity), ' ' + n);
  };
  const best = cause.remedy;
  const said = best ? best.now : cause.untried ? 'none tried' : model.tried ? 'no remedy holds' + (cause.tried ? ', ' + cause.tried.length + ' tried' : '') : '';
  return el('p', {class: 'sum'}, count('danger'), count('fault'), count('advice'),
    el('span', {class: 'best' + (best ? ' holds' : '')}, said && shape(best ? 'mended' : 'none'), ' ' + said));
}

// finding is a line with its number, what is wrong and two figures; chosen, all that is known.
function finding(row, cause, model, store) {
  const f = row[0];
  const open = Number(store.get('finding')) === f.number;
  const parts = row.flatMap((x) => x.part || x.marks || []);
  const about = row.length > 1 ? f.about + ' and ' + (row.length - 1) + ' more: ' : f.about === cause.of ? '' : f.about + ': ';
  const sign = shape(f.severity, f.number);
  sign.classList.add('numbered');
  const line = el('button', {type: 'button', class: 'finding', 'aria-expanded': String(open), 'data-parts': parts.join(' '),
    onclick: () => store.set({finding: open ? '' : f.number, sel: open ? '' : f.part || ''})},
  sign, el('span', {class: 'unseen'}, f.severity),
  el('span', {class: 'says'}, sentence(about + f.says)),
  f.value && el('span', {class: 'is'}, el('b', {}, f.value), f.limit && ' ' + f.limit));
  return [line, open && more(row, store)];
}

// more is what is known of a finding.
function more(row, store) {
  const f = row[0];
  const said = (word, text) => text && el('p', {}, el('b', {}, word + ' '), text);
  return el('div', {class: 'more'},
    el('p', {}, sentence(f.what) + '.'),
    row.slice(1).map((x) => el('p', {}, 'Likewise ' + x.about + (x.value ? ', ' + x.value + ' ' + (x.limit || '') : ''))),
    f.brief && el('p', {class: 'grey'}, f.brief),
    f.unsure && el('p', {}, '? No margin: what rests on values without a source is more than what lies between figure and limit.'),
    said('Why it matters:', f.why), said('What to change:', f.change), said('Source:', f.source),
    el('p', {class: 'where'}, place(f, store), f.start && el('button', {type: 'button', class: 'link', onclick: () => store.set({view: 'planner', from: f.start})}, 'Show it in the planner'), el('button', {type: 'button', class: 'link',
      onclick: () => store.set({view: 'why', of: 'finding ' + f.number})}, 'How it was worked out')));
}

// place is file:line:col, which a click copies.
export function place(of, store) {
  const text = (of.file || store.model.heading.file) + ':' + of.line + ':' + of.col;
  return el('button', {type: 'button', class: 'link', title: 'Copy', onclick: async () => {
    try {
      await navigator.clipboard.writeText(text);
      store.say(text + ' copied');
    } catch { /* it can be read */ }
  }}, el('code', {}, text));
}

const remedies = (cause) => [cause.remedy, ...(cause.tried || [])].filter(Boolean);

// tried is a line on a change that was put into a copy: what it mends, and what it leaves or breaks.
function tried(t) {
  return el('p', {class: 'tried' + (t.holds ? ' holds' : '')}, shape(t.holds ? 'mended' : 'none'),
    el('span', {}, sentence((t.guess ? 'Is meant? ' : '') + (t.of ? t.of + ': ' : '') + t.now) + effect(t)));
}

function effect(t) {
  const numbers = (list_) => list([...new Set(list_)].sort((a, b) => a - b).map(String), 8);
  const said = [['mends', t.mends], ['eases', t.eases], ['worsens', t.worse]].filter(([, n]) => n).map(([word, n]) => word + ' ' + numbers(n));
  if (t.adds) said.push('breaks ' + t.adds.length + ' (' + list([...new Set(t.adds)], 3) + ')');
  return said.length > 0 ? ': ' + said.join(', ') : '';
}

// mended is what the last save put right, marked with a tick.
function mended(model) {
  const marks = (model.change && model.change.mended) || [];
  return marks.length > 0 && el('div', {class: 'end'}, el('b', {}, 'Mended by the last save'),
    marks.map((m) => el('p', {}, shape('mended'), ' ' + m.says + (m.how ? ', ' + m.how : ''))));
}

function together(model) {
  const t = model.together;
  if (!t) return null;
  const open = model.causes.reduce((n, c) => n + c.findings.length, 0);
  const left = open - (t.mends ? t.mends.length : 0);
  return el('div', {class: 'end'}, el('b', {}, 'All remedies together leave ' + (left === 0 ? 'no finding' : left + ' of ' + open) + '.'),
    el('p', {class: 'grey'}, 'Nothing was changed: each was put into a copy and checked.'));
}

function accepted(model, store) {
  const those = model.findings.filter((f) => f.accepted);
  return those.length > 0 && el('div', {class: 'end'}, el('b', {}, 'Accepted by the design'),
    those.map((f) => el('p', {}, f.number + ' ' + f.about + ': ' + f.says + '. ' + sentence(f.accepted) + '. ', place(f, store))));
}
