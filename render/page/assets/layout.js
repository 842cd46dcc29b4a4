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
    const pictures = sheets.map((text) => {
      const svg = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
      for (const link of svg.querySelectorAll('a')) link.replaceWith(...link.childNodes); // they would change the address
      for (const named of svg.querySelectorAll('[id]')) named.removeAttribute('id'); // the schematic has the same
      for (const name of ['width', 'height', 'style']) svg.removeAttribute(name); // the style sheet has them
      return el('div', {class: 'sheet', tabindex: '0', role: 'group', 'aria-label': 'Layout, scrolls sideways'}, document.importNode(svg, true));
    });
    put(root, el('header', {class: 'panehead'}, el('h2', {tabindex: '-1'}, 'Layout'), el('p', {class: 'setup'}, 'The loom on the board, to the scale of the sheet.')),
      pictures.length ? pictures : el('p', {class: 'none'}, says));
  }
  return {update};
}
