// The cut list: each wire with its length and its ends, ticked when it is made.
import {el, pic, put} from './dom.js';

export function makeCut(root, keeping) {
  let drawn = null, rows = [];

  function show() {
    const list = keeping.test().cut;
    if (drawn !== list) draw(list);
    for (const row of rows) row.refresh();
    root.querySelector('.tally').textContent = list.filter((w) => keeping.done(w)).length + ' of ' + list.length + ' done';
  }

  function draw(list) {
    drawn = list;
    rows = list.map((wire) => makeRow(keeping, wire));
    put(root,
      el('header', {class: 'panehead'}, el('h2', {tabindex: '-1'}, 'Cut list'), el('p', {class: 'tally', 'aria-live': 'polite'}),
        el('p', {class: 'setup'}, 'Cut, strip, crimp, label. Tick when all four are done.')),
      list.length === 0 && el('p', {class: 'none'}, 'No wire is to be cut.'),
      rows.map((row) => row.root));
  }

  return {show};
}

function makeRow(keeping, wire) {
  const box = el('input', {type: 'checkbox', onchange: (e) => keeping.tick(wire, e.target.checked)});
  const since = el('small', {class: 'since'});
  const root = el('label', {class: 'wire'}, box,
    el('span', {class: 'words'}, el('span', {class: 'look'}, el('b', {}, wire.wire), ' ', chip(wire.colour), ' ' + wire.look),
      el('small', {}, wire.from), el('small', {}, wire.to), wire.rests && el('small', {}, wire.rests + ': measure it'), since),
    el('span', {class: 'length'}, wire.length, wire.unit && el('small', {}, ' ' + wire.unit)));
  return {root, refresh() {
    box.checked = keeping.done(wire);
    root.classList.toggle('done', box.checked);
    since.textContent = keeping.changedSince(wire) ? 'The design has changed this wire since it was ticked.' : '';
  }};
}

// chip is a piece of the wire: its colour with the tracer's.
function chip(colours = []) {
  return pic('svg', {class: 'chip', viewBox: '0 0 28 10', 'aria-hidden': 'true'},
    pic('rect', {x: 0.5, y: 0.5, width: 27, height: 9, fill: colours[0] || 'none'}),
    colours[1] && pic('rect', {x: 17, y: 0.5, width: 5, height: 9, fill: colours[1]}));
}
