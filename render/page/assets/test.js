// The bench test, a section at a time: a field for each reading, which passes or fails at once.
import {el, put, shape} from './dom.js';
import {allowed, shown, typed} from './reading.js';
import {battery, outcome, outcomes} from './outcome.js';

export function makeTest(root, store, keeping, findCause) {
  let drawn = null, rows = [];

  function section() {
    const {sections} = keeping.test();
    return sections.find((s) => String(s.number) === store.get('section')) || sections.find((s) => s.checks.length > 0) || sections[0];
  }

  function show() {
    const now = section();
    if (drawn !== now || !root.contains(rows[0]?.root || null)) draw(now);
    refresh(now);
  }

  function draw(now) {
    const writing = rows.find((r) => r.field && r.field === document.activeElement)?.field;
    drawn = now;
    rows = now.checks.map((check) => makeRow(store, keeping, now, check, next, findCause));
    const {sections, cautions, tools, bounds, missing} = keeping.test(), at = sections.indexOf(now);
    const choice = el('select', {id: 'section', onchange: (e) => go(e.target.value)}, sections.map((s) =>
      el('option', {value: s.number, selected: s === now}, s.number + ' ' + s.title)));
    const step = (to, sign, name) => el('button', {type: 'button', class: 'step', 'aria-label': name, disabled: !sections[to], onclick: () => go(sections[to].number)}, sign);
    const list = (name, lines) => lines && lines.length > 0 && el('details', {}, el('summary', {}, name), el('ul', {}, lines.map((l) => el('li', {}, l))));
    const hints = sections.find((s) => s.number === now.wrongIn)?.wrong || [];
    let group = '';
    const body = [];
    for (const row of rows) {
      if (row.check.group && row.check.group !== group && !row.check.against) body.push(el('h3', {}, row.check.group));
      group = row.check.group;
      body.push(row.root);
    }
    put(root,
      el('header', {class: 'panehead'},
        el('h2', {class: 'unseen', tabindex: '-1'}, 'Bench test, section ' + now.number + ': ' + now.title),
        el('div', {class: 'choose'}, step(at - 1, '‹', 'Section before'), el('label', {class: 'unseen', for: 'section'}, 'Section'), choice, step(at + 1, '›', 'Next section')),
        now.setup.map((line) => el('p', {class: 'setup'}, line)),
        el('p', {class: 'tally', 'aria-live': 'polite'}),
        el('div', {class: 'progress', 'aria-hidden': 'true'}, rows.map(() => el('i')))),
      now.trouble && el('p', {class: 'trouble'}, now.trouble),
      body,
      el('footer', {class: 'panefoot'}, el('p', {class: 'kept', 'aria-live': 'polite'}), el('ul', {class: 'notes'}),
        list('A wrong reading usually means (common practice, no source)', hints.map((h) => h.reading + ': ' + h.means)),
        list('Cautions: read them before the first lead is connected', cautions), list('What you need', tools),
        list('How the bounds are made', bounds), list('Not known, or assumed', missing)));
    const again = writing && rows.find((r) => r.field?.id === writing.id)?.field;
    if (again) { // the design has changed meanwhile
      again.value = writing.value;
      again.focus();
    }
  }

  function refresh(now) {
    const {pass, fail, open} = outcomes(keeping, [now]);
    root.querySelector('.tally').textContent = pass + ' pass · ' + fail + ' fail · ' + open + ' to read';
    const marks = root.querySelectorAll('.progress i');
    rows.forEach((row, i) => { marks[i].className = row.refresh(); });
    root.querySelector('.kept').textContent = keeping.state();
    put(root.querySelector('.notes'), keeping.notes().map((n) => el('li', {}, n)));
  }

  function go(number) {
    store.set({section: String(number)});
    show();
    root.querySelector('h2').focus();
  }

  // next goes to the field after one, as Enter does on a phone.
  function next(row) {
    const after = rows.slice(rows.indexOf(row) + 1).find((r) => r.field);
    if (after) after.field.focus();
    else row.field.blur();
  }

  return {show};
}

function makeRow(store, keeping, section, check, next, findCause) {
  const of = 'r' + check.number.replace('.', '-');
  const result = el('span', {class: 'result'}), message = el('p', {class: 'message', id: of + 'm', role: 'status'});
  const bounds = el('span', {class: 'bounds'}), row = {check};
  const words = [el('b', {}, check.part + ' ' + check.name), el('small', {}, check.number + ' · ' + check.where), bounds,
    check.setTo && el('small', {}, 'supply set to ' + check.setTo)];

  function answer(name, reads) {
    return el('button', {type: 'button', class: 'answer', 'data-reads': reads, onclick: () => keeping.read(section, check, keeping.reading(section, check) === reads ? '' : reads)}, name);
  }

  if (check.see) {
    row.answers = [answer('Right', 'right'), answer('Wrong', 'wrong')];
    row.root = el('div', {class: 'row', role: 'group', 'aria-labelledby': of}, el('div', {id: of, class: 'words'}, words), el('span', {class: 'answers'}, row.answers), result, message);
  } else {
    row.field = el('input', {id: of, inputmode: 'decimal', enterkeyhint: 'next', autocomplete: 'off', 'aria-describedby': of + 'm',
      onchange: (e) => take(e.target), onkeydown: (e) => { if (e.key === 'Enter') { take(e.target); next(row); } }});
    row.root = el('div', {class: 'row'}, el('label', {for: of, class: 'words'}, words), el('span', {class: 'field'}, row.field, el('span', {class: 'unit'}, check.unit)), result, message);
  }

  function take(field) {
    const reads = typed(field.value, check.unit);
    row.wrong = reads === null;
    if (row.wrong) row.refresh();
    else if (reads !== keeping.reading(section, check)) keeping.read(section, check, reads);
  }

  // refresh shows what is kept, and gives the class of its mark.
  row.refresh = () => {
    const reads = keeping.reading(section, check), {pass, says} = outcome(keeping, section, check);
    const state = pass === undefined ? '' : pass ? 'pass' : 'fail';
    bounds.textContent = check.see ? 'must be: ' + check.see : allowed(check, battery(keeping, section, check));
    row.root.className = 'row ' + (row.wrong ? 'unread' : state);
    put(result, state && !row.wrong ? [shape(pass ? 'mended' : 'danger'), el('span', {class: 'unseen'}, pass ? 'passes' : 'fails')] : []);
    if (row.field) {
      if (document.activeElement !== row.field && !row.wrong) row.field.value = shown(reads, check.unit);
      row.field.setAttribute('aria-invalid', row.wrong || state === 'fail' ? 'true' : 'false');
    } else {
      for (const a of row.answers) a.setAttribute('aria-pressed', a.dataset.reads === reads ? 'true' : 'false');
    }
    const expected = check.unit && 'No reading: a number was expected, in ' + check.unit + (check.unit.endsWith('Ω') ? ', or OL' : '') + '. Nothing is kept of it.';
    put(message, row.wrong ? expected : says ? [says + ' ', el('button', {type: 'button', class: 'link', onclick: findCause}, 'Find the cause')] : []);
    return state;
  };
  return row;
}
