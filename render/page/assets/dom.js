// What every view needs to put elements into the page. Text goes in as text, never as markup:
// names come from a file that anybody may have written.

// el makes an element: el('button', {class: 'x', onclick: f, 'aria-pressed': true}, 'text', child, ...).
// An attribute that is null, undefined or false is left out; true stands without a value.
// Children that are null, undefined, false or '' are left out too; lists are taken apart.
export function el(tag, attributes = {}, ...children) {
  return fill(document.createElement(tag), attributes, children);
}

// pic makes an element of a picture (SVG) likewise.
export function pic(tag, attributes = {}, ...children) {
  return fill(document.createElementNS('http://www.w3.org/2000/svg', tag), attributes, children);
}

function fill(node, attributes, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === undefined || value === false) continue;
    if (name.startsWith('on')) node.addEventListener(name.slice(2), value);
    else node.setAttribute(name, value === true ? '' : String(value));
  }
  node.append(...shown(children));
  return node;
}

const shown = (children) => children.flat(Infinity).filter((c) => c !== null && c !== undefined && c !== false && c !== '');

// put replaces what is in an element.
export function put(node, ...children) { node.replaceChildren(...shown(children)); }

// The shapes of the severities: told apart without their colours.
const shapes = {
  danger: () => pic('path', {d: 'M8 .6 15.4 8 8 15.4 .6 8Z', class: 'full'}),
  fault: () => pic('rect', {x: 1.5, y: 1.5, width: 13, height: 13, class: 'full'}),
  advice: () => pic('circle', {cx: 8, cy: 8, r: 6.6, class: 'open'}),
  mended: () => pic('path', {d: 'M2 8.6 6.2 13 14.4 3', class: 'line'}),
  none: () => pic('path', {d: 'M3 8H13', class: 'line'}),
};

// over is the sign of what is above its limit, in words too; nothing where no severity is.
export function over(severity) { return severity && [shape(severity), el('span', {class: 'unseen'}, ` ${severity}, above the limit: `), ' ']; }

// shape draws the sign of a severity, with a number in it or without.
export function shape(severity, number) {
  const label = number === undefined ? [] : [pic('text', {x: 8, y: 11, 'text-anchor': 'middle'}, String(number))];
  return pic('svg', {class: 'shape ' + severity + (number > 99 ? ' long' : ''), viewBox: '0 0 16 16', 'aria-hidden': 'true'},
    (shapes[severity] || shapes.none)(), ...label);
}
