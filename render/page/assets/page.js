// The page: its views, what they share, and the strip above them. A view is a module with
//
//   export const id = 'planner', title = 'Planner';
//   export function mount(root, store)   once: root is its empty section
//   export function update(model)        with every new model, and after mount
//   export function shown()              optional: whenever it comes to the front
//   export const asks = true             optional: it needs a server to ask
//   export function strip(root, model)   optional: fills the strip; false = it is the design's
//
// Imports stand one a line at the head of a module, with names in braces or "* as name".
import * as api from './api.js';
import * as circuit from './circuit.js';
import * as planner from './planner.js';
import * as whatif from './whatif.js';
import * as why from './why.js';
import * as bench from './bench.js';
import {el, put} from './dom.js';
import {makeStore} from './store.js';
import {showStrip, showProblems} from './strip.js';

const views = [circuit, planner, whatif, why, bench].filter((v) => api.live || !v.asks);
const store = makeStore(api);
const at = (id) => document.getElementById(id);
const roots = new Map(); // of views that were shown once

// show brings the view that the address names to the front; a view is mounted when it is first seen.
function show() {
  const view = views.find((v) => v.id === store.get('view')) || views[0];
  if (store.model && !roots.has(view)) {
    const root = el('section', {class: 'view ' + view.id, 'aria-label': view.title});
    roots.set(view, root);
    at('main').append(root);
    view.mount(root, store);
    view.update(store.model);
  }
  for (const [other, root] of roots) root.hidden = other !== view;
  for (const link of at('views').querySelectorAll('a')) {
    if (link.dataset.view === view.id) link.setAttribute('aria-current', 'page');
    else link.removeAttribute('aria-current');
    if (link.dataset.view === view.id && document.body.dataset.view !== view.id) { // on a phone it may stand outside
      const bar = link.closest('nav');
      bar.scrollLeft = link.offsetLeft - bar.offsetLeft - (bar.clientWidth - link.offsetWidth) / 2;
    }
  }
  document.body.dataset.view = view.id;
  if (view.shown && roots.has(view)) view.shown();
  if (store.model) strip();
}

// strip shows the verdict: of the design, or what a view has in its place.
function strip() {
  const view = views.find((v) => v.id === document.body.dataset.view);
  if (!(view && view.strip && view.strip(at('strip'), store.model))) showStrip(at('strip'), store.model);
}

// load fetches the model and hands it to the views that were shown.
async function load() {
  try {
    store.model = await api.model();
  } catch (e) {
    say(e.message);
    if (!store.model) put(at('strip'), el('p', {}, e.message));
    return;
  }
  const {heading} = store.model;
  at('title').textContent = heading.title || 'Fusewright';
  at('subtitle').textContent = [heading.file + (heading.revision ? ', revision ' + heading.revision : ''), heading.vehicle]
    .filter(Boolean).join(' · ');
  document.title = heading.title || 'Fusewright';
  at('caution').textContent = store.model.caution;
  showProblems(at('problems'), store.model);
  for (const [view] of roots) view.update(store.model);
  show();
}

// say tells those who hear the page.
function say(text) { at('said').textContent = text; }

function theme(name) {
  document.documentElement.dataset.theme = name;
  put(at('theme'), name === 'dark' ? 'Light' : 'Dark');
}

function start() {
  for (const view of views) {
    const link = el('a', {href: '#', 'data-view': view.id, onclick: (e) => { e.preventDefault(); store.set({view: view.id}); }}, view.title);
    at('views').append(el('li', {}, link));
  }
  const liked = store.kept('theme') || (matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light');
  theme(store.get('theme') || liked);
  at('theme').addEventListener('click', () => {
    const next = document.documentElement.dataset.theme === 'dark' ? 'light' : 'dark';
    store.keep('theme', next);
    theme(next);
  });
  at('print').addEventListener('click', () => print());
  store.on('state', show);
  store.on('strip', strip);
  store.say = say;
  put(at('strip'), el('p', {class: 'grey'}, 'The design is being reviewed …'));
  api.follow(load, (lost) => { document.body.classList.toggle('lost', lost); if (lost) say('The server does not answer.'); },
    () => store.call('readings'));
  load();
}

start();
