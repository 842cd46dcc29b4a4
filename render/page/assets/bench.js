// The view “Bench”, for a phone or tablet in the workshop: the test, the cut list, what best
// explains the readings, the loom on the board.
import {el, put, shape} from './dom.js';
import {makeKeeping} from './keep.js';
import {outcomes} from './outcome.js';
import {makeTest} from './test.js';
import {makeCut} from './cut.js';
import {makeCause} from './cause.js';
import {makeLayout} from './layout.js';

export const id = 'bench', title = 'Bench';
const panes = [['test', 'Test'], ['cut', 'Cut list'], ['cause', 'Diagnosis'], ['layout', 'Layout']];
let store, keeping, parts, tabs, roots;

export function mount(root, shared) {
  store = shared;
  keeping = makeKeeping(store, changed);
  roots = Object.fromEntries(panes.map(([pane, name]) => [pane, el('section', {class: 'pane panel ' + pane, 'aria-label': name})]));
  parts = {
    test: makeTest(roots.test, store, keeping, () => show('cause')),
    cut: makeCut(roots.cut, keeping),
    cause: makeCause(roots.cause, store, keeping),
    layout: makeLayout(roots.layout, store),
  };
  tabs = panes.map(([pane, name]) => el('button', {type: 'button', onclick: () => store.set({pane}), 'data-pane': pane}, name));
  put(root, el('nav', {class: 'subtabs', 'aria-label': 'Pages of the bench'}, tabs), el('div', {class: 'panes'}, Object.values(roots)));
  store.on('state', front);
  store.on('readings', () => keeping.hear());
  front();
}

export function update() { keeping.load(); parts.layout.update(); }

// changed shows what there is now in all panes.
function changed() {
  if (!keeping.test()) {
    put(roots.test, el('p', {class: 'none'}, keeping.state()));
    return;
  }
  for (const part of Object.values(parts)) if (part.show) part.show();
  store.call('strip');
}

// front brings one pane to the front, where there is room for one.
function front() {
  const chosen = store.get('pane') || 'test';
  for (const tab of tabs) tab.setAttribute('aria-current', tab.dataset.pane === chosen ? 'true' : 'false');
  for (const [pane, root] of Object.entries(roots)) root.classList.toggle('front', pane === chosen);
}

function show(pane) {
  store.set({pane});
  roots[pane].scrollIntoView({block: 'start'});
  roots[pane].querySelector('h2').focus();
}

// strip is the verdict of the test, in place of that of the design.
export function strip(root, model) {
  const test = keeping && keeping.test();
  if (!test) return false;
  const {pass, fail, open} = outcomes(keeping, test.sections);
  const read = pass + fail, readings = (n) => n + (n === 1 ? ' reading' : ' readings');
  const says = fail ? 'Not passed: ' + fail + ' of ' + readings(read) + ' out of bounds'
    : read === 0 ? 'Nothing read yet' : open ? readings(read) + ' in bounds, the test goes on' : 'Passed: all ' + readings(read) + ' in bounds';
  const count = (n, word) => el('span', {}, el('b', {}, String(n)), ' ' + word);
  const {heading} = model;
  root.hidden = false;
  put(root,
    el('p', {class: 'verdict'}, shape(fail ? 'danger' : read && !open ? 'mended' : 'none'), says),
    el('p', {class: 'counts'}, count(pass, 'pass'), count(fail, 'fail'), count(open, 'to read')),
    el('p', {class: 'saved grey'}, 'Measured against ' + heading.file + (heading.revision ? ', revision ' + heading.revision : '') + ', as designed'));
  return true;
}
