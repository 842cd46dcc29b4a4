// The findings, by what they follow from.
import {el, put, shape} from './dom.js';

export function showFindings(root, model, store) {
  put(root, el('h2', {}, 'Causes and what follows from them'), model.causes.map((c) => el('section', {class: 'cause'},
    el('h3', {}, c.title), c.findings.map((i) => {
      const f = model.findings[i];
      return el('button', {type: 'button', class: 'finding', onclick: () => store.select(f.part)}, shape(f.severity, f.number), f.about + ': ' + f.says);
    }))));
}
