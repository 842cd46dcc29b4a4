// What best explains the readings, how sure that is, and what to read next.
import {el, put, shape} from './dom.js';
import {shown, typed} from './reading.js';
import {saved} from './saved.js';

export function makeCause(root, store, keeping) {
  let asked = null, waiting = 0;
  const head = el('header', {class: 'panehead'}), body = el('div', {class: 'told'});
  put(root, head, body);

  // show asks when there are other readings than were asked about, once the hand rests.
  function show() {
    const now = JSON.stringify(keeping.all());
    if (now === asked || !keeping.test()) return;
    asked = now;
    clearTimeout(waiting);
    const count = keeping.all().length;
    title(count === 0 ? 'Nothing read yet' : count + (count === 1 ? ' reading' : ' readings'));
    if (count === 0) {
      put(body, el('p', {}, 'What is read in the test is explained here, as soon as something is out of bounds.'));
    } else if (!store.api.live) {
      put(body, el('p', {}, 'This page is one file and reckons no causes. Save the readings, and give them to ', el('code', {}, 'fusewright diagnose'), ' with the design.'),
        el('p', {}, saved(keeping, store.model.heading)));
    } else {
      waiting = setTimeout(ask, 250);
    }
  }

  function title(says) { put(head, el('h2', {tabindex: '-1'}, 'What best explains your readings'), el('p', {class: 'setup'}, says)); }

  async function ask() {
    if (!keeping.sent()) { waiting = setTimeout(ask, 250); return; }
    const now = asked;
    let d;
    try {
      d = await store.api.send('POST', '/api/diagnose', {});
    } catch (e) {
      put(body, el('p', {}, e.message));
      return;
    }
    if (now === asked) tell(d);
  }

  function tell(d) {
    const out = d.failed ? d.failed + ' out of bounds' : 'all in bounds';
    title(d.readings.length + (d.readings.length === 1 ? ' reading, ' : ' readings, ') + out);
    const list = d.explanations || [], first = list[0];
    put(body,
      (d.certain || []).map((text) => el('p', {class: 'certain'}, shape('danger'), ' ', text)),
      !d.wrong && el('p', {class: 'lead'}, 'Nothing is wrong by these readings.'),
      d.unexplained && el('p', {class: 'lead'}, d.unexplained),
      d.wrong && !first && !d.unexplained && !(d.certain || []).length && el('p', {class: 'lead'}, 'No single fault, nor two, explains these readings.'),
      first && !d.unexplained && [el('p', {class: 'lead'}, first.text), alike(first), sums(first), cleared(first), !first.fits && el('p', {}, 'It does not explain all readings: something else is wrong too, or one is misread.')],
      d.next && next(d.next),
      (list.length > 0 || d.unexplained) && [el('h3', {}, 'How sure'), el('ol', {class: 'shares'}, list.map((x) => share(x.text, x.share)), d.sound > 0.0005 && share('Nothing that the readings show', d.sound))],
      d.advice && [el('h3', {}, 'Then, by hand'), el('p', {}, d.advice)],
      measured(d.measured || [], d.lines || []),
      (d.withheld || []).map((w) => el('p', {class: 'note'}, `Not taken into the design: ${w.what}. ${w.why}`)),
      (d.notes || []).map((n) => el('p', {class: 'note'}, n)),
      el('p', {class: 'note'}, 'Meter: ' + d.meter));
  }

  // next is the reading that would tell most, with a field for it.
  function next(n) {
    const unit = (n.outcomes[0]?.reads.match(/(?:µ|m|k|M)?[VAΩ]$/) || ['V'])[0];
    const test = keeping.test();
    const section = test.sections.find((s) => s.checks.some((c) => c.number === n.check));
    const check = section?.checks.find((c) => c.number === n.check);
    const kept = () => (check ? keeping.reading(section, check) : keeping.elsewhere(n));
    const field = el('input', {inputmode: 'decimal', autocomplete: 'off', 'aria-label': 'Reading of ' + n.check + ', in ' + unit, value: shown(kept(), unit), onchange: () => {
      const reads = typed(field.value, unit);
      field.setAttribute('aria-invalid', String(reads === null));
      if (reads === null) return;
      if (check) keeping.read(section, check, reads);
      else keeping.readElsewhere({check: n.check, in: n.in}, reads);
    }});
    return el('section', {class: 'next', 'aria-label': 'Read next'},
      el('h3', {}, 'Read next'), el('p', {}, el('b', {}, check ? n.check + ' ' + check.part + ' ' + check.name : n.check), n.in && ', ' + n.in),
      el('div', {class: 'nextrow'}, el('p', {class: 'note'}, n.how), el('span', {class: 'field'}, field, el('span', {class: 'unit'}, unit))),
      el('dl', {}, n.outcomes.map((o) => [el('dt', {}, o.reads), el('dd', {}, o.means + ': ' + percent(o.share))]).flat()));
  }

  return {show};
}

const percent = (share) => (share > 0.99 ? 'over 99 %' : share < 0.01 ? 'under 1 %' : Math.round(100 * share) + ' %');

function share(text, part) {
  const bar = el('i', {});
  bar.style.width = 100 * part + '%';
  return el('li', {}, el('span', {}, text), el('b', {}, percent(part)), el('span', {class: 'bar', 'aria-hidden': 'true'}, bar));
}

function sums(x) {
  return (x.sums || []).length > 0 && el('table', {}, el('tbody', {}, x.sums.map((s) =>
    el('tr', {}, el('th', {scope: 'row'}, s.label, s.note && el('small', {}, ' ' + s.note)), el('td', {class: 'num'}, s.sum && s.sum + ' ='), el('td', {class: 'num'}, el('b', {}, s.value))))));
}

function alike(x) { return (x.alike || []).length > 0 && el('p', {}, 'The same readings would come of: ' + x.alike.join('; ') + '.'); }

function cleared(x) { return (x.ruled_out || []).length > 0 && el('p', {}, 'Cleared by the other readings: ' + x.ruled_out.join(', ') + '.'); }

// measured are figures of this machine in place of usual ones, with the lines of the design that they change.
function measured(list, lines) {
  if (list.length === 0) return null;
  const row = (m) => el('tr', {}, el('th', {scope: 'row'}, m.what, el('small', {}, m.from)), el('td', {class: 'num'}, m.was), el('td', {class: 'num'}, el('b', {}, m.value), el('small', {}, m.within)));
  return [el('h3', {}, 'Measured: this machine, in place of usual figures'), el('table', {},
    el('thead', {}, el('tr', {}, el('th', {scope: 'col'}, 'figure'), el('th', {scope: 'col', class: 'num'}, 'was'), el('th', {scope: 'col', class: 'num'}, 'measured'))),
    el('tbody', {}, list.map(row))),
  lines.length > 0 && [el('p', {class: 'note'}, 'Lines for the design:'), el('pre', {tabindex: '0', 'aria-label': 'Lines for the design'}, lines.map((l) => l.line + '  ' + l.text).join('\n'))]];
}
