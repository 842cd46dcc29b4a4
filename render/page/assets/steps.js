// The chosen part, and the circuit it belongs to element by element.
import {el, over, pic, put, shape} from './dom.js';
import {place} from './findings.js';

// showSteps fills a panel: part is what was chosen, circuit the answer of /api/circuit or null,
// others the ways that pass the part too.
export function showSteps(root, {part, circuit, others, finding}, store) {
  const {model} = store;
  put(root,
    head(circuit, model, store),
    part && (!circuit || part.id !== circuit.of) && about(part, others, circuit, store),
    circuit ? body(circuit, store) : el('p', {class: 'none'}, !part && finding && finding.marks ? finding.about + ': ' + finding.marks.join(', ') + ', left dark in the drawing. Choose one of them for its circuit.' : part ? 'It lies on the way of nothing that draws current.'
      : 'Choose a part or a wire in the drawing, or a finding: its circuit is shown here from the battery out and back.'));
}

function head(circuit, model, store) {
  if (!circuit) return el('header', {}, el('h2', {}, 'From battery + and back'));
  const pick = el('select', {onchange: () => store.set({in: pick.value})},
    model.situations.map((s) => el('option', {value: s.name, selected: s.name === circuit.situation}, s.name)));
  return el('header', {}, el('h2', {}, circuit.title + ', from battery + and back'),
    el('label', {class: 'grey small controls'}, 'Situation ', pick));
}

// about is the part itself, where it is another one than what draws.
function about(part, others, circuit, store) {
  const found = store.model.findings.filter((f) => f.part === part.id && !f.accepted);
  return el('div', {class: 'about'},
    el('span', {}, el('b', {}, part.id), ' ' + [part.name, part.looks, part.length].filter(Boolean).join(', ')),
    part.place && el('span', {class: 'grey'}, part.place),
    part.line > 0 && place({line: part.line, col: part.col}, store),
    found.length > 0 && el('ul', {}, found.map((f) => el('li', {}, el('button', {type: 'button', class: 'link',
      onclick: () => store.set({finding: f.number})}, shape(f.severity), ' ' + f.number + ' ' + f.says)))),
    others.length > 1 && el('ul', {'aria-label': 'What it serves'}, el('li', {class: 'grey'}, 'serves'), others.slice(0, 12).map((w) => el('li', {},
      el('button', {type: 'button', class: 'link', 'aria-pressed': String(circuit !== null && w.of === circuit.of),
        onclick: () => store.set({load: w.of, in: ''})}, w.title))),
    others.length > 12 && el('li', {class: 'grey'}, (others.length - 12) + ' more')));
}

function body(c, store) {
  if (!c.solved) return el('p', {class: 'none'}, 'This situation has no operating point, so there are no figures.');
  const figure = (value, word, bad) => el('div', {class: bad ? 'bad' : ''}, el('dt', {}, word), el('dd', {}, bad && over(gravest(c.of, store)), value));
  const name = c.title.charAt(0).toLowerCase() + c.title.slice(1);
  return [
    el('div', {class: 'sums'},
      el('dl', {class: 'figures'},
        figure(c.on ? c.volts : 'off', c.on ? 'at the load' : 'in this situation'),
        figure(c.amps, 'draws'),
        figure(c.lost, 'lost on the way'),
        figure(c.worst, 'lost at worst' + (c.limit ? ', ' + c.limit + ' allowed' : ''), c.over),
        figure(c.supply, 'at the battery')),
      el('button', {type: 'button', class: 'link to-why controls', onclick: () => store.set({view: 'why', of: 'drop of ' + name})}, 'Why ' + c.worst + '?')),
    table(c, store),
  ];
}

function table(c, store) {
  const sel = store.get('sel');
  const row = (s, i) => el('tr', {class: (i < c.turn ? 'out' : 'back') + (s.id === sel || s.mark === sel ? ' chosen' : ''), 'data-of': s.mark,
    onclick: () => store.select(s.mark)},
  el('td', {}, el('span', {class: 'id'}, el('button', {type: 'button', class: 'link', onclick: (e) => { e.stopPropagation(); store.select(s.mark); }}, s.id), el('span', {}, s.what))),
  el('td', {class: 'where'}, s.place), el('td', {class: 'num after'}, s.after), el('td', {class: 'num'}, s.amps),
  el('td', {class: 'num'}, s.lost), el('td', {class: 'num worst'}, s.worst), el('td', {}, s.may && share(s, gravest(s.mark, store))), el('td', {class: 'behind'}, s.fuse));
  return el('table', {},
    el('caption', {class: 'unseen'}, c.title + ' in ' + c.situation + ': element by element'),
    el('thead', {}, el('tr', {}, el('th', {scope: 'col'}, 'element', el('span', {class: 'may'}, ', wires as cut')), el('th', {scope: 'col', class: 'where'}, 'place'),
      el('th', {scope: 'col', class: 'num after'}, 'volts after it'), el('th', {scope: 'col', class: 'num'}, 'current'),
      el('th', {scope: 'col', class: 'num'}, 'lost, mV'), el('th', {scope: 'col', class: 'num'}, 'at worst'),
      el('th', {scope: 'col'}, 'share', el('span', {class: 'may'}, ' of what it may carry')), el('th', {scope: 'col', class: 'behind'}, 'behind fuse'))),
    el('tbody', {}, c.steps.slice(0, c.turn).map((s, i) => row(s, i)),
      el('tr', {class: 'load'}, el('td', {}, el('span', {class: 'id'}, el('span', {class: 'link'}, c.of.split(':')[0]), el('span', {}, c.what))),
        el('td', {class: 'where'}, c.place || ''), el('td', {class: 'num after'}, c.volts.replace(' V', '') + ' across'), el('td', {class: 'num'}, c.amps),
        el('td', {}), el('td', {}), el('td', {}), el('td', {class: 'behind'})),
      c.steps.slice(c.turn).map((s, i) => row(s, c.turn + i))),
    el('tfoot', {}, el('tr', {}, el('td', {}, 'Lost in all'), el('td', {class: 'where'}), el('td', {class: 'after'}), el('td', {}),
      el('td', {class: 'num'}, c.lost.replace(' mV', '')), el('td', {class: 'num' + (c.over ? ' bad' : '')}, c.worst.replace(' mV', '')), el('td', {}), el('td', {class: 'behind'}))));
}

// gravest is how grave the worst is that was found at a part or wire, for what is above its limit.
function gravest(id, store) {
  const found = store.model.findings.filter((f) => !f.accepted && f.part === id).map((f) => f.severity);
  return ['danger', 'fault'].find((s) => found.includes(s)) || 'advice';
}

// share is a bar with its figure in words.
function share(s, severity) {
  const of = Math.min(s.share, 1);
  return el('span', {class: 'share' + (s.share > 1 ? ' much' : '')},
    pic('svg', {viewBox: '0 0 56 8', 'aria-hidden': 'true'}, pic('rect', {x: .5, y: .5, width: 55, height: 7}), pic('rect', {x: .5, y: .5, width: 55 * of, height: 7})),
    s.share > 1 && over(severity), Math.round(s.share * 100) + ' %', el('span', {class: 'may'}, ' of ' + s.may));
}
