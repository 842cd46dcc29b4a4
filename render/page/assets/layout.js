// The loom on the board, as the paper has it.
import {el, put} from './dom.js';

export function makeLayout(root, store) {
  async function update() {
    let sheets = [], says = 'The design gives no runs, so there is no loom to lay out.';
    try {
      sheets = await store.api.get('/api/layout');
    } catch (e) {
      says = e.message;
    }
    const pictures = sheets.map(({title, svg}) => {
      const picture = document.importNode(new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement, true);
      picture.setAttribute('role', 'img');
      picture.setAttribute('aria-label', title);
      for (const named of picture.querySelectorAll('[id]')) named.removeAttribute('id'); // the schematic has the same
      return [el('h3', {}, title), el('div', {class: 'sheet', tabindex: '0', role: 'group', 'aria-label': title + ', may be scrolled sideways'}, picture)];
    });
    put(root, el('header', {class: 'panehead'}, el('h2', {tabindex: '-1'}, 'Layout'),
      el('p', {class: 'setup'}, 'The loom on the board. Dimensions in the unit of the sheet, from nail to nail.')),
    pictures.length ? pictures.flat() : el('p', {class: 'none'}, says));
  }
  return {update};
}
