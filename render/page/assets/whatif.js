// The view “What if”.
import {el, put} from './dom.js';

export const id = 'whatif', title = 'What if';
export const asks = true;
let root;

export function mount(into) { root = into; }

export function update() { put(root, el('p', {class: 'none'}, 'This view shows nothing yet.')); }
