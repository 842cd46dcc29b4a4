// The figures of the planner as tables and lists.
import {el, over, put} from './dom.js';

export function showBig(box, answer) {
  put(box, el('dl', {}, answer.big.map((b, i) => el('div', {class: (i === 0 ? 'first ' : '') + (b.tone || '')},
    el('dt', {}, b.label),
    el('dd', {class: size(b, i)}, b.value, b.unit && el('span', {class: 'unit'}, ' ' + b.unit)),
    b.note && el('dd', {class: 'note'}, b.note)))));
}

// size: the answer is largest, then how long; words are smaller than figures.
function size(b, i) {
  if (i === 0) return 'huge';
  return i === 1 && /^[−+]?[\d.,]+$/.test(b.value) ? 'large' : 'said';
}

export function showSets(box, answer, speed, switchTo, can) {
  const sets = answer.sets;
  if (!sets) {
    put(box, el('p', {class: 'foot'}, answer.trouble ? 'Not known.' : answer.state.speedPerMin > 0 ? (answer.apart ? 'Of what the engine charges nothing else is switched by hand. ' + answer.apart : 'Nothing is switched by hand.') : 'With the engine stopped nothing charges: choose a speed.'));
    return;
  }
  if (sets.columns.length === 0) {
    put(box, el('p', {class: 'foot'}, 'Nothing is switched by hand.'));
    return;
  }
  const lacks = sets.capacity.startsWith('−');
  const lead = el('p', {class: 'lead'}, `At ${speed} `, el('b', {}, lacks ? sets.capacity.slice(1) : sets.capacity), lacks ? ' are missing for what is always on.'
    : ' are left for what is switched. Every largest set, by switch.');
  const more = [answer.apart && el('p', {class: 'foot'}, answer.apart), !sets.complete && el('p', {class: 'foot'}, `There are more sets than the ${sets.rows.length} shown.`)];
  if (sets.rows.length === 0) { put(box, lead); return; }
  const few = sets.columns.length <= 7 && box.clientWidth > 560;
  const uses = (row, name) => row.set && can(row.set) && el('button', {type: 'button', onclick: () => switchTo(row.set), 'aria-label': 'Switch to this, ' + name}, 'Switch to this');
  put(box, lead, few ? table(sets, uses) : list(sets, uses), more);
}

const letter = (i) => String.fromCharCode(65 + i % 26) + (i >= 26 ? Math.floor(i / 26) : '');
const dot = (on) => [el('span', {class: on ? 'dot on' : 'dot', 'aria-hidden': 'true'}), el('span', {class: 'unseen'}, on ? 'on' : 'off')];
const short = (name) => name.replace(/ \(.*\)$/, '');

function table(sets, use) {
  const line = (name, row) => el('tr', {class: row.set ? '' : 'now'}, el('th', {scope: 'row'}, name), row.has.map((on) => el('td', {class: 'c'}, dot(on))),
    el('td', {class: 'r'}, row.draws), el('td', {class: row.short ? 'r short' : 'r'}, row.spare), el('td', {class: 'r'}, use(row, 'set ' + name)));
  return el('div', {class: 'wide'}, el('table', {},
    el('thead', {}, el('tr', {}, el('th', {scope: 'col'}, 'set'), sets.columns.map((c) => el('th', {scope: 'col', class: 'c', title: c.name}, short(c.name))),
      el('th', {scope: 'col', class: 'r'}, 'draws'), el('th', {scope: 'col', class: 'r'}, 'to spare'), el('td', {}))),
    el('tbody', {}, sets.rows.map((row, i) => line(letter(i), row)), line('now', sets.now))));
}

function list(sets, use) {
  const names = (row) => sets.columns.filter((_, i) => row.has[i]).map((c) => short(c.name)).join(', ') || 'nothing';
  const line = (name, row) => el('li', {class: row.set ? '' : 'now'}, el('b', {}, name), el('span', {class: 'names'}, names(row)),
    el('span', {class: row.short ? 'sum short' : 'sum'}, `${row.draws}, ${row.spare} to spare`), use(row, 'set ' + name));
  return el('ul', {class: 'setlist'}, sets.rows.map((row, i) => line(letter(i), row)), line('now', sets.now));
}

