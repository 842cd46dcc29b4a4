// The strip below the head, in every view: the verdict, the counts, and what the last save did;
// and what is wrong with the file while it cannot be read.
import {live} from './api.js';
import {el, put, shape} from './dom.js';

export function showStrip(root, model) {
  const {verdict, counts} = model;
  root.hidden = !verdict.says;
  const count = (severity) => counts[severity] > 0 &&
    el('span', {}, shape(severity), el('b', {}, String(counts[severity])), ' ' + severity);
  const causes = model.tried && model.causes.length;
  put(root,
    el('p', {class: 'verdict'}, shape(verdict.severity || (model.problems ? 'none' : 'mended')), verdict.says),
    el('p', {class: 'counts'}, count('danger'), count('fault'), count('advice'),
      counts.accepted > 0 && el('span', {class: 'grey'}, counts.accepted + ' accepted'),
      causes > 0 && el('span', {class: 'grey'}, 'from ' + causes + (causes === 1 ? ' cause' : ' causes'))),
    saved(model));
}

// saved is what the last save mended and broke.
function saved(model) {
  const change = model.change;
  if (model.problems || !live) return null; // they are told below; one file is not saved anew
  if (!change) return el('p', {class: 'saved grey'}, 'First look, nothing saved since');
  const lines = change.lines || [];
  const where = lines.length > 0 && (lines.length === 1 ? ', line ' : ', lines ') + list(lines.map(String), 4);
  const did = (sign, word, marks, tone) => marks && el('span', {}, shape(sign), ' ',
    el('b', {class: tone}, number(marks) + ' ' + word), ' ' + marks[0].says + (number(marks) > 1 ? ' and more' : ''));
  return el('div', {class: 'saved'},
    el('p', {class: 'grey'}, 'Saved ' + (change.saved || ''), where),
    el('p', {class: 'did'},
      did('mended', 'mended', change.mended, 'mended-text'),
      did(change.broken ? change.broken[0].severity : '', 'broken', change.broken, 'danger-text'),
      !change.mended && !change.broken && el('span', {class: 'grey'}, 'No finding came or went')));
}

// number is how many findings there are; those of one number are one.
const number = (marks) => new Set(marks.map((m) => m.number || m.says)).size;

// list joins words: 'a, b and c'; of more than so many the first ones.
export function list(words, most) {
  if (words.length > most) return words.slice(0, most).join(', ') + ' and ' + (words.length - most) + ' more';
  if (words.length < 2) return words.join('');
  return words.slice(0, -1).join(', ') + ' and ' + words.at(-1);
}

export function showProblems(root, model) {
  const problems = model.problems || [];
  root.hidden = problems.length === 0;
  if (root.hidden) return;
  const good = model.parts.length > 0;
  put(root,
    el('h2', {}, shape('danger'), ' The file cannot be read as it is' + (good ? '; what is shown below is the last good design.' : '.')),
    el('ul', {}, problems.map((p) => el('li', {}, el('code', {}, [p.file, p.line, p.col].filter(Boolean).join(':')), '  ' + p.says))));
}
