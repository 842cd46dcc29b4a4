// The strip below the head, in every view: the verdict, the counts, and what the last save did.
import {el, put, shape} from './dom.js';

export function showStrip(root, model) {
  const {verdict, counts} = model;
  const count = (severity) => counts[severity] > 0 &&
    el('span', {class: 'count'}, shape(severity), el('b', {}, String(counts[severity])), ' ' + severity);
  put(root,
    el('p', {class: 'verdict'}, shape(verdict.severity || 'mended'), el('strong', {}, verdict.says)),
    el('p', {class: 'counts'}, count('danger'), count('fault'), count('advice')));
}

export function showProblems(root, model) {
  const list = model.problems || [];
  root.hidden = list.length === 0;
  put(root, list.length > 0 && el('h2', {}, 'The file cannot be read as it is; below is the last good design.'),
    el('ul', {}, list.map((p) => el('li', {}, el('code', {}, [p.file, p.line, p.col].filter(Boolean).join(':')), ' ' + p.says))));
}