export function showShed(box, answer, switchTo, can) {
  const stopped = answer.state.speedPerMin === 0;
  put(box,
    el('p', {class: 'foot'}, (stopped ? 'What takes most of the batteries first' : 'Least important first') + (answer.kept ? `. Never proposed: ${answer.kept}.` : '.')),
    answer.shed.length === 0 && el('p', {class: 'foot'}, answer.apart ? 'Nothing else that is on may be switched off. ' + answer.apart : `Nothing that is on${stopped ? ' and taken from a battery' : ''} may be switched off.`),
    el('ol', {}, answer.shed.map((s) => s.off
      ? el('li', {class: 'off'}, el('span', {class: 'what'}, s.name), el('span', {class: 'gain'}, 'already off'))
      : el('li', {}, el('span', {class: 'what'}, s.name), el('span', {class: 'gain'}, 'gains ' + s.gains),
        el('b', {class: s.short ? 'left short' : stopped ? 'left' : 'left spare'}, s.left + (stopped ? ' still drawn' : '')),
        s.set && can(s.set) && el('button', {type: 'button', 'aria-label': 'Switch off ' + s.name, onclick: () => switchTo(s.set)}, 'Off')))));
}

const bar = (share) => el('span', {class: share > 1 ? 'bar over' : 'bar', 'aria-hidden': 'true'}, meter(share));

// meter is a bar as a picture: its length is an attribute, since no style stands in the text of the page.
function meter(share) {
  const ns = 'http://www.w3.org/2000/svg';
  const svg = document.createElementNS(ns, 'svg'), rect = document.createElementNS(ns, 'rect');
  svg.setAttribute('viewBox', '0 0 100 8');
  svg.setAttribute('preserveAspectRatio', 'none');
  rect.setAttribute('width', Math.min(share, 1) * 100);
  rect.setAttribute('height', 8);
  svg.append(rect);
  return svg;
}

function rows(heads, list) {
  return el('div', {class: 'wide'}, el('table', {}, el('thead', {}, el('tr', {}, heads.map((h, i) => el('th', {scope: 'col', class: i ? 'r' : ''}, h)))),
    el('tbody', {}, list.map((cells) => el('tr', {}, cells.map((c, i) => i === 0 ? el('th', {scope: 'row'}, c) : el('td', {class: 'r'}, c)))))));
}

export function showLoads(box, answer, why) {
  put(box, answer.loads.length === 0 ? el('p', {class: 'foot'}, 'No load is on.')
    : rows(['load', 'volts', 'at worst', 'lost at worst', 'limit', 'of the limit'], answer.loads.map((l) => [
      [el('b', {}, l.ref), ' ' + l.name], el('b', {}, l.v), l.worstV, l.worst, l.limit, [bar(l.share), over(l.over), el('span', {class: 'share'}, percent(l.share)), why(l.over, 'limit of ' + l.name)]])));
}

const percent = (share) => share >= 9 ? 'nothing allowed' : Math.round(share * 100) + ' %';
const shown = 5;

const limits = {fuse: 'rating of ', wire: 'allowed current of '};

export function showLoading(box, kind, list, more, why) {
  const made = (some) => rows([kind, 'carries', 'at worst', 'may carry', 'of that'], some.map((l) => [
    [el('b', {}, l.ref), ' ' + l.name], el('b', {}, l.a), l.worst, l.may, [bar(l.share), over(l.over), el('span', {class: 'share'}, percent(l.share)), why(l.over, limits[kind] + l.ref)]]));
  put(box, list.length === 0 ? el('p', {class: 'foot'}, `No ${kind} carries anything.`) : made(list.slice(0, shown)),
    list.length > shown && el('details', {}, el('summary', {}, `${list.length - shown + (more || 0)} more, less loaded`), made(list.slice(shown)),
      more > 0 && el('p', {class: 'foot'}, `${more} that are loaded less are not listed.`)));
}
