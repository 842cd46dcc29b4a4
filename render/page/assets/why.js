// The view “Why”.
import {el, put} from './dom.js';

export const id = 'why', title = 'Why';
let root;

export function mount(into) { root = into; }

export function update() { put(root, el('p', {class: 'none'}, 'This view shows nothing yet.')); }
