// The search: by name, number, colour code or colour in words.
import {el, put} from './dom.js';

const most = 8;

// makeSeek gives an element; chosen(id) is called with what was picked.
export function makeSeek(store, chosen) {
  const hits = el('div', {class: 'hits', hidden: true});
  const field = el('input', {type: 'search', placeholder: 'Name, number or colour', 'aria-label': 'Find a part or wire by name, number or colour',
    autocomplete: 'off', oninput: find,
    onkeydown: (e) => {
      if (e.key === 'Escape') { field.value = ''; find(); }
      if (e.key === 'Enter' && hits.firstChild) hits.querySelector('button')?.click();
      if (e.key === 'ArrowDown') { e.preventDefault(); hits.querySelector('button')?.focus(); }
    }});
  const root = el('div', {class: 'seek'}, field, hits);

  function find() {
    const words = field.value.toLowerCase().split(/\s+/).filter(Boolean);
    hits.hidden = words.length === 0;
    if (hits.hidden) return;
    const found = store.model.parts.map((p) => ({p, rank: rank(p, words)})).filter((x) => x.rank > 0)
      .sort((a, b) => b.rank - a.rank).map((x) => x.p);
    put(hits, found.length === 0 && el('p', {class: 'grey'}, 'Nothing is called that.'),
      found.slice(0, most).map((p) => el('button', {type: 'button', onclick: () => { hits.hidden = true; chosen(p.id); }},
        el('b', {}, p.id), el('span', {}, [p.name, p.looks].filter(Boolean).join(', ')))),
      found.length > most && el('p', {class: 'grey small'}, (found.length - most) + ' more'));
  }

  hits.addEventListener('keydown', (e) => {
    const next = {ArrowDown: 'nextElementSibling', ArrowUp: 'previousElementSibling'}[e.key];
    if (e.key === 'Escape') { hits.hidden = true; field.focus(); }
    if (!next) return;
    e.preventDefault();
    const to = document.activeElement[next];
    if (to) to.focus(); else field.focus();
  });
  root.addEventListener('focusout', (e) => { if (!root.contains(e.relatedTarget)) hits.hidden = true; });
  return root;
}

// rank is how well a part fits all words: 0 = not.
function rank(p, words) {
  let sum = 0;
  for (const w of words) {
    const id = p.id.toLowerCase(), code = (p.looks || '').toLowerCase().split(' ')[0];
    if (id === w) sum += 100;
    else if (code === w) sum += 40;
    else if (p.name.toLowerCase().startsWith(w)) sum += 30;
    else if (id.startsWith(w)) sum += 25;
    else if ([p.name, p.colour, p.looks, p.kind, p.place].some((text) => (text || '').toLowerCase().includes(w))) sum += 10;
    else return 0;
  }
  return sum;
}
