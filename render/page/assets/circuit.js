// The view “Circuit”: the schematic with the findings beside it.
import {el, put} from './dom.js';
import {showFindings} from './findings.js';

export const id = 'circuit', title = 'Circuit';
let store, drawing, findings;

export function mount(root, shared) {
  store = shared;
  drawing = el('div', {class: 'drawing panel'});
  findings = el('div', {class: 'findings panel'});
  put(root, drawing, findings);
}

export async function update(model) {
  showFindings(findings, model, store);
  const svg = new DOMParser().parseFromString(await store.api.drawing(), 'image/svg+xml').documentElement;
  put(drawing, svg);
}
